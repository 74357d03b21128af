import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeProgression, parseProgression } from '#theory';
import { chartOf, withoutPlaces } from './chart-short.ts';
import { anyText } from './chart-texts.ts';

describe('the canonical text', () => {
  it.each([
    ['C Am F G C', '| C | Am | F | G |\n| C |'],
    ['A: | C | F |\nChorus\n| G |', '[A]\n| C | F |\n[Chorus]\n| G |'],
    ['3/4\nC\nG 4/4 D', '| 3/4 C | G | 4/4 D |'],
    ['|: C | F :| x3', '|: C | F :|x3'],
    ['| C :| F :|: G :|', '| C :| F :|: G :|'],
    ['|: C |[1 F :|2 G', '|: C |1. F :|2. G |'],
    ['|: C |1,2,3 F :|4 G', '|: C |1-3. F :|4. G |'],
    ['| C / F / | C / / F | C F / |', '| C F | C / / F | C F / / |'],
    ['| C | % | / / G / | / |', '| C | % | / / G / | / / / / |'],
    ['| C7 (b9) | Hm | no chord |', '| C7(b9) | Hm | no chord |'],
    ['| C % F % |', '| C % F % |'],
    ['', ''],
  ])('of %j is %j', (text, made) => expect(makeProgression(chartOf(text))).toBe(made));

  it('reads as the same chart', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const chart = chartOf(text);
        const again = chartOf(makeProgression(chart));
        expect(withoutPlaces(again)).toEqual(withoutPlaces(chart));
        expect(makeProgression(again)).toBe(makeProgression(chart));
      }),
      { numRuns: 800 },
    );
  });
});

const symbol = fc.constantFrom('C', 'Am7', 'F#m7b5', 'Bb/D', 'N.C.', 'E7(b9 b13)', 'Hm');
const metre = fc.tuple(fc.integer({ min: 1, max: 32 }), fc.constantFrom(1, 2, 4, 8, 16));
const beats = fc.array(fc.oneof(symbol, fc.constantFrom('/', '%')), {
  minLength: 1,
  maxLength: 12,
});
const bar = fc.oneof(beats, fc.constant(['%']));

/** A bar with what may stand before it. */
const fullBar = fc.record({
  units: bar,
  sign: fc.option(metre, { freq: 5 }),
  name: fc.option(fc.constantFrom('Verse', 'A', "B'"), { freq: 8 }),
  open: fc.boolean(),
  close: fc.option(fc.integer({ min: 2, max: 99 })),
});

type FullBar = typeof fullBar extends fc.Arbitrary<infer T> ? T : never;

const written = ({ units, sign, name, open, close }: FullBar): string => {
  const count = close === null ? '' : `x${close}`;
  const head = (name === null ? '' : `\n[${name}]\n`) + (open ? '|: ' : '| ');
  const time = sign === null ? '' : `${sign[0]}/${sign[1]} `;
  return `${head}${time}${units.join(' ')} ${close === null ? '' : ':|'}${count} `;
};

describe('a written chart', () => {
  it('is made again from its reading', () => {
    fc.assert(
      fc.property(fc.array(fullBar, { minLength: 1, maxLength: 12 }), (bars) => {
        const { chart } = parseProgression(bars.map(written).join(''));
        const made = makeProgression(chart);
        expect(withoutPlaces(chartOf(made))).toEqual(withoutPlaces(chart));
        expect(makeProgression(chartOf(made))).toBe(made);
      }),
      { numRuns: 500 },
    );
  });
});
