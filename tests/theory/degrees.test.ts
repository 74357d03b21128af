import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compareDegrees,
  degreeOf,
  LETTERS,
  makeDegree,
  makeNoteName,
  type NoteName,
  noteAt,
  parseDegree,
  parseNoteName,
  pitchClassOf,
  sameDegree,
  semitonesOf,
} from '#theory';
import { degrees } from './short.ts';

function note(text: string): NoteName {
  const name = parseNoteName(text);
  if (!name.ok) throw new Error(`not a note: ${text}`);
  return name.value;
}

const degree = (text: string) => degrees(text)[0] ?? { number: 1, alter: 0 };

const anyRoot = fc.record({
  letter: fc.constantFrom(...LETTERS),
  alter: fc.integer({ min: -2, max: 2 }),
});
const anyDegree = fc.record({
  number: fc.integer({ min: 1, max: 13 }),
  alter: fc.integer({ min: -2, max: 2 }),
});

describe('Degrees', () => {
  // Interval sizes: Open Music Theory v1, "Intervals".
  it.each([
    ['R', 0],
    ['b2', 1],
    ['2', 2],
    ['b3', 3],
    ['3', 4],
    ['4', 5],
    ['#4', 6],
    ['b5', 6],
    ['5', 7],
    ['#5', 8],
    ['6', 9],
    ['bb7', 9],
    ['b7', 10],
    ['7', 11],
    ['b9', 13],
    ['9', 14],
    ['#9', 15],
    ['10', 16],
    ['11', 17],
    ['#11', 18],
    ['12', 19],
    ['b13', 20],
    ['13', 21],
  ])('%s lies %d semitones above the root', (text, semitones) => {
    expect(semitonesOf(degree(text))).toBe(semitones);
  });

  it.each([
    ['♭3', 'b3', '♭3'],
    ['♯9', '#9', '♯9'],
    ['𝄫7', 'bb7', '𝄫7'],
    ['bb7', 'bb7', '𝄫7'],
    ['##4', '##4', '𝄪4'],
    ['R', 'R', 'R'],
    ['1', 'R', 'R'],
    ['b1', 'b1', '♭1'],
  ])('%s is written %s or %s', (text, ascii, sign) => {
    expect(makeDegree(degree(text))).toBe(ascii);
    expect(makeDegree(degree(text), 'sign')).toBe(sign);
  });

  it.each([
    ['', 0],
    ['0', 0],
    ['14', 0],
    ['b', 1],
    ['3b', 0],
    ['b3x', 1],
    ['r', 0],
    ['RR', 0],
    ['3.0', 0],
    ['03', 0],
  ])('%j is refused at %d', (text, at) => {
    const result = parseDegree(text);
    if (result.ok) throw new Error('was read');
    expect(result.error).toMatchObject({ code: 'degree', at, found: text.slice(at) });
    expect(result.error.expected).toContain('R');
  });

  it('come back from their text in both styles', () => {
    fc.assert(
      fc.property(anyDegree, fc.constantFrom('ascii' as const, 'sign' as const), (d, style) => {
        expect(parseDegree(makeDegree(d, style))).toEqual({ ok: true, value: d });
      }),
    );
  });

  it('never throw on any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const result = parseDegree(text);
        if (!result.ok) expect(result.error.at).toBeLessThanOrEqual(text.length);
      }),
    );
  });

  it('are ordered by number, then by alteration', () => {
    const sorted = [...degrees('13 #9 b9 R 5 b5 9')].sort(compareDegrees);
    expect(sorted.map((d) => makeDegree(d)).join(' ')).toBe('R b5 5 b9 9 #9 13');
  });

  it('are the same when number and alteration are', () => {
    expect(sameDegree(degree('b3'), degree('♭3'))).toBe(true);
    expect(sameDegree(degree('#9'), degree('b3'))).toBe(false);
    expect(sameDegree(degree('9'), degree('b9'))).toBe(false);
  });
});

describe('Notes at degrees', () => {
  // Interval names: C to D♯ is an augmented second, C to E♭ a minor third (letters fix the number).
  it.each([
    ['E', '#9', 'F##'],
    ['C', '#9', 'D#'],
    ['Db', 'bb7', 'Cbb'],
    ['B', '#5', 'F##'],
    ['Gb', 'b3', 'Bbb'],
    ['A#', '3', 'C##'],
    ['F#', 'b9', 'G'],
    ['Ab', 'b13', 'Fb'],
    ['C', 'R', 'C'],
    ['B#', '7', 'A##'],
    ['Fbb', 'bb7', 'Ebbbb'],
  ])('above %s, %s is %s', (root, text, name) => {
    expect(makeNoteName(noteAt(note(root), degree(text)))).toBe(name);
  });

  it('have the letter that the number says and the pitch class that the semitones say', () => {
    fc.assert(
      fc.property(anyRoot, anyDegree, (root, d) => {
        const name = noteAt(root, d);
        const letter = (LETTERS.indexOf(root.letter) + d.number - 1) % 7;
        expect(name.letter).toBe(LETTERS[letter]);
        expect(pitchClassOf(name)).toBe((pitchClassOf(root) + semitonesOf(d) + 36) % 12);
      }),
    );
  });

  it('give their degree back, folded into one octave', () => {
    fc.assert(
      fc.property(anyRoot, anyDegree, (root, d) => {
        const folded = { number: ((d.number - 1) % 7) + 1, alter: d.alter };
        expect(degreeOf(root, noteAt(root, d))).toEqual(folded);
      }),
    );
  });

  it.each([
    ['C', 'D#', '#2'],
    ['C', 'Eb', 'b3'],
    ['F', 'B', '#4'],
    ['B', 'F', 'b5'],
    ['C', 'Bbb', 'bb7'],
    ['C', 'Cb', 'b1'],
    ['B', 'C', 'b2'],
    ['Cb', 'B#', '##7'],
  ])('from %s, %s is %s', (root, name, text) => {
    expect(makeDegree(degreeOf(note(root), note(name)))).toBe(text);
  });
});
