import { describe, expect, it } from 'vitest';
import { distanceTo, fret, stringNumber } from '#neck';
import {
  fretRange,
  fretUnder,
  type LayoutSpec,
  layoutNeck,
  middleOf,
  numberedFrets,
  placeAt,
} from '../../../src/ui/neck/layout.ts';
import { SPEC } from './support.ts';

const neck = (change: Partial<LayoutSpec> = {}) => layoutNeck({ ...SPEC, ...change });
const place = (layout: ReturnType<typeof neck>, string: number, at: number) =>
  placeAt(layout, stringNumber(string), fret(at));

describe('layoutNeck', () => {
  it('leaves numbers out where the large ones of the practice screen would run together', () => {
    // A telephone on its side: type of 14.9 pixels, two digits of 0.6 of it each.
    const layout = neck({ tall: true, width: 807, em: 11.7, sight: 390 });
    const middles = numberedFrets(layout).map((at) => middleOf(layout, at));
    const gaps = middles.slice(1).map((middle, i) => middle - (middles[i] ?? 0));
    expect(Math.min(...gaps)).toBeGreaterThan(2 * 0.6 * 14.9 + 2);
  });

  it('keeps the name of a flat string clear of the largest mark on it', () => {
    const { open, names, wires, em } = neck({ tall: true });
    // The largest mark takes 0.47 of its space; a name of two signs is about 1.25 of its type wide.
    const mark = 0.47 * ((wires[0] ?? 0) - open + em);
    const name = (1.25 * 0.8125 * em) / 2;
    expect(names - name).toBeGreaterThanOrEqual(-1);
    expect(open - mark - (names + name)).toBeGreaterThan(2);
  });

  it('puts the wires at the true distances of an equal-tempered neck', () => {
    const { wires } = neck();
    const [nut = 0] = wires;
    const board = (wires[22] ?? 0) - nut;
    for (const n of [1, 5, 12, 22]) {
      const share = distanceTo(SPEC.scale, n) / distanceTo(SPEC.scale, 22);
      expect((wires[n] ?? 0) - nut).toBeCloseTo(board * share, 1);
    }
  });

  it('gives every fret the same room when spaced evenly', () => {
    const { wires } = neck({ spacing: 'even' });
    const widths = wires.slice(1).map((wire, i) => wire - (wires[i] ?? 0));
    expect(Math.max(...widths) - Math.min(...widths)).toBeLessThan(0.05);
  });

  it.each([
    [390 - 28, 4, 22, true],
    [1376, 8, 27, false],
    [292, 8, 12, true],
    [1840, 6, 24, false],
  ])(
    'keeps every place inside a sheet %i wide: %i strings, %i frets',
    (width, strings, frets, upright) => {
      for (const leftHanded of [false, true]) {
        const layout = neck({
          width,
          strings,
          frets,
          upright,
          leftHanded,
          levels: upright ? 2 : 3,
        });
        for (const [s, f] of [
          [1, 0],
          [strings, 0],
          [1, frets],
          [strings, frets],
        ] as const) {
          const { x, y } = place(layout, s, f);
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(layout.width);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(layout.height);
        }
        expect(layout.width).toBeLessThanOrEqual(width + 1);
      }
    },
  );

  it('draws the low string at the bottom, and the open strings left of the nut', () => {
    const layout = neck();
    expect(place(layout, 6, 5).y).toBeGreaterThan(place(layout, 1, 5).y);
    expect(place(layout, 1, 0).x).toBeLessThan(layout.wires[0] ?? 0);
  });

  it('mirrors the neck for the left hand', () => {
    const right = neck();
    const left = neck({ leftHanded: true });
    for (const [s, f] of [
      [1, 0],
      [3, 7],
      [6, 22],
    ] as const) {
      expect(place(left, s, f).x).toBeCloseTo(right.width - place(right, s, f).x, 1);
      expect(place(left, s, f).y).toBe(place(right, s, f).y);
    }
  });

  it('stands upright with the nut on top and the low string at the left, or right for the left hand', () => {
    const right = neck({ width: 362, upright: true });
    expect(place(right, 6, 1).y).toBeLessThan(place(right, 6, 2).y);
    expect(place(right, 6, 3).x).toBeLessThan(place(right, 1, 3).x);
    const left = neck({ width: 362, upright: true, leftHanded: true });
    expect(place(left, 6, 3).x).toBeGreaterThan(place(left, 1, 3).x);
  });
});

describe('fretUnder', () => {
  it('finds the fret whose space holds a point, however the neck lies', () => {
    for (const upright of [false, true]) {
      for (const leftHanded of [false, true]) {
        const layout = neck({ upright, leftHanded, width: upright ? 362 : 1376 });
        for (let f = 1; f <= 22; f += 1) expect(fretUnder(layout, place(layout, 3, f))).toBe(f);
      }
    }
  });

  it('takes the first fret beyond the nut and the last beyond the end', () => {
    expect(fretUnder(neck(), { x: 0, y: 0 })).toBe(1);
    expect(fretUnder(neck(), { x: 9999, y: 0 })).toBe(22);
  });
});

it('covers frets from the near edge of the first to the far edge of the last', () => {
  const layout = neck();
  const { from, to } = fretRange(layout, 7, 10);
  expect([from, to]).toEqual([layout.wires[6], layout.wires[10]]);
  expect(middleOf(layout, 7)).toBeGreaterThan(from);
});

describe('numberedFrets', () => {
  it('numbers every fret where there is room, and every other one where there is none', () => {
    expect(numberedFrets(neck())).toHaveLength(22);
    const narrow = numberedFrets(neck({ width: 710, frets: 24 }));
    expect(narrow.slice(0, 5)).toEqual([1, 2, 3, 4, 5]);
    expect(narrow.slice(-3)).toEqual([20, 22, 24]);
  });
});

it('lets the strings of a low window take about a quarter of its height', () => {
  const gap = (sight: number): number => neck({ strings: 8, width: 1900, sight }).gap;
  expect(gap(700)).toBeLessThan(gap(2000));
  expect(gap(700) * 7).toBeCloseTo(0.25 * 700, 0);
});
