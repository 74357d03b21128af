import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  keysAt,
  MODES,
  makeNoteName,
  parseNoteName,
  pitchClass,
  sameNote,
  scaleNotes,
  slotsOf,
  stepKey,
  transposeNote,
  transposeText,
} from '#theory';
import { chartOf } from './chart-short.ts';
import { key } from './key-short.ts';

const moved = (text: string, from: string, to: string): string =>
  transposeText(text, key(from), key(to));

describe('transposing a text', () => {
  it.each([
    ['| C/E  Am7 |\tF#m7b5 B7(b9) |', 'C', 'Eb', '| Eb/G  Cm7 |\tAm7b5 D7(b9) |'],
    ['C F G7 C', 'C', 'B', 'B E F#7 B'],
    ['C F G7 C', 'C', 'F#', 'F# B C#7 F#'],
    ['C F G7 C', 'C', 'Gb', 'Gb Cb Db7 Gb'],
    ['Am Dm E7', 'Am', 'C#m', 'C#m F#m G#7'],
    ['Eb7#9 Bbsus4', 'Eb', 'E', 'E7#9 Bsus4'],
    ['| C /B Am /G |', 'C', 'D', '| D /C# Bm /A |'],
    ['C♯m F♯7/A♯', 'C#m', 'Dm', 'Dm G7/B'],
    ['Dm G7/B', 'Dm', 'C#m', 'C#m F#7/A#'],
    ['G♭ E♭m', 'Gb', 'Ab', 'A♭ Fm'],
    ['C6/9 Gadd9 C7/9/E', 'C', 'D', 'D6/9 Aadd9 D7/9/F#'],
    ['FonG C7(onE) C／E D/f+ Gm/b-', 'C', 'D', 'GonA D7(onF#) D／F# E/g# Am/c'],
    ['| C (E bass) D/F# add11 C/C |', 'C', 'D', '| D (F# bass) E/G# add11 D/D |'],
  ])('%j from %s to %s is %j', (text, from, to, made) => {
    expect(moved(text, from, to)).toBe(made);
  });

  it('leaves all else letter for letter', () => {
    const text = '[A]\r\nBridge: | C |  % | N.C. | Hm | D.C. al Fine\n\n3/4 |: G/// :|x3';
    expect(moved(text, 'C', 'D')).toBe(
      '[A]\r\nBridge: | D |  % | N.C. | Hm | D.C. al Fine\n\n3/4 |: A/// :|x3',
    );
  });

  it('to the same tonic gives the same text', () => {
    const text = 'C F G7';
    expect(moved(text, 'C', 'C')).toBe(text);
    expect(moved(text, 'C', 'Cm')).toBe(text);
  });

  it('respells what would need more than a double accidental', () => {
    expect(moved('E#', 'C', 'C#')).toBe('E##');
    expect(moved('E##', 'C', 'C#')).toBe('G');
  });
});

const KEYS = MODES.flatMap((mode) =>
  Array.from({ length: 12 }, (_, pc) => keysAt(pitchClass(pc), mode)).flat(),
);
const NAMES = 'C Db D Eb E F F# Gb G Ab A Bb B C#'.split(' ');
const QUALITIES = ['', 'm', '7', 'm7b5', 'maj7', 'sus4', '(add9)', '6/9', 'dim7', '+'];

const symbol = fc
  .tuple(
    fc.constantFrom(...NAMES),
    fc.constantFrom(...QUALITIES),
    fc.option(fc.constantFrom(...NAMES), { freq: 3 }),
  )
  .map(([root, quality, bass]) => root + quality + (bass === null ? '' : `/${bass}`));

const text = fc
  .array(fc.oneof(symbol, fc.constantFrom('|', '%', '/', 'N.C.', '|:', ':|')), {
    maxLength: 16,
  })
  .map((words) => words.join(' '));

const KEY = fc.constantFrom(...KEYS);

describe('transposing', () => {
  it('to and back gives the text again', () => {
    const roots = fc.array(fc.tuple(fc.nat(6), fc.constantFrom(...QUALITIES)), { maxLength: 9 });
    const steps = fc.integer({ min: -11, max: 11 });
    fc.assert(
      fc.property(roots, fc.constantFrom(...KEYS), steps, (chords, from, step) => {
        const scale = scaleNotes(from).map((name) => makeNoteName(name));
        const typed = chords.map(([i, quality]) => `${scale[i]}${quality} |`).join(' ');
        const to = stepKey(from, step);
        expect(transposeText(transposeText(typed, from, to), to, from)).toBe(typed);
      }),
      { numRuns: 300 },
    );
  });

  it('moves every chord by the same interval and changes nothing else of it', () => {
    fc.assert(
      fc.property(text, KEY, KEY, (typed, from, to) => {
        const before = slotsOf(chartOf(typed));
        const after = slotsOf(chartOf(transposeText(typed, from, to)));
        expect(after).toHaveLength(before.length);
        for (const [i, { slot, at }] of before.entries()) {
          const other = after[i];
          expect(other?.at).toBe(at);
          if (slot.harmony.kind !== 'chord') continue;
          const { root, bass, tones } = slot.harmony.chord;
          const newRoot = transposeNote(root, from, to);
          const newBass = transposeNote(bass ?? root, from, to);
          const chord = {
            root: newRoot,
            tones,
            ...(sameNote(newRoot, newBass) ? {} : { bass: newBass }),
          };
          expect(other?.slot.harmony).toEqual({ kind: 'chord', chord });
        }
      }),
      { numRuns: 300 },
    );
  });

  it.each([
    ['E', 'C', 'Eb', 'G'],
    ['F#', 'C', 'Db', 'G'],
    ['Bb', 'F', 'F#', 'B'],
    ['B', 'C', 'C#', 'B#'],
  ])('the note %s from %s to %s is %s', (note, from, to, expected) => {
    const name = parseNoteName(note);
    if (!name.ok) throw new Error(note);
    expect(makeNoteName(transposeNote(name.value, key(from), key(to)))).toBe(expected);
  });
});
