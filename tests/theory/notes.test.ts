import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  frequencyOf,
  LETTERS,
  makeNoteName,
  makePitch,
  midi,
  midiOf,
  type NoteName,
  parseNoteName,
  parsePitch,
  pitchAt,
  pitchClass,
  pitchClassOf,
  plainName,
  sameNote,
} from '#theory';

function note(text: string): NoteName {
  const name = parseNoteName(text);
  if (!name.ok) throw new Error(`not a note: ${text}`);
  return name.value;
}

const midiOfText = (text: string): number => {
  const pitch = parsePitch(text);
  return pitch.ok ? midiOf(pitch.value) : Number.NaN;
};

const anyName = fc.record({
  letter: fc.constantFrom(...LETTERS),
  alter: fc.integer({ min: -6, max: 6 }),
});

describe('Note names', () => {
  it.each([
    ['C', 'C', 0],
    ['F#', 'F', 1],
    ['F♯', 'F', 1],
    ['Bb', 'B', -1],
    ['B♭', 'B', -1],
    ['Ebb', 'E', -2],
    ['E♭♭', 'E', -2],
    ['E♭b', 'E', -2],
    ['E𝄫', 'E', -2],
    ['F##', 'F', 2],
    ['F♯♯', 'F', 2],
    ['F𝄪', 'F', 2],
    ['Fx', 'F', 2],
    ['Bbbb', 'B', -3],
    ['G𝄪♯', 'G', 3],
  ] as const)('%s is the letter %s altered by %d', (text, letter, alter) => {
    expect(note(text)).toEqual({ letter, alter });
  });

  it.each([
    ['', 'letter', 0, undefined],
    ['H', 'letter', 0, undefined],
    ['c#', 'letter', 0, 'C#'],
    ['C#b', 'accidental', 2, undefined],
    ['C4', 'accidental', 1, undefined],
    ['Cm', 'accidental', 1, undefined],
    ['C#######', 'accidental', 7, undefined],
  ] as const)('%j is refused as %s at %d', (text, code, at, suggestion) => {
    const result = parseNoteName(text);
    if (result.ok) throw new Error('was read');
    expect(result.error).toMatchObject({ code, at });
    expect(result.error.suggestion).toBe(suggestion);
    expect(result.error.expected.length).toBeGreaterThan(0);
  });

  it.each([
    ['Bbb', 'Bbb', 'B𝄫'],
    ['F##', 'F##', 'F𝄪'],
    ['Gbbb', 'Gbbb', 'G𝄫♭'],
    ['E#', 'E#', 'E♯'],
    ['A', 'A', 'A'],
  ])('%s is written %s or %s', (text, ascii, sign) => {
    expect(makeNoteName(note(text))).toBe(ascii);
    expect(makeNoteName(note(text), 'sign')).toBe(sign);
  });

  it('come back from their text in both styles', () => {
    fc.assert(
      fc.property(anyName, fc.constantFrom('ascii' as const, 'sign' as const), (name, style) => {
        expect(note(makeNoteName(name, style))).toEqual(name);
      }),
    );
  });

  it('never throw, and err inside the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        for (const result of [parseNoteName(text), parsePitch(text)]) {
          if (result.ok) continue;
          const { at, length, found } = result.error;
          expect(text.slice(at, at + length)).toBe(found);
          expect(at).toBeLessThanOrEqual(text.length);
        }
      }),
    );
  });

  it('are the same when letter and alteration are', () => {
    expect(sameNote(note('F#'), note('F♯'))).toBe(true);
    expect(sameNote(note('F#'), note('Gb'))).toBe(false);
    expect(sameNote(note('F#'), note('F'))).toBe(false);
  });
});

