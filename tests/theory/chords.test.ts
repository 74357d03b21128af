import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Chord,
  chordNotes,
  isSilent,
  LETTERS,
  makeNoteName,
  parseChord,
  parseNoteName,
  pitchClassOf,
  semitonesOf,
} from '#theory';
import { ALL_ROOTS, chord, meaning, notes } from './short.ts';

const semitones = (read: Chord): string => read.tones.map((tone) => semitonesOf(tone)).join(' ');

describe('Chord symbols by published tables', () => {
  // C. Harte, M. Sandler, S. Abdallah, E. Gómez, "Symbolic representation of musical chords: a
  // proposed syntax for text annotations", ISMIR 2005, table 1 (shorthands; root implied).
  it.each([
    ['maj', 'R 3 5', '0 4 7'],
    ['min', 'R b3 5', '0 3 7'],
    ['dim', 'R b3 b5', '0 3 6'],
    ['aug', 'R 3 #5', '0 4 8'],
    ['maj7', 'R 3 5 7', '0 4 7 11'],
    ['min7', 'R b3 5 b7', '0 3 7 10'],
    ['7', 'R 3 5 b7', '0 4 7 10'],
    ['dim7', 'R b3 b5 bb7', '0 3 6 9'],
    ['hdim7', 'R b3 b5 b7', '0 3 6 10'],
    ['minmaj7', 'R b3 5 7', '0 3 7 11'],
    ['maj6', 'R 3 5 6', '0 4 7 9'],
    ['min6', 'R b3 5 6', '0 3 7 9'],
    ['9', 'R 3 5 b7 9', '0 4 7 10 14'],
    ['maj9', 'R 3 5 7 9', '0 4 7 11 14'],
    ['min9', 'R b3 5 b7 9', '0 3 7 10 14'],
    ['sus4', 'R 4 5', '0 5 7'],
    // Extensions of mir_eval 0.8 (chord.py).
    ['sus2', 'R 2 5', '0 2 7'],
    ['5', 'R 5', '0 7'],
    ['aug7', 'R 3 #5 b7', '0 4 8 10'],
    ['11', 'R 3 5 b7 9 11', '0 4 7 10 14 17'],
    ['maj11', 'R 3 5 7 9 11', '0 4 7 11 14 17'],
    ['min11', 'R b3 5 b7 9 11', '0 3 7 10 14 17'],
    ['13', 'R 3 5 b7 9 11 13', '0 4 7 10 14 17 21'],
    ['maj13', 'R 3 5 7 9 11 13', '0 4 7 11 14 17 21'],
    ['min13', 'R b3 5 b7 9 11 13', '0 3 7 10 14 17 21'],
  ])('the shorthand %s is %s', (shorthand, tones, sounding) => {
    expect(meaning(`C${shorthand}`)).toBe(tones);
    expect(meaning(`C:${shorthand}`)).toBe(tones);
    expect(semitones(chord(`C${shorthand}`))).toBe(sounding);
  });

  // Open Music Theory v1, "Triads and seventh chords": thirds, fifths and sevenths of each quality.
  it.each([
    ['C', 'major third, perfect fifth', '0 4 7'],
    ['Cm', 'minor third, perfect fifth', '0 3 7'],
    ['C°', 'minor third, diminished fifth', '0 3 6'],
    ['C+', 'major third, augmented fifth', '0 4 8'],
    ['CM7', 'major triad, major seventh', '0 4 7 11'],
    ['C7', 'major triad, minor seventh', '0 4 7 10'],
    ['Cm7', 'minor triad, minor seventh', '0 3 7 10'],
    ['Cø7', 'diminished triad, minor seventh', '0 3 6 10'],
    ['C°7', 'diminished triad, diminished seventh', '0 3 6 9'],
  ])('%s has %s', (symbol, _, sounding) => {
    expect(semitones(chord(symbol))).toBe(sounding);
  });

  // MusicXML 4.0, kind-value and degree: the chords that the standard and its tutorial describe.
  it.each([
    ['Cmaj7', 'major-seventh', 'R 3 5 7'],
    ['Cm7b5', 'half-diminished', 'R b3 b5 b7'],
    ['CmM7', 'major-minor', 'R b3 5 7'],
    ['Caug7', 'augmented-seventh', 'R 3 #5 b7'],
    ['C7sus4', 'suspended-fourth, 7 added', 'R 4 5 b7'],
    ['Csus2', 'suspended-second', 'R 2 5'],
    ['C7#9', 'dominant, ♯9 added', 'R 3 5 b7 #9'],
    ['A(add9)', 'major, 9 added', 'R 3 5 9'],
    ['C5', 'power', 'R 5'],
    ['C9', 'dominant-ninth', 'R 3 5 b7 9'],
    ['C11', 'dominant-11th', 'R 3 5 b7 9 11'],
    ['C13', 'dominant-13th', 'R 3 5 b7 9 11 13'],
    ['Cmaj11', 'major-11th', 'R 3 5 7 9 11'],
    ['Cm11', 'minor-11th', 'R b3 5 b7 9 11'],
    ['Cmaj13', 'major-13th', 'R 3 5 7 9 11 13'],
    ['Cm13', 'minor-13th', 'R b3 5 b7 9 11 13'],
  ])('%s is the MusicXML kind %s', (symbol, _, tones) => {
    expect(meaning(symbol)).toBe(tones);
  });

  // Where the standard and tonal's dictionary differ, the standard is followed.
  it.each([
    ['C11', 'R 3 5 b7 9 11'],
    ['C13', 'R 3 5 b7 9 11 13'],
    ['Caug7', 'R 3 #5 b7'],
    ['Cm13', 'R b3 5 b7 9 11 13'],
  ])('%s is %s, as in MusicXML 4.0', (symbol, tones) => {
    expect(meaning(symbol)).toBe(tones);
  });

  // Letter-by-letter spelling: the degree's number fixes the letter; computed, half of them also
  // compared with music21.
  it.each([
    ['Cdim7', 'C Eb Gb Bbb'],
    ['Bdim7', 'B D F Ab'],
    ['G#dim7', 'G# B D F'],
    ['Ebdim7', 'Eb Gb Bbb Dbb'],
    ['Dbdim7', 'Db Fb Abb Cbb'],
    ['F#ø7', 'F# A C E'],
    ['Bbø7', 'Bb Db Fb Ab'],
    ['Baug', 'B D# F##'],
    ['Caug7', 'C E G# Bb'],
    ['Gaug7', 'G B D# F'],
    ['Ebm(maj7)', 'Eb Gb Bb D'],
    ['A#m', 'A# C# E#'],
    ['E7#9', 'E G# B D F##'],
    ['C7#9', 'C E G Bb D#'],
    ['A7#9', 'A C# E G B#'],
    ['Ab7b9', 'Ab C Eb Gb Bbb'],
    ['B7b9', 'B D# F# A C'],
    ['Db9', 'Db F Ab Cb Eb'],
    ['Abm7', 'Ab Cb Eb Gb'],
    ['Gbmaj7#11', 'Gb Bb Db F C'],
    ['A13', 'A C# E G B D F#'],
    ['E7sus4', 'E A B D'],
    ['Bbsus2', 'Bb C F'],
    ['G7b13', 'G B D F Eb'],
  ])('%s is spelled %s', (symbol, spelled) => {
    expect(notes(symbol)).toBe(spelled);
  });

  // Parse tests of mir_eval 0.8.2: pitch classes and bass, in Harte's syntax.
  it.each([
    ['C:(b3,5,b7)', 'R b3 5 b7'],
    ['D:min', 'R b3 5'],
    ['C:7(*5)', 'R 3 b7'],
    ['G#:min(*b3,*5)/5', 'R /D#'],
    ['G#:maj6(*5)/1', 'R 3 6'],
    ['D#:sus2(7)/1', 'R 2 5 7'],
    ['C#:dim7/bb7', 'R b3 b5 bb7 /Bb'],
    ['Eb:min7(9)/5', 'R b3 5 b7 9 /Bb'],
    ['C:maj/3', 'R 3 5 /E'],
    ['C:/5', 'R 3 5 /G'],
    ['C:1', 'R'],
    ['C:maj(9)', 'R 3 5 9'],
    ['C:sus4(b7, 9)', 'R 4 5 b7 9'],
    ['C:maj/E', 'R 3 5 /E'],
    ['C:', 'quality at 2'],
    ['C:xlah', 'quality at 2'],
    ['C:maj(x)', 'tension at 6'],
    ['C:maj(9', 'quality at 1'],
    ['C:maj/14', 'tension at 6'],
  ])('%s is %s', (symbol, tones) => {
    expect(meaning(symbol)).toBe(tones);
  });
});

