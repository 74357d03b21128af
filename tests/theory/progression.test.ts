import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barsOf, parseProgression, slotsOf } from '#theory';
import { chartOf, shownBars, shownPlaces, shownProblems } from './chart-short.ts';
import { anyText } from './chart-texts.ts';

describe('bars', () => {
  it.each([
    ['| C | F |', 'C | F'],
    ['C | F', 'C | F'],
    ['C|F|G', 'C | F | G'],
    ['|| C | G || Am | F ||', 'C | G | Am | F'],
    ['| C |   | | G |', 'C | G'],
    ['C │ F ┃ G ‖ Am ║ Dm ∣ E ｜ B ¦ D', 'C | F | G | Am | Dm | E | B | D'],
    ['𝄀 C 𝄁 F 𝄂', 'C | F'],
    ['\u00a0|\tC\u2003|\u3000F\u200b|', 'C | F'],
    ['| C | F\r\n| G |\r| Am\u2028| Dm |', 'C | F | G | Am | Dm'],
    ['| C | F\nG Am', 'C | F | G 3:Am'],
    ['', ''],
    ['  \n\n', ''],
    ['|', ''],
  ])('%j is %s', (text, bars) => expect(shownBars(text)).toBe(bars));

  it('are one for each chord where no bar line stands anywhere', () => {
    expect(shownBars('C Am F G')).toBe('C | Am | F | G');
    expect(shownBars('C Am\nF G')).toBe('C | Am | F | G');
    expect(shownBars('C - G - Am')).toBe('C | G | Am');
    expect(shownBars('C, G, Am')).toBe('C | G | Am');
    expect(shownBars('C → G -> Am')).toBe('C | G | Am');
    expect(shownBars('C-G-Am')).toBe('C | G | Am');
    expect(shownBars('C + F')).toBe('C | F');
    expect(shownBars('“C” "F"')).toBe('C | F');
    expect(shownBars('C / / / G % N.C.')).toBe('C | G | G~ | N.C.');
  });
});

describe('a bar', () => {
  it.each([
    ['| C F |', 'C 3:F'],
    ['| C F G |', 'C 2.333:F 3.667:G'],
    ['| C F G Am |', 'C 2:F 3:G 4:Am'],
    ['| C / F / |', 'C 3:F'],
    ['| C / / F |', 'C 4:F'],
    ['| C F / |', 'C 2:F'],
    ['| C F / / |', 'C 2:F'],
    ['| C /// |', 'C'],
    ['6/8 | C// F// |', 'C 4:F'],
    ['| C . . F |', 'C 4:F'],
    ['| C - - - | F - G - |', 'C | F 3:G'],
    ['3/4 | C F | G / D |', 'C 2.5:F | G 3:D'],
    ['6/8 | C / / F / / |', 'C 4:F'],
    ['| C | / / F / |', 'C | C~ 3:F'],
    ['| C | / / / / | / |', 'C | C~ | C~'],
    ['| C F | % |', 'C 3:F | C 3:F'],
    ['| C | % | ./. | 𝄎 |', 'C | C~ | C~ | C~'],
    ['| C % F % |', 'C 2:C~ 3:F 4:F~'],
    ['| C F | 3/4 % |', 'C 3:F | C 2.5:F'],
    ['| C /B Am /G |', 'C 2:/B 3:Am 4:/G'],
    ['| C (E bass) F | G%7 FonG |', 'C(E bass) 3:F | G%7 3:FonG'],
    ['| N.C. | NC | n.c. | N. C. | no chord |', 'N.C. | NC | n.c. | N.C. | no chord'],
  ])('%s is %s', (text, bars) => {
    expect(shownBars(text)).toBe(bars);
    expect(shownProblems(text)).toBe('');
  });

  it('starts its shares at the nearest tick and leaves no gap', () => {
    const [bar] = barsOf(chartOf('| C F G |'));
    expect(bar?.slots.map(({ start, length }) => [start, length])).toEqual([
      [0, 1280],
      [1280, 1280],
      [2560, 1280],
    ]);
  });

  it('knows that it was typed as %', () => {
    expect(barsOf(chartOf('| C | % | C % |')).map(({ same }) => same)).toEqual([
      false,
      true,
      false,
    ]);
  });

  it('shares the harmony of the bass that moves under it', () => {
    const [, under] = slotsOf(chartOf('| C /B |'));
    expect(under?.slot.harmony).toMatchObject({
      kind: 'chord',
      chord: { root: { letter: 'C', alter: 0 }, bass: { letter: 'B', alter: 0 } },
    });
  });

  it('goes on in the next after 64 chords', () => {
    expect(barsOf(chartOf(`| ${'C '.repeat(100)}|`)).map(({ slots }) => slots.length)).toEqual([
      64, 36,
    ]);
  });
});

describe('chords', () => {
  it.each([
    ['| Db7(b9 b13) |', 'Db7(b9 b13)'],
    ['| C7 (b9) G |', 'C7(b9) 3:G'],
    ['| (Dm7 G7) |', 'Dm7 3:G7'],
    ['[Am] [F] [C]', 'Am | F | C'],
    ['| C maj7 | D sus4 |', 'Cmaj7 | Dsus4'],
    ['C 6/9', 'C6/9'],
    ['| C7, F7; G |', 'C7 2.333:F7 3.667:G'],
    ['| C,F |', 'C 3:F'],
    ['| C7b9,#11 |', 'C7b9,#11'],
    ['| Am: | C* |', 'Am | C'],
  ])('%s is %s', (text, bars) => {
    expect(shownBars(text)).toBe(bars);
    expect(shownProblems(text)).toBe('');
  });

  it('of the same symbol are the same harmony', () => {
    const [a, , b] = slotsOf(chartOf('| C | F | C |'));
    expect(a?.slot.harmony).toBe(b?.slot.harmony);
  });

  it('are found in the text by their spans', () => {
    const text = '[A]\r\n| Cmaj7  F#m7b5 |\n| G / / D/F# |';
    const spans = slotsOf(chartOf(text)).map(({ slot: { span } }) =>
      text.slice(span.at, span.at + span.length),
    );
    expect(spans).toEqual(['Cmaj7', 'F#m7b5', 'G', 'D/F#']);
  });
});

