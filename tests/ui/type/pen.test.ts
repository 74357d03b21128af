import { describe, expect, it } from 'vitest';
import { makeDegree, makeNoteName, parseDegree, parseNoteName } from '#theory';
import { penOf } from '../../../src/ui/type/pen.ts';
import { PENS } from '../../../src/ui/type/pens.ts';

// An em of 128 units: at a size of 64 everything is half as large.
const pen = penOf('A 100 m10 -20l4 0z\n♭ 40 m2 0z');

describe('a pen', () => {
  it('writes from the left so that the middle of the text is where it was asked for', () => {
    expect(pen('A', { x: 50, y: 7, size: 64 })).toBe('M25 7m5 -10l2 0z');
    expect(pen('♭A', { x: 50, y: 7, size: 64 })).toBe('M15 7m1 0zM35 7m5 -10l2 0z');
  });

  it('underlines the width of the text', () => {
    const path = pen('A', { x: 50, y: 0, size: 64, underlined: true });
    expect(path).toMatch(/^M25 6\.4h50v4\.48h-50zM25 0m/);
  });

  it('does not write a text with a character that its face lacks', () => {
    expect(pen('AB', { x: 0, y: 0, size: 16 })).toBeUndefined();
  });

  it('writes nothing for nothing', () => {
    expect(pen('', { x: 0, y: 0, size: 16 })).toBe('');
  });
});

const ACCIDENTALS = ['', 'b', '#', 'bb', '##'];
const spot = { x: 10, y: 10, size: 15 };

describe('the pens of the neck', () => {
  it.each(['label', 'quiet'] as const)('write every degree, note and finger: %s', (name) => {
    const degrees = ['2', '3', '4', '5', '6', '7', '9', '11', '13'].flatMap((number) =>
      ACCIDENTALS.flatMap((sign) => {
        const degree = parseDegree(sign + number);
        return degree.ok ? [makeDegree(degree.value, 'sign')] : [];
      }),
    );
    const notes = [...'ABCDEFG'].flatMap((letter) =>
      ACCIDENTALS.flatMap((sign) => {
        const note = parseNoteName(letter + sign);
        return note.ok ? [makeNoteName(note.value, 'sign')] : [];
      }),
    );
    expect(degrees).toHaveLength(45);
    expect(notes).toHaveLength(35);
    const texts = ['R', ...degrees, ...notes, '1', '2', '3', '4'];
    expect(texts.filter((text) => PENS[name](text, spot) === undefined)).toEqual([]);
  });

  it.each(['bracket', 'chosen'] as const)('write the names of forms: %s', (name) => {
    const names = ['C', 'A', 'G', 'E', 'D', 'E♭', 'F♯'];
    expect(names.filter((text) => PENS[name](text, spot) === undefined)).toEqual([]);
    expect(PENS[name]('my form', spot)).toBeUndefined();
  });
});