/** Qualities of every kind, for properties that hold for all roots. */
const QUALITIES = (
  ' m 7 maj7 m7 dim dim7 m7b5 aug 7#5 maj7#5 m(maj7) 6 m6 6/9 m6/9 9 m9 maj9 11 m11 maj11 13 m13 ' +
  'maj13 sus2 sus4 7sus4 9sus4 13sus4 (add9) m(add9) (add11) 5 7alt 7(b9) 7(#9) 7(b5) 7(#11) 7(b13) ' +
  '7(b9,#9) 13(#11) 13(b9) maj7(#11) dim(maj7) 7(no3) (b5) m9b5 sus24 :(b2,#4,bb7)'
).split(' ');

describe('Chords on every root with up to two accidentals', () => {
  it.each(ALL_ROOTS)('on %s are spelled by the letters of their degrees', (root) => {
    const name = parseNoteName(root);
    if (!name.ok) throw new Error(root);
    for (const quality of QUALITIES) {
      const read = chord(root + quality);
      expect(read.root).toEqual(name.value);
      chordNotes(read).forEach((note, i) => {
        const tone = read.tones[i] ?? { number: 0, alter: 0 };
        const letter = (LETTERS.indexOf(read.root.letter) + tone.number - 1) % 7;
        expect(note.letter).toBe(LETTERS[letter]);
        const sounding = pitchClassOf(read.root) + semitonesOf(tone);
        expect(pitchClassOf(note)).toBe((sounding + 36) % 12);
      });
    }
  });

  it.each(ALL_ROOTS)('on %s have the same degrees as on C', (root) => {
    for (const quality of QUALITIES) expect(meaning(root + quality)).toBe(meaning(`C${quality}`));
  });

  it('take every accidental that follows the letter', () => {
    expect(notes('Bb5')).toBe('Bb F');
    expect(notes('Cb5')).toBe('Cb Gb');
    expect(notes('C(b5)')).toBe('C E Gb');
    expect(notes('Cb9')).toBe('Cb Eb Gb Bbb Db');
    expect(notes('Ebb')).toBe('Ebb Gb Bbb');
    expect(notes('C#b5')).toBe('C# E# G');
  });

  it('name a bass only when it is not the root', () => {
    expect(chord('C/E').bass).toEqual({ letter: 'E', alter: 0 });
    expect('bass' in chord('C/C')).toBe(false);
    expect(chord('B/Cb').bass).toEqual({ letter: 'C', alter: -1 });
  });

  it('of a symmetrical dim7 sound alike and are spelled from the written root', () => {
    const sound = (symbol: string) => chordNotes(chord(symbol)).map(pitchClassOf).sort().join(' ');
    expect(sound('Cdim7')).toBe(sound('D#dim7'));
    expect(notes('Cdim7')).not.toBe(notes('D#dim7'));
  });
});

