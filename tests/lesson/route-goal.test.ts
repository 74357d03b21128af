import { describe, expect, it } from 'vitest';
import { DEFAULT_WORKSPACE, parseAddress, usualGoal, withoutText } from '#lesson';
import { makeInstrument } from '#neck';
import { OTHER, value } from './arbitrary.ts';

describe('where a route travels that was not told', () => {
  it.each([
    [1, 12],
    [7, 12],
    [8, 3],
    [20, 3],
  ])('is from %i to the other half of the neck, %i, by the last bar', (position, to) => {
    const workspace = { ...DEFAULT_WORKSPACE, position };
    expect(usualGoal(workspace, 16)).toEqual({ position: to, bar: 16 });
    expect(usualGoal(workspace, 0).bar).toBe(1);
  });

  it('is on the neck', () => {
    const instrument = { ...value(makeInstrument({ frets: 12 })), frets: 10 };
    expect(usualGoal({ ...DEFAULT_WORKSPACE, instrument }, 4).position).toBe(10);
  });
});

describe('another progression', () => {
  it('takes away what was asked of the one before, and nothing else', () => {
    const { routeTo, turn, compare, ...rest } = OTHER;
    expect([routeTo, turn, compare].every((part) => part !== undefined)).toBe(true);
    expect(withoutText(OTHER)).toEqual({ ...rest, pins: [] });
  });

  it('comes with a link; the same progression keeps all', () => {
    const other = parseAddress('#progression=C', OTHER).workspace;
    expect([other.pins, other.turn, other.lens]).toEqual([[], undefined, OTHER.lens]);
    const same = new URLSearchParams({ progression: OTHER.progression });
    expect(parseAddress(`#${same}`, OTHER).workspace).toMatchObject({
      pins: OTHER.pins,
      routeTo: OTHER.routeTo,
      turn: OTHER.turn,
    });
  });
});
