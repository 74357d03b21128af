import { describe, expect, it } from 'vitest';
import {
  arrivalInWords,
  costInWords,
  costParts,
  moreInWords,
} from '../../../src/ui/material/route-words.ts';
import { study } from './fixture.ts';

const CHART = '| C | G/B Am7 | Dm7 | G7sus4 G7b9 | Em7 | Ebdim7 | C6 | Bm7 | C |';

describe('what a way costs', () => {
  it('is the sum of moving, grips and straying, and each is told', () => {
    const { route, of } = study(CHART, 5, { route: 'stay' });
    for (const way of route?.routes ?? []) {
      const parts = costParts(way, of.weights.shift);
      expect(parts.moving + parts.grips + parts.straying).toBeCloseTo(way.cost, 6);
    }
    expect(route?.routes).toHaveLength(4);
    expect(costInWords({ moving: 240, grips: 961, straying: 4 })).toBe(
      'costs as much as moving 121 cm: 24 cm for moving, 96 cm for its grips, 4 mm for straying',
    );
  });

  it('of another way says by what it is dearer, in millimetres where it is less than one centimetre', () => {
    const best = { moving: 240, grips: 960, straying: 320 };
    const other = { moving: 228, grips: 976, straying: 320 };
    expect(moreInWords(other, best)).toBe(
      '4 mm more than the best: 1 cm less for moving, 2 cm more for its grips',
    );
    expect(moreInWords(best, best)).toBe('costs just as much as the best');
  });
});

describe('where a route that travels arrives', () => {
  const arrival = (progression: string, more: object = {}): string | undefined => {
    const { route, cells } = study(progression, 3, {
      route: 'travel',
      routeTo: { position: 12, bar: 6 },
      ...more,
    });
    if (!route) throw new Error('no route');
    return arrivalInWords(route, cells);
  };

  it('is said where it is not where it was asked to be, and where it falls back', () => {
    const pins = [
      { at: '6.1', form: 'E', anchor: 8 },
      { at: '7.1', form: 'A', anchor: 3 },
    ];
    expect(arrival('| C | C | F | F | G | C | C |', { pins })).toMatch(
      /^By bar 6 the hand is at VIII, not XII; later it goes as far as III: /,
    );
  });

  it('is not said where it arrives and stays, nor of other routes', () => {
    const pins = [{ at: '3.1', form: 'C', anchor: 9 }];
    expect(arrival('| A | A | A |', { routeTo: { position: 9, bar: 3 }, pins })).toBeUndefined();
    expect(arrival('| A | A |', { route: 'stay' })).toBeUndefined();
  });
});
