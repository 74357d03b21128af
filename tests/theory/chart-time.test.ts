import { describe, expect, it } from 'vitest';
import { barTicks, beatTicks, makeMetre, parseMetre, TICKS_PER_QUARTER, ticks } from '#theory';

describe('metres', () => {
  it.each([
    ['4/4', 4, 1],
    ['3/4', 3, 1],
    ['6/8', 3, 0.5],
    ['12/8', 6, 0.5],
    ['2/2', 4, 2],
    ['1/1', 4, 4],
    ['5/16', 1.25, 0.25],
  ])('a bar of %s lasts %d quarters, a beat %d', (text, bar, beat) => {
    const metre = parseMetre(text);
    if (metre === undefined) throw new Error(text);
    expect(barTicks(metre)).toBe(bar * TICKS_PER_QUARTER);
    expect(beatTicks(metre)).toBe(beat * TICKS_PER_QUARTER);
    expect(makeMetre(metre)).toBe(text);
  });

  it.each(['0/4', '33/4', '3/3', '4/32', '4/0', '4', '4/', '/4', '', '4/4 ', '-1/4', '1000/4'])(
    '%j is none',
    (text) => expect(parseMetre(text)).toBeUndefined(),
  );
});

describe('ticks', () => {
  it('are whole numbers', () => {
    expect(ticks(960)).toBe(960);
    expect(() => ticks(0.5)).toThrow(RangeError);
    expect(() => ticks(Number.NaN)).toThrow(RangeError);
  });
});