describe('Pitches', () => {
  it.each([
    ['E2', 40],
    ['A2', 45],
    ['C4', 60],
    ['A4', 69],
    // The octave belongs to the letter (Open Music Theory v1, "Pitches").
    ['Cb4', 59],
    ['B#3', 60],
    ['C-1', 0],
    ['G9', 127],
    ['Bbb3', 57],
    ['D♯5', 75],
  ])('%s is note number %d', (text, number) => {
    expect(midiOfText(text)).toBe(number);
  });

  it.each([
    ['', 'letter', 0],
    ['4', 'letter', 0],
    ['C', 'octave', 1],
    ['C#', 'octave', 2],
    ['C10', 'octave', 1],
    ['C-2', 'octave', 1],
    ['C4x', 'octave', 1],
  ] as const)('%j is refused as %s at %d', (text, code, at) => {
    expect(parsePitch(text)).toMatchObject({ ok: false, error: { code, at } });
  });

  it('come back from their text', () => {
    const octaves = fc.integer({ min: -1, max: 9 });
    fc.assert(
      fc.property(anyName, octaves, (name, octave) => {
        expect(parsePitch(makePitch({ ...name, octave }))).toEqual({
          ok: true,
          value: { ...name, octave },
        });
      }),
    );
  });

  it('are found from a name and what sounds', () => {
    expect(makePitch(pitchAt(note('Cb'), midi(59)))).toBe('Cb4');
    expect(makePitch(pitchAt(note('B#'), midi(60)))).toBe('B#3');
    expect(makePitch(pitchAt(note('F##'), midi(67)), 'sign')).toBe('F𝄪4');
    fc.assert(
      fc.property(anyName, fc.integer({ min: 0, max: 10 }), (name, octave) => {
        const sounding = midi(12 * octave + pitchClassOf(name));
        expect(midiOf(pitchAt(name, sounding))).toBe(sounding);
      }),
    );
  });

  it('refuse a name that cannot sound there', () => {
    expect(() => pitchAt(note('C'), midi(61))).toThrow(RangeError);
  });
});

describe('Frequencies', () => {
  // Hz to two decimals: B. H. Suits, Michigan Tech, table of note frequencies.
  it.each([
    ['E2', 82.41],
    ['A2', 110],
    ['D3', 146.83],
    ['G3', 196],
    ['B3', 246.94],
    ['E4', 329.63],
  ])('open string %s sounds at %d Hz', (text, hertz) => {
    expect(Math.abs(frequencyOf(midi(midiOfText(text))) - hertz)).toBeLessThan(0.005);
  });

  // Four decimals, computed from 440·2^((n−69)/12).
  it.each([
    [41, 87.3071],
    [43, 97.9989],
    [52, 164.8138],
    [48, 130.8128],
    [57, 220],
    [60, 261.6256],
    [67, 391.9954],
    [69, 440],
    [76, 659.2551],
    [81, 880],
    [86, 1174.6591],
    // OEIS A320304.
    [0, 8.1758],
  ])('note number %d sounds at %d Hz', (number, hertz) => {
    expect(frequencyOf(midi(number))).toBeCloseTo(hertz, 4);
  });

  it('are 500 Hz at B4 and 21.3094853649 cents', () => {
    // GNU Calc manual, section "Musical Notes".
    const cents = 1200 * Math.log2(500 / frequencyOf(midi(midiOfText('B4'))));
    expect(cents).toBeCloseTo(21.3094853649, 9);
  });

  it('double with every octave', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 115 }), (number) => {
        const ratio = frequencyOf(midi(number + 12)) / frequencyOf(midi(number));
        expect(ratio).toBeCloseTo(2, 9);
      }),
    );
  });
});

describe('Note numbers and pitch classes', () => {
  it.each([
    [0, 0],
    [12, 0],
    [-1, 11],
    [61, 1],
    [-13, 11],
  ])('%d wraps to %d', (number, pc) => {
    expect(pitchClass(number)).toBe(pc);
  });

  it('refuse what is no whole number', () => {
    expect(() => pitchClass(0.5)).toThrow(RangeError);
    expect(() => midi(60.5)).toThrow(RangeError);
    expect(() => midi(Number.NaN)).toThrow(RangeError);
  });
});

describe('Plain spelling', () => {
  it.each([
    ['Bbb', 'A'],
    ['F##', 'G'],
    ['Cb', 'B'],
    ['E#', 'F'],
    ['Fb', 'E'],
    ['B#', 'C'],
    ['Gb', 'Gb'],
    ['F#', 'F#'],
    ['Ebb', 'D'],
    ['E##', 'F#'],
    ['Fbb', 'Eb'],
    ['Cbb', 'Bb'],
    ['B##', 'C#'],
    ['A#', 'A#'],
    ['D', 'D'],
  ])('%s is %s', (text, plain) => {
    expect(makeNoteName(plainName(note(text)))).toBe(plain);
  });

  it('of bare pitch classes uses C♯ E♭ F♯ A♭ B♭', () => {
    const names = Array.from({ length: 12 }, (_, pc) => makeNoteName(plainName(pitchClass(pc))));
    expect(names.join(' ')).toBe('C C# D Eb E F F# G Ab A Bb B');
  });

  it('keeps the sound and at most one accidental', () => {
    fc.assert(
      fc.property(anyName, (name) => {
        const plain = plainName(name);
        expect(pitchClassOf(plain)).toBe(pitchClassOf(name));
        expect(Math.abs(plain.alter)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('returns a plain name as it is', () => {
    const before = note('Gb');
    expect(plainName(before)).toBe(before);
  });
});
