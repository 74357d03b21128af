import { describe, expect, it } from 'vitest';
import type { Reading } from '#neck';
import {
  barreLines,
  gripLine,
  type Labels,
  OUTLINES,
  outlinePath,
  type ToneMark,
  toneMarks,
} from '../../../src/ui/neck/marks.ts';
import { brackets } from '../../../src/ui/neck/places.ts';
import { LAYOUT, read } from './support.ts';

const BM7 = 'B: R b3 5 b7';
const marksOf = (position: number, labels: Labels = 'degrees', colours = '') =>
  toneMarks(read(BM7, position, colours), LAYOUT, labels);
const marksIn = (reading: Reading) => toneMarks(reading, LAYOUT, 'degrees');
const at = (marks: readonly ToneMark[], key: string) => marks.find((mark) => mark.key === key);

describe('toneMarks', () => {
  it('gives every place one key', () => {
    const keys = marksOf(7).map((mark) => mark.key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toContain('6:7');
  });

  it('tells root, chord tone and colour tone apart by outline', () => {
    const marks = marksOf(7, 'degrees', '9');
    expect(at(marks, '6:7')?.outline).toBe('square');
    expect(at(marks, '4:7')?.outline).toBe('disc');
    expect(at(marks, '1:9')?.outline).toBe('lozenge');
  });

  it('sets labels of one or two signs under the hand at least as large as 0.47 of their marks', () => {
    const labelled = marksOf(7).filter(({ reach, label }) => reach === 'hand' && label.length <= 2);
    expect(labelled.length).toBeGreaterThan(5);
    for (const { type, radius } of labelled) expect(type).toBeGreaterThanOrEqual(0.47 * 2 * radius);
  });

  it('draws what is out of reach smaller than what is under the hand', () => {
    const marks = marksOf(7);
    expect(at(marks, '5:2')?.radius).toBeLessThan(at(marks, '6:7')?.radius ?? 0);
  });

  it.each([
    ['degrees', '♭3'],
    ['notes', 'D'],
    ['fingers', '1'],
    ['none', ''],
  ] as const)('labels with %s', (labels, expected) => {
    expect(at(marksOf(7, labels), '3:7')?.label).toBe(expected);
  });

  it('writes fingers on the grip alone, for the row under the neck has one for every fret', () => {
    const marks = marksOf(7, 'fingers');
    const beside = marks.filter(({ kind, reach }) => kind === 'chord' && reach === 'hand');
    expect(beside.length).toBeGreaterThan(0);
    expect(beside.every(({ label }) => label === '')).toBe(true);
  });

  it('keeps pitch and degree in ASCII beside the label', () => {
    const marks = toneMarks(read('F#: R b3 5', 2), LAYOUT, 'notes');
    expect(at(marks, '6:2')).toMatchObject({ label: 'F♯', pitch: 'F#2', degree: 'R' });
  });

  it('gives the very marks that it gave before, whatever reading they are from', () => {
    const before = marksOf(7, 'notes');
    expect(marksOf(7, 'notes').every((mark, i) => mark === before[i])).toBe(true);
    const next = toneMarks(read('B: R b3 5', 7), LAYOUT, 'notes');
    const kept = next.filter((mark) => before.includes(mark));
    expect(kept.length).toBeGreaterThan(20);
  });

  it('gives marks of their own to other labels, another layout and another meaning', () => {
    const before = marksOf(7);
    const others = [
      marksOf(7, 'notes'),
      toneMarks(read(BM7, 7), { ...LAYOUT }, 'degrees'),
      marksIn(read('E: R 3 5 b7', 7)).filter(({ key }) => at(before, key)?.degree !== undefined),
    ];
    for (const other of others) expect(other.filter((mark) => before.includes(mark))).toEqual([]);
  });

  it('marks the tones that can be the bass of a slash chord, and none of any other chord', () => {
    const reading = read('C: R 3 5', 3);
    const bassOf = (letter: 'E' | 'B') => {
      const chord = { ...reading.chord, bass: { letter, alter: 0 } as const };
      return toneMarks({ ...reading, chord }, LAYOUT, 'degrees').filter(({ bass }) => bass);
    };
    const thirds = marksIn(reading).filter(({ degree }) => degree === '3');
    expect(bassOf('E').map(({ key }) => key)).toEqual(thirds.map(({ key }) => key));
    expect(bassOf('B')).toEqual([]);
    expect(marksIn(reading).filter(({ bass }) => bass)).toEqual([]);
  });

  it('puts a bar between an open string and the nut, and on no other tone', () => {
    const marks = marksIn(read('C: R 3 5', 1));
    expect(marks.filter(({ bar }) => bar !== '').map(({ key }) => key)).toEqual(
      marks.filter(({ reach }) => reach === 'open').map(({ key }) => key),
    );
    const open = at(marks, '1:0');
    const x = Number(/^M([\d.]+) /.exec(open?.bar ?? '')?.[1]);
    expect(x).toBeGreaterThan((open?.x ?? 0) + (open?.radius ?? 0));
    expect(x).toBeLessThan(LAYOUT.wires[0] ?? 0);
  });

  it('calls open strings away from the hand once it is up the neck', () => {
    const away = (position: number) => at(marksIn(read('C: R 3 5', position)), '1:0')?.away;
    expect([1, 4, 5, 9].map(away)).toEqual([false, false, true, true]);
  });

  it('has nothing to draw without a reading', () => {
    expect(toneMarks(undefined, LAYOUT, 'degrees')).toEqual([]);
    expect(gripLine(undefined, LAYOUT)).toBe('');
  });
});

it('joins the places of the chosen grip from string to string', () => {
  const reading = read(BM7, 7);
  const places = reading.chosen?.grip?.tones.length ?? 0;
  expect(places).toBeGreaterThan(3);
  expect(gripLine(reading, LAYOUT).match(/[ML]/g)).toHaveLength(places);
});

it('draws three different closed outlines', () => {
  const paths = OUTLINES.map((outline) => outlinePath(outline, 10, { x: 5, y: 7 }));
  expect(new Set(paths).size).toBe(3);
  expect(paths.every((path) => path.endsWith('Z'))).toBe(true);
});

describe('brackets', () => {
  it('lays the five forms along the neck without two on one row meeting', () => {
    const rows = brackets(read(BM7, 7).forms, 2);
    expect(rows.length).toBeGreaterThanOrEqual(5);
    for (const level of [0, 1]) {
      const row = rows.filter((bracket) => bracket.level === level);
      for (const [i, bracket] of row.entries()) {
        const next = row[i + 1];
        if (next) expect(next.first).toBeGreaterThan(bracket.last);
      }
    }
  });

  it('has nothing for no places', () => {
    expect(brackets([], 2)).toEqual([]);
  });
});

describe('barreLines', () => {
  it.each([
    ['B: R b3 5 b7', 7],
    ['D: R b3 5 b7', 5],
  ])('reach beyond the marks of the outer tones of %s at %i', (text, position) => {
    const reading = read(text, position);
    const marks = marksIn(reading);
    const barres = reading.chosen?.grip?.barres ?? [];
    expect(barres.length).toBeGreaterThan(0);
    for (const [i, path] of barreLines(reading, LAYOUT).entries()) {
      const [, from = 0, , to = 0] = (path.match(/[\d.]+/g) ?? []).map(Number);
      const { from: thick = 0, to: thin = 0, fret = 0 } = barres[i] ?? {};
      const outer = [at(marks, `${thick}:${fret}`), at(marks, `${thin}:${fret}`)];
      expect(from).toBeGreaterThan((outer[0]?.y ?? 0) + 0.8 * (outer[0]?.radius ?? 99));
      expect(to).toBeLessThan((outer[1]?.y ?? 0) - 0.8 * (outer[1]?.radius ?? 99));
    }
  });
});
