import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  keysAt,
  MODES,
  makeKey,
  makeNoteName,
  parseKey,
  pitchClass,
  pitchClassOf,
  scaleNotes,
  sharpsOf,
  stepKey,
} from '#theory';
import { key } from './key-short.ts';

const ALL_KEYS = MODES.flatMap((mode) =>
  Array.from({ length: 12 }, (_, pc) => keysAt(pitchClass(pc), mode)).flat(),
);

describe('reading a key', () => {
  it.each([
    ['Am', 'A minor'],
    ['F# minor', 'F# minor'],
    ['Eb', 'Eb major'],
    ['c minor', 'C minor'],
    ['Bb major', 'Bb major'],
    ['B♭ maj', 'Bb major'],
    ['E♭m', 'Eb minor'],
    ['C M', 'C major'],
    ['A-moll', 'A minor'],
    ['  D  ', 'D major'],
  ])('%j is %s', (text, made) => expect(makeKey(key(text), 'ascii')).toBe(made));

  it.each([
    ['', 'tonic', 0],
    ['H', 'tonic', 0],
    ['Cbbb', 'tonic', 0],
    ['C foo', 'mode', 2],
    ['A dorian', 'mode', 2],
    ['constructor', 'mode', 1],
  ])('%j is an error: %s at %d', (text, code, at) => {
    expect(parseKey(text)).toMatchObject({ ok: false, error: { code, at } });
  });

  it('asks for a capital where the mode is not named', () => {
    expect(parseKey('a')).toMatchObject({ ok: false, error: { suggestion: 'A' } });
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => typeof parseKey(text).ok === 'boolean'),
    );
  });

  it('is undone by writing it', () => {
    for (const written of ALL_KEYS) {
      expect(key(makeKey(written))).toEqual(written);
      expect(key(makeKey(written, 'ascii'))).toEqual(written);
    }
  });
});

describe('signatures', () => {
  // Order of sharps F C G D A E B, flats reversed: Open Music Theory, "Key signatures".
  it.each([
    ['C', 0],
    ['G', 1],
    ['D', 2],
    ['A', 3],
    ['E', 4],
    ['B', 5],
    ['F#', 6],
    ['C#', 7],
    ['F', -1],
    ['Bb', -2],
    ['Eb', -3],
    ['Ab', -4],
    ['Db', -5],
    ['Gb', -6],
    ['Cb', -7],
    ['Am', 0],
    ['F#m', 3],
    ['Cm', -3],
    ['D#m', 6],
    ['Ebm', -6],
  ])('%s has %d', (text, sharps) => expect(sharpsOf(key(text))).toBe(sharps));

  it('exist for 15 major and 15 minor keys', () => expect(ALL_KEYS).toHaveLength(30));

  it.each([
    ['Eb', 'Eb F G Ab Bb C D'],
    ['C#m', 'C# D# E F# G# A B'],
    ['Cb', 'Cb Db Eb Fb Gb Ab Bb'],
    ['Abm', 'Ab Bb Cb Db Eb Fb Gb'],
  ])('%s has the notes %s', (text, notes) => {
    const names = scaleNotes(key(text)).map((name) => makeNoteName(name));
    expect(names.join(' ')).toBe(notes);
  });
});

describe('stepping', () => {
  it.each([
    ['C', 1, 'Db major'],
    ['C', -1, 'B major'],
    ['F', 1, 'Gb major'],
    ['G', -1, 'F# major'],
    ['E', 2, 'F# major'],
    ['Ab', -2, 'Gb major'],
    ['Am', 1, 'Bb minor'],
    ['Gm', 1, 'G# minor'],
    ['Fm', 1, 'F# minor'],
    ['C#', 1, 'D major'],
  ])('from %s by %d comes to %s', (from, step, to) => {
    expect(makeKey(stepKey(key(from), step), 'ascii')).toBe(to);
  });

  it('lands on the pitch asked for', () => {
    fc.assert(
      fc.property(fc.constantFrom(...ALL_KEYS), fc.integer({ min: -30, max: 30 }), (from, step) => {
        const to = stepKey(from, step);
        expect(pitchClassOf(to.tonic)).toBe(pitchClass(pitchClassOf(from.tonic) + step));
        expect(to.mode).toBe(from.mode);
      }),
    );
  });

  it('by whole octaves stays where it is', () => {
    const from = key('F#');
    expect(stepKey(from, 0)).toBe(from);
    expect(stepKey(from, -12)).toBe(from);
  });
});