describe('Symbols that mean nothing', () => {
  it.each([
    ['', 'empty', 0, ''],
    ['   ', 'empty', 0, ''],
    ['am', 'root', 0, 'a'],
    ['em7', 'root', 0, 'e'],
    ['Hm', 'root', 0, 'H'],
    [' Xm', 'root', 1, 'X'],
    ['do', 'root', 0, 'd'],
    ['N.C.', 'root', 0, 'N'],
    ['/G', 'root', 0, '/'],
    ['As', 'quality', 1, 's'],
    ['Es', 'quality', 1, 's'],
    ['Csuz4', 'quality', 1, 'suz4'],
    ['Cmaaj7', 'quality', 3, 'aj7'],
    ['Cmjaor', 'quality', 3, 'aor'],
    ['C7xyz', 'quality', 2, 'xyz'],
    ['Cmaj7foo', 'quality', 5, 'foo'],
    ['C△7foo', 'quality', 3, 'foo'],
    ['C7-', 'quality', 2, '-'],
    ['B°b', 'tension', 2, 'b'],
    ['C7#', 'tension', 2, '#'],
    ['C8', 'tension', 1, '8'],
    ['C12', 'tension', 1, '12'],
    ['C3', 'tension', 1, '3'],
    ['C10', 'tension', 1, '10'],
    ['C1', 'tension', 1, '1'],
    ['C7(b8)', 'tension', 4, '8'],
    ['C7#13', 'tension', 2, '#13'],
    ['C7b11', 'tension', 2, 'b11'],
    ['Cm7(b)', 'tension', 4, 'b'],
    ['Cadd', 'tension', 4, ''],
    ['Cadd8', 'tension', 4, '8'],
    ['Cno', 'tension', 3, ''],
    ['C65', 'tension', 2, '5'],
    ['C7(b9', 'bracket', 5, ''],
    ['(C7', 'bracket', 3, ''],
    ['C7b9)', 'bracket', 4, ')'],
    ['C7(b9]', 'bracket', 5, ']'],
    ['C7()', 'bracket', 3, ')'],
    ['C/', 'bass', 1, '/'],
    ['C/H', 'bass', 2, 'H'],
    ['C/G7', 'bass', 2, 'G7'],
    ['C/E/G', 'bass', 2, 'E'],
    ['Cmin-maj-min', 'conflict', 9, 'min'],
    ['CmM7m', 'conflict', 4, 'm'],
    ['Cmaj7 7', 'conflict', 6, '7'],
    ['C7maj7', 'conflict', 2, 'maj'],
    ['C7no3add3', 'conflict', 2, 'no3'],
    ['C7b9b9', 'conflict', 4, 'b9'],
    ['C99', 'conflict', 2, '9'],
    ['Cno9', 'conflict', 1, 'no9'],
  ] as const)('%j fails as %s at %d', (symbol, code, at, found) => {
    const result = parseChord(symbol);
    if (result.ok) throw new Error(`was read as ${meaning(symbol)}`);
    expect(result.error).toMatchObject({ code, at, found, length: found.length });
    expect(result.error.expected.length).toBeGreaterThan(0);
  });

  it('of more than 64 characters are not looked into', () => {
    const symbol = `C7${'(b9)'.repeat(40)}`;
    expect(parseChord(symbol)).toMatchObject({ ok: false, error: { code: 'long', at: 64 } });
    expect(parseChord('('.repeat(1_000_000)).ok).toBe(false);
    expect(isSilent(`N${'*'.repeat(1_000_000)}x`)).toBe(false);
  });

  it('give positions in the typed text, not in its plain form', () => {
    expect(meaning('C𝄫♭x')).toBe('quality at 4');
    expect(meaning('C⁷⁽♭⁹')).toBe('bracket at 5');
  });
});

