import { describe, expect, it } from 'vitest';
import {
  BEND_LIMIT_NAMES,
  BEND_LIMIT_RANGES,
  bendLimit,
  WEIGHT_NAMES,
  WEIGHT_RANGES,
  withBendLimit,
  withWeight,
} from '#lesson';
import { DEFAULT_BEND_LIMITS, DEFAULT_WEIGHTS } from '#neck';
import { value } from './arbitrary.ts';

describe('the weights of routes', () => {
  it('all have a name and a range, and the usual ones lie within', () => {
    expect([...WEIGHT_NAMES].sort()).toEqual(Object.keys(DEFAULT_WEIGHTS).sort());
    for (const name of WEIGHT_NAMES) {
      expect(value(withWeight(DEFAULT_WEIGHTS, name, DEFAULT_WEIGHTS[name]))).toBe(DEFAULT_WEIGHTS);
    }
  });

  it.each(WEIGHT_NAMES)('take a %s within its range and refuse any other', (name) => {
    const { max } = WEIGHT_RANGES[name];
    expect(value(withWeight(DEFAULT_WEIGHTS, name, max))).toEqual({
      ...DEFAULT_WEIGHTS,
      [name]: max,
    });
    for (const bad of [-1, max + 1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(withWeight(DEFAULT_WEIGHTS, name, bad)).toMatchObject({
        ok: false,
        error: { code: 'range', found: String(bad), expected: `a number from 0 to ${max}` },
      });
    }
  });
});

describe('the limits of bends', () => {
  it.each(BEND_LIMIT_NAMES)('have a %s that can be read and set', (name) => {
    const before = bendLimit(DEFAULT_BEND_LIMITS, name);
    expect(value(withBendLimit(DEFAULT_BEND_LIMITS, name, before))).toBe(DEFAULT_BEND_LIMITS);
    const changed = value(withBendLimit(DEFAULT_BEND_LIMITS, name, before + 0.5));
    expect(bendLimit(changed, name)).toBe(before + 0.5);
    const others = BEND_LIMIT_NAMES.filter((other) => other !== name);
    expect(others.map((other) => bendLimit(changed, other))).toEqual(
      others.map((other) => bendLimit(DEFAULT_BEND_LIMITS, other)),
    );
  });

  it.each(BEND_LIMIT_NAMES)('refuse a %s out of its range', (name) => {
    const { min, max } = BEND_LIMIT_RANGES[name];
    for (const bad of [min - 0.1, max + 0.1, Number.NaN]) {
      expect(withBendLimit(DEFAULT_BEND_LIMITS, name, bad)).toMatchObject({
        ok: false,
        error: { code: 'range' },
      });
    }
  });

  it('refuse what would make a comfortable bend harder than a hard one', () => {
    for (const [name, bad] of [
      ['comfortableForce', 31],
      ['hardTravel', 20],
    ] as const) {
      expect(withBendLimit(DEFAULT_BEND_LIMITS, name, bad)).toMatchObject({
        ok: false,
        error: { code: 'order', found: String(bad) },
      });
    }
  });
});
