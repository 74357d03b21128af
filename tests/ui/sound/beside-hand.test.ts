import { describe, expect, it } from 'vitest';
import { box, fretRange, layoutNeck } from '../../../src/ui/neck/layout.ts';
import { besideHand } from '../../../src/ui/sound/beside-hand.ts';
import { SPEC } from '../neck/support.ts';

const WIDTHS = [1376, 980, 807];
const positions = Array.from({ length: 22 }, (_, i) => i + 1);

describe('the place beside the hand', () => {
  it.each(
    WIDTHS.flatMap((width) => [
      { width, leftHanded: false, spacing: 'true' as const },
      { width, leftHanded: true, spacing: 'true' as const },
      { width, leftHanded: false, spacing: 'even' as const },
    ]),
  )('is on the neck, wide enough to read in and clear of hand and numbers: %o', (change) => {
    const layout = layoutNeck({ ...SPEC, ...change, em: change.width < 900 ? 10.3 : 16 });
    for (const position of positions) {
      const place = besideHand(layout, position);
      const across = { from: layout.fingers, to: layout.numeral };
      const hand = box(layout, fretRange(layout, position, position + 3), across);
      expect(place.x).toBeGreaterThanOrEqual(0);
      expect(place.x + place.width).toBeLessThanOrEqual(layout.width + 0.02);
      expect(place.width).toBeGreaterThan(0.3 * layout.width);
      expect(place.y).toBeGreaterThan(layout.numbers + 0.4 * layout.em);
      const beside = place.x >= hand.x + hand.width || place.x + place.width <= hand.x;
      expect(beside, `at ${position}`).toBe(true);
    }
  });
});