/** Pieces of chord symbols in any order, and now and then something else. */
const PIECES = (
  'C D E F G A B # b ♯ ♭ m M maj min - + ° ø Δ dim aug sus add no 2 3 4 5 6 7 9 11 13 69 alt ( ) [ ] / \\ ' +
  ', . x 0 8 omit dom ^ j h N.C. 𝄫 ² '
).split(' ');
const anySymbol = fc.oneof(
  fc.array(fc.constantFrom(...PIECES), { maxLength: 12 }).map((pieces) => pieces.join('')),
  fc.array(fc.constantFrom(...PIECES), { maxLength: 9 }).map((pieces) => `C${pieces.join('')}`),
  fc.string({ unit: 'binary', maxLength: 80 }),
);

describe('Any text as a chord symbol', () => {
  it('is read, or fails inside the text with something expected', () => {
    fc.assert(
      fc.property(anySymbol, (symbol) => {
        const result = parseChord(symbol);
        if (result.ok) return;
        const { at, length, found, expected } = result.error;
        expect(at).toBeGreaterThanOrEqual(0);
        expect(at + length).toBeLessThanOrEqual(symbol.length);
        expect(symbol.slice(at, at + length)).toBe(found);
        expect(expected.length).toBeGreaterThan(0);
      }),
      { numRuns: 1500 },
    );
  });

  it('gives tones with the root first, ascending, each once', () => {
    fc.assert(
      fc.property(anySymbol, (symbol) => {
        const result = parseChord(symbol);
        if (!result.ok) return;
        const { tones } = result.value;
        expect(tones[0]).toEqual({ number: 1, alter: 0 });
        tones.slice(1).forEach((tone, i) => {
          const before = tones[i] ?? { number: 0, alter: 0 };
          expect(tone.number * 10 + tone.alter).toBeGreaterThan(before.number * 10 + before.alter);
          expect(tone.number).toBeLessThanOrEqual(13);
        });
      }),
      { numRuns: 1500 },
    );
  });

  it('suggests only what can be read', () => {
    fc.assert(
      fc.property(anySymbol, (symbol) => {
        const result = parseChord(symbol);
        if (result.ok || result.error.suggestion === undefined) return;
        expect(parseChord(result.error.suggestion).ok).toBe(true);
      }),
      { numRuns: 1500 },
    );
  });

  it('gives the same object when it is asked again', () => {
    expect(parseChord('F#m7b5')).toBe(parseChord('F#m7b5'));
    expect(parseChord('Hm')).toBe(parseChord('Hm'));
  });
});

describe('Silence', () => {
  it.each(
    'N.C.,NC,N.C,n.c.,nc,N,NoChord,No Chord,no chord,no_chord,no-chord,(N.C.),[N.C.],N.C.*,N/C,N. C.,Tacet'.split(
      ',',
    ),
  )('is meant by %s', (symbol) => {
    expect(isSilent(symbol)).toBe(true);
    expect(parseChord(symbol).ok).toBe(false);
  });

  it.each(['C', '', 'n', 'No', 'Nc7', 'N.', 'Chord', 'Cno3', 'N.C.7'])('is not %j', (symbol) => {
    expect(isSilent(symbol)).toBe(false);
  });
});

describe('Chord notes', () => {
  it('stand in the order of the tones', () => {
    const read = chord('F#m9/E');
    expect(chordNotes(read).map((name) => makeNoteName(name))).toEqual([
      'F#',
      'A',
      'C#',
      'E',
      'G#',
    ]);
    expect(chordNotes(read)).toHaveLength(read.tones.length);
  });
});
