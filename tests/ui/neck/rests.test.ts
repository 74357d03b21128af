import { describe, expect, it } from 'vitest';
import type { Reading } from '#neck';
import { at } from '../../../src/ui/neck/layout.ts';
import { toneMarks } from '../../../src/ui/neck/marks.ts';
import { restMarks } from '../../../src/ui/neck/rests.ts';
import { LAYOUT, read } from './support.ts';

describe('restMarks', () => {
  /** Along and across of the middle of every cross. */
  const crosses = (reading: Reading | undefined) =>
    [...restMarks(reading, LAYOUT).matchAll(/M(\S+) (\S+?)l(\S+)/g)].map(([, x, y, width]) => [
      Number(x) + Number(width) / 2,
      Number(y) + Number(width) / 2,
    ]);

  it('stand on every string that the grip leaves silent, and on no other', () => {
    const across = crosses(read('E: R 3 b7 #9', 6)).map(([, y]) => y ?? 0);
    expect(across).toHaveLength(2);
    expect(across[0]).toBeCloseTo(LAYOUT.lines[0] ?? 0, 0);
    expect(across[1]).toBeCloseTo(LAYOUT.lines[5] ?? 0, 0);
    expect(crosses(read('B: R b3 5 b7', 7))).toEqual([]);
    expect(restMarks(undefined, LAYOUT)).toBe('');
  });

  it.each([
    ['E: R 3 b7 #9', 6, 5],
    ['C: R 3 5', 1, 0],
    ['E: R 3 b7 #9', 18, 17],
  ])('of %s at %i stand together on the wire behind the grip', (text, position, wire) => {
    const along = crosses(read(text, position)).map(([x]) => Math.round(x ?? 0));
    const before = LAYOUT.wires[wire] ?? 0;
    expect(along.length).toBeGreaterThan(0);
    expect(new Set(along)).toEqual(new Set([Math.round(at(LAYOUT, before, 0).x)]));
  });

  it('are clear of the tones of their string', () => {
    const reading = read('E: R 3 b7 #9', 6);
    const marks = toneMarks(reading, LAYOUT, 'degrees');
    for (const [x = 0, y = 0] of crosses(reading)) {
      const own = marks.filter((mark) => Math.abs(mark.y - y) < 1);
      expect(own.every((mark) => Math.abs(mark.x - x) > mark.radius)).toBe(true);
    }
  });
});