describe('time signatures', () => {
  it.each([
    ['3/4 | C | 4/4 F | G |', '3/4 4/4 4/4'],
    ['6/8\n| C | F |', '6/8 6/8'],
    ['| C | 3/4 F |', '4/4 3/4'],
    ['| C |\n5/4\n| F |', '4/4 5/4'],
    ['3/4 C G 4/4 D', '3/4 3/4 4/4'],
    ['| [12/8] C | (2/2) F |', '12/8 2/2'],
    ['Time: 3/4\n| C |', '3/4'],
    ['3/4 time\n| C |', '3/4'],
    ['𝄴 | C | 𝄵 F |', '4/4 2/2'],
    ['| 32/16 C |', '32/16'],
  ])('%j has bars of %s', (text, metres) => {
    const shown = barsOf(chartOf(text)).map(({ metre }) => `${metre.beats}/${metre.unit}`);
    expect(shown.join(' ')).toBe(metres);
    expect(shownProblems(text)).toBe('');
  });

  it('give the places of slots in their own beats', () => {
    expect(shownPlaces('| C F G | 6/8 C / / F / / |')).toBe('1.1 1.2.333 1.3.667 2.1 2.4');
  });
});

describe('problems', () => {
  it.each([
    ['| C | Hm | F |', 'chord 1:7 H', 'C | Hm? | F'],
    ['C G\nAm Hm7 F', 'chord 2:4 H', 'C | G | Am | Hm7? | F'],
    ['| C | Cfoo | F |', 'chord 1:8 foo', 'C | Cfoo? | F'],
    ['| C / / / / | F |', 'beats 1:3 5', 'C | F'],
    ['| C / / / G | F |', 'beats 1:3 5', 'C 4.2:G | F'],
    ['| % | C |', 'nothing-before 1:3 %', '%? | C'],
    ['/ / C / | G', 'nothing-before 1:1 /', '/? 3:C | G'],
    ['/B | C', 'nothing-before 1:1 /B', '/B? | C'],
    ['7/3 | C |', 'metre 1:1 7/3', 'C'],
    ['33/4 | C |', 'metre 1:1 33/4', 'C'],
    ['| C 3/4 G |', 'metre 1:5 3/4', 'C 3:G'],
    ['| C | F | D.C. al Fine', 'word 1:11 D.C. al Fine', 'C | F'],
    ['| C | F | to Coda', 'word 1:11 to Coda', 'C | F'],
    ['| C solo | F |', 'word 1:5 solo', 'C | F'],
    ['Key: G\n| C |', 'word 1:1 Key: G', 'C'],
    ['Hello this is a line of A song\nC G', 'word 1:1 Hello this is a line of A song', 'C | G'],
  ])('%j: %s', (text, problems, bars) => {
    expect(shownProblems(text)).toBe(problems);
    expect(shownBars(text)).toBe(bars);
  });

  it('say what was expected, and what was probably meant', () => {
    const [problem] = parseProgression('| C | Hm7 |').problems;
    expect(problem).toMatchObject({
      code: 'chord',
      line: 1,
      column: 7,
      span: { at: 6, length: 1 },
      suggestion: 'Bm7',
    });
    expect(problem?.expected.length).toBeGreaterThan(0);
  });

  it('count columns in UTF-16 units', () => {
    expect(shownProblems('𝄆 C 𝄀 Hm 𝄇')).toBe('chord 1:9 H');
  });
});

describe('any text', () => {
  it('is read without an exception, with every place inside it', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { chart, problems } = parseProgression(text);
        for (const { span, line, column, expected } of problems) {
          expect(span.at + span.length).toBeLessThanOrEqual(text.length);
          expect(Math.min(span.at, line - 1, column - 1, expected.length - 1)).toBeGreaterThan(-1);
        }
        for (const { slot } of slotsOf(chart)) {
          expect(slot.length).toBeGreaterThan(0);
          expect(slot.span.at + slot.span.length).toBeLessThanOrEqual(text.length);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('gives bars that are full from the first tick to the last', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const { slots, metre } of barsOf(chartOf(text))) {
          let at = 0;
          for (const slot of slots) {
            expect(slot.start).toBe(at);
            at += slot.length;
          }
          expect(at).toBe((metre.beats * 3840) / metre.unit);
        }
      }),
      { numRuns: 400 },
    );
  });
});

describe('a chord that is still being typed', () => {
  it.each(['C Gs', 'C Gsu', 'C Ca', 'C Cad', 'C Gm7a', 'C F7su', 'C Bb9su', 'C Ea', '| C | Gsu |'])(
    'in %s keeps its slot, so that the cursor stays with it',
    (text) => {
      const { chart, problems } = parseProgression(text);
      const kinds = slotsOf(chart).map(({ slot }) => slot.harmony.kind);
      expect(kinds).toEqual(['chord', 'unread']);
      expect(problems.map((problem) => problem.code)).toEqual(['chord']);
    },
  );
});
