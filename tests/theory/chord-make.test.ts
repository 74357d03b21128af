import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Chord, type Degree, LETTERS, makeChord, parseChord } from '#theory';
import { ALL_ROOTS, chord, degrees, shownTones } from './short.ts';

const C = { letter: 'C', alter: 0 } as const;

describe('The canonical symbol', () => {
  it.each([
    ['R 3 5', 'C'],
    ['R b3 5', 'Cm'],
    ['R b3 b5', 'Cdim'],
    ['R 3 #5', 'Caug'],
    ['R 3 b5', 'C(b5)'],
    ['R 5', 'C5'],
    ['R 4 5', 'Csus4'],
    ['R 2 5', 'Csus2'],
    ['R 2 4 5', 'Csus24'],
    ['R #4 5', 'Csus#4'],
    ['R 3 5 6', 'C6'],
    ['R 3 5 6 9', 'C69'],
    ['R b3 5 6 9', 'Cm69'],
    ['R 3 5 b7', 'C7'],
    ['R 3 5 7', 'Cmaj7'],
    ['R b3 5 b7', 'Cm7'],
    ['R b3 5 7', 'Cm(maj7)'],
    ['R b3 b5 b7', 'Cm7b5'],
    ['R b3 b5 bb7', 'Cdim7'],
    ['R b3 b5 7', 'Cdim(maj7)'],
    ['R 3 #5 b7', 'C7#5'],
    ['R 3 #5 7', 'Cmaj7#5'],
    ['R 3 #5 b7 #9', 'C7#5#9'],
    ['R 3 5 b7 b9 #9', 'C7b9#9'],
    ['R 3 5 b7 9 11', 'C11'],
    ['R 3 5 b7 9 #11', 'C9#11'],
    ['R 3 5 b7 9 13', 'C9(add13)'],
    ['R 3 5 b7 9 11 13', 'C13'],
    ['R 3 5 b7 9 #11 13', 'C13#11'],
    ['R 3 5 b7 b13', 'C7b13'],
    ['R 3 5 b7 13', 'C7(add13)'],
    ['R b3 b5 b7 9', 'Cm9b5'],
    ['R 4 5 b7 9', 'C9sus4'],
    ['R 4 5 b7 b9', 'C7sus4b9'],
    ['R 2 5 7', 'Cmaj7sus2'],
    ['R 3 5 9', 'C(add9)'],
    ['R b3 5 9', 'Cm(add9)'],
    ['R 3 5 #11', 'C(add#11)'],
    ['R 3 b7', 'C7(no5)'],
    ['R 5 b7', 'C7(no3)'],
    ['R 5 9', 'C5(add9)'],
    ['R b3 b5 bb7 7', 'Cdim7(addmaj7)'],
    // What no name can say is written out after Harte et al., ISMIR 2005.
    ['R b2 #4 bb7', 'C:(b2,#4,bb7)'],
    ['R 2 3 5', 'Csus2(add3)'],
    ['R', 'C5(no5)'],
  ])('of %s is %s', (tones, symbol) => {
    expect(makeChord({ root: C, tones: degrees(tones) })).toBe(symbol);
    expect(shownTones(chord(symbol).tones)).toBe(tones);
  });

  it('names the bass', () => {
    expect(makeChord(chord('D♯m7/F𝄪'))).toBe('D#m7/F##');
    expect(makeChord(chord('C6/9/E'))).toBe('C69/E');
    expect(makeChord({ ...chord('C7'), bass: { letter: 'B', alter: -1 } })).toBe('C7/Bb');
  });

  it.each(ALL_ROOTS)('is read back on %s', (root) => {
    for (const quality of ['', 'm', '7', '(b5)', 'maj7#11', '5', '7(no3)', ':(2,4,5,6,b7)']) {
      const read = chord(root + quality);
      expect(parseChord(makeChord(read))).toEqual({ ok: true, value: read });
    }
  });
});

const anyName = fc.record({
  letter: fc.constantFrom(...LETTERS),
  alter: fc.integer({ min: -2, max: 2 }),
});
const anyTone = fc.record({
  number: fc.integer({ min: 1, max: 13 }),
  alter: fc.integer({ min: -2, max: 2 }),
});
const inOrder = (a: Degree, b: Degree): number => a.number - b.number || a.alter - b.alter;
/** Any tones above the root; a flattened root would stand before it. */
const anyTones = fc
  .uniqueArray(
    anyTone.filter((tone) => tone.number > 1 || tone.alter > 0),
    { maxLength: 7, selector: (tone) => tone.number * 10 + tone.alter },
  )
  .map((tones): readonly Degree[] => [{ number: 1, alter: 0 }, ...tones].sort(inOrder));

describe('Making and reading', () => {
  it('are inverse for any tones, roots and basses', () => {
    const bass = fc.option(anyName, { nil: undefined });
    fc.assert(
      fc.property(anyName, anyTones, bass, (root, tones, other) => {
        const isRoot = other?.letter === root.letter && other.alter === root.alter;
        const made: Chord =
          other === undefined || isRoot ? { root, tones } : { root, tones, bass: other };
        expect(parseChord(makeChord(made))).toEqual({ ok: true, value: made });
      }),
      { numRuns: 1000 },
    );
  });

  it('are inverse for whatever the parser reads', () => {
    const pieces =
      'm M maj7 min dim aug + - 7 9 11 13 6 69 sus sus2 sus4 b5 #5 b9 #9 #11 b13 add9 add4 no3 no5 alt /E ( ) 2 4 5'.split(
        ' ',
      );
    const symbols = fc.array(fc.constantFrom(...pieces), { maxLength: 5 });
    fc.assert(
      fc.property(symbols, (words) => {
        const read = parseChord(`F${words.join('')}`);
        if (!read.ok) return;
        expect(parseChord(makeChord(read.value))).toEqual(read);
      }),
      { numRuns: 2000 },
    );
  });

  it('settle at once: the symbol of the symbol is the symbol', () => {
    fc.assert(
      fc.property(anyTones, (tones) => {
        const symbol = makeChord({ root: C, tones });
        expect(makeChord(chord(symbol))).toBe(symbol);
      }),
    );
  });
});
