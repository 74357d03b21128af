import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Chord, chordNotes, nameChords, parseChord, pitchClass, pitchClassOf } from '#theory';

const OPEN = [40, 45, 50, 55, 59, 64] as const;

/** MIDI numbers of a fingering, string 6 first. */
const sounds = (fingering: string): readonly number[] =>
  [...fingering].flatMap((sign, i) => (sign === 'x' ? [] : [(OPEN[i] ?? 0) + Number(sign)]));

function names(midis: readonly number[]) {
  return nameChords(midis.map(pitchClass), pitchClass(Math.min(...midis)));
}

const classesOf = (symbol: string): readonly number[] => {
  const chord = parseChord(symbol);
  if (!chord.ok) throw new Error(symbol);
  const bass = chord.value.bass === undefined ? [] : [chord.value.bass];
  const classes = [...chordNotes(chord.value), ...bass].map(pitchClassOf);
  return [...new Set(classes)].sort((a, b) => a - b);
};

const natural = ({ tones }: Chord, number: number): boolean =>
  tones.some((tone) => tone.number === number && tone.alter === 0);

/** Semitones above the root that may be missing: fifth, eleventh of a thirteenth, ninth of both. */
const gapsOf = (chord: Chord): readonly number[] => [
  7,
  ...(natural(chord, 13) ? [5] : []),
  ...(natural(chord, 13) || natural(chord, 11) ? [2] : []),
];

describe('the name of a fingering', () => {
  it.each([
    ['x32010', 'C'],
    ['x7678x', 'E7#9'],
    ['xx0232', 'D'],
    ['x02210', 'Am'],
    ['x46664', 'Db'],
    ['022130', 'E7'],
    ['2x0232', 'D/F#'],
    ['332010', 'C/G'],
    ['x24232', 'Bm7'],
    ['3x443x', 'Gmaj7'],
    ['x5453x', 'D7'],
    ['xx1212', 'Ebdim7'],
    ['x30433', 'G/C'],
    ['xx4555', 'F#m7b5'],
    ['x33011', 'Csus4'],
    ['022402', 'Esus2'],
    ['020102', 'E9'],
    ['x02120', 'Amaj7'],
  ])('%s is %s (common practice)', (fingering, symbol) => {
    expect(names(sounds(fingering))[0]?.symbol).toBe(symbol);
  });

  it.each([
    ['x32210', 'Am/C', 'C6', 'a triad is complete, the sixth lacks its fifth'],
    ['3x3211', 'F/G', 'G9sus4', 'a triad whose ninth is the bass is written over it'],
    ['x30232', 'D/C', 'D7/C', 'and one whose seventh is'],
    ['302020', 'A7/G', 'A/G', 'unless the seventh sounds again higher up'],
    ['x32100', 'Cmaj7#5', 'E/C', 'a seventh chord on its root comes before a triad over its bass'],
    ['x30433', 'G/C', 'Cmaj7sus2', 'but not one that nobody writes'],
    ['xx0011', 'G7sus4/D', 'Dm11', 'nothing is left out'],
    ['x33343', 'Cm11', 'Eb69/C', 'the lowest note is the root, and only the ninth is missing'],
    ['x32552', 'C(b5)', 'Am6', 'what has no root comes late'],
  ])('%s is %s rather than %s: %s (common practice)', (fingering, first, later) => {
    const symbols = names(sounds(fingering)).map(({ symbol }) => symbol);
    expect(symbols[0]).toBe(first);
    expect(symbols).toContain(later);
  });

  it.each([
    ['0x0122', 'E13'],
    ['3x345x', 'G13'],
    ['x00010', 'Am11'],
  ])('%s is %s, though the stack has gaps (common practice)', (fingering, symbol) => {
    expect(names(sounds(fingering))[0]?.symbol).toBe(symbol);
  });

  it.each([
    ['466444', 'G#m'],
    ['466544', 'Ab'],
    ['422000', 'Em/G#'],
    ['xx1100', 'E/D#'],
    ['1x2220', 'A/F'],
  ])('%s is %s in the simplest spelling', (fingering, symbol) => {
    expect(names(sounds(fingering)).map((reading) => reading.symbol)).toContain(symbol);
  });

  it('has rootless readings, marked as such', () => {
    const rootless = names(sounds('xx4555')).filter((reading) => reading.rootless);
    expect(rootless.map((reading) => reading.symbol)).toContain('D9');
  });

  it('is nothing for one note alone', () => {
    expect(names([40, 52])).toEqual([]);
  });

  it('names what sounds: no note is added but a root, a fifth or the gaps of a stack, none is left out', () => {
    const notes = fc.uniqueArray(fc.integer({ min: 40, max: 75 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(notes, (midis) => {
        const sounding = new Set(midis.map((midi) => midi % 12));
        for (const { symbol, rootless, chord } of names(midis)) {
          const named = classesOf(symbol);
          expect([...sounding].every((sound) => named.includes(sound))).toBe(true);
          const silent = named.filter((sound) => !sounding.has(sound));
          const root = pitchClassOf(chord.root);
          const mayBeSilent = [...gapsOf(chord), ...(rootless ? [0] : [])].map(
            (semitones) => (root + semitones) % 12,
          );
          expect(silent.every((sound) => mayBeSilent.includes(sound))).toBe(true);
        }
      }),
    );
  });
});
