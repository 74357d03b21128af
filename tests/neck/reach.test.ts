import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DEFAULT_SPAN,
  distanceBetween,
  distanceTo,
  fret,
  midiAtPlace,
  millimetres,
  reachByFret,
  spanLength,
  stringNumber,
} from '#neck';
import { frequencyOf, midi } from '#theory';
import { GUITAR, instrument } from './support.ts';

describe('fret distances', () => {
  /** onlycalculators.com fret calculator, 25.5 in = 647.7 mm. */
  it.each([
    [1, 36.35],
    [2, 70.66],
    [3, 103.05],
    [5, 162.47],
    [7, 215.41],
    [9, 262.58],
    [12, 323.85],
    [24, 485.78],
  ])('at 647.7 mm put fret %i at %f mm', (n, mm) => {
    expect(Math.abs(distanceTo(millimetres(647.7), n) - mm)).toBeLessThanOrEqual(0.0051);
  });

  /** stuphi.co.uk, 25 in = 635 mm, measured from the bridge. */
  it.each([
    [1, 599.36],
    [5, 475.712],
    [12, 317.5],
    [17, 237.856],
    [22, 178.191],
  ])('at 635 mm leave %i frets %f mm to the bridge', (n, mm) => {
    expect(Math.abs(635 - distanceTo(millimetres(635), n) - mm)).toBeLessThanOrEqual(0.0005);
  });

  it('halve the string at 12 and quarter it at 24', () => {
    expect(distanceTo(millimetres(648), 12)).toBeCloseTo(324, 9);
    expect(distanceTo(millimetres(648), 24)).toBeCloseTo(486, 9);
  });

  it('shrink by a twelfth root of two for each fret up the neck', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 1, max: 6 }), (n, k) => {
        const here = distanceBetween(millimetres(648), n, n + k);
        const next = distanceBetween(millimetres(648), n + 1, n + 1 + k);
        expect(next / here).toBeCloseTo(2 ** (-1 / 12), 9);
      }),
    );
  });
});

describe('pitches on the neck', () => {
  /** B. H. Suits, Michigan Tech, note frequency table; fretted ones computed from it. */
  it.each([
    [6, 0, 82.4069],
    [5, 0, 110],
    [1, 0, 329.6276],
    [6, 1, 87.3071],
    [5, 3, 130.8128],
    [4, 7, 220],
    [3, 9, 329.6276],
    [2, 8, 391.9954],
    [1, 12, 659.2551],
    [1, 22, 1174.6591],
  ])('sound string %i fret %i at %f Hz', (string, f, hertz) => {
    const note = midiAtPlace(GUITAR, { string: stringNumber(string), fret: fret(f) });
    expect(frequencyOf(midi(note ?? 0))).toBeCloseTo(hertz, 3);
  });

  /** Radicioni & Lombardo, ICMC 2005, Fig. 1: the four places of MIDI 64; counts computed from the tuning. */
  it('lie where the published whole-neck map has them', () => {
    expect(placesOf(64, 14)).toEqual(['1:0', '2:5', '3:9', '4:14']);
    expect(placesCount(12)).toEqual([37, 3, 10, 13, 14]);
    expect(placesCount(22)).toEqual([47, 5, 10, 9, 10, 10, 8]);
    expect(placesCount(24)).toEqual([49, 6, 10, 9, 10, 9, 10, 1]);
  });

  it('are none behind the capo and beyond the last fret', () => {
    const capo = instrument({ capo: 2 });
    expect(midiAtPlace(capo, { string: stringNumber(1), fret: fret(1) })).toBeUndefined();
    expect(midiAtPlace(capo, { string: stringNumber(1), fret: fret(23) })).toBeUndefined();
  });
});

function neckMap(frets: number): ReadonlyMap<number, readonly string[]> {
  const map = new Map<number, string[]>();
  const on = instrument({ frets });
  for (let s = 1; s <= 6; s++) {
    for (let f = 0; f <= frets; f++) {
      const note = midiAtPlace(on, { string: stringNumber(s), fret: fret(f) });
      if (note !== undefined) map.set(note, [...(map.get(note) ?? []), `${s}:${f}`]);
    }
  }
  return map;
}

const placesOf = (note: number, frets: number): readonly string[] => neckMap(frets).get(note) ?? [];

/** Distinct pitches, most places of one pitch, then how many pitches have 1, 2, 3 … places. */
function placesCount(frets: number): readonly number[] {
  const counts = [...neckMap(frets).values()].map((places) => places.length);
  const most = Math.max(...counts);
  const having = Array.from({ length: most }, (_, i) => counts.filter((c) => c === i + 1).length);
  return [counts.length, most, ...having];
}

describe('reach', () => {
  const reachText = (position: number, span = DEFAULT_SPAN): string =>
    reachByFret(GUITAR, span, position)
      .map((reach) => reach[0])
      .join('');

  it('has frets p to p+3 under the hand and fret 0 open', () => {
    expect(reachText(5).slice(0, 13)).toMatch(/^o.{4}hhhh/);
    expect(reachText(1).slice(0, 6)).toBe('ohhhho');
  });

  it('makes four frets comfortable at the first position and five a stretch at the fifth', () => {
    const length = spanLength(DEFAULT_SPAN, GUITAR.scale);
    expect(distanceBetween(GUITAR.scale, 1, 4)).toBeLessThan(length);
    expect(reachText(5)[9]).toBe('s');
    expect(reachText(1)[5]).toBe('o');
  });

  it('admits more frets up the neck, being a length', () => {
    const stretches = [1, 5, 9, 13].map((p) => (reachText(p).match(/s/g) ?? []).length);
    expect(stretches).toEqual([...stretches].sort((a, b) => a - b));
    expect(new Set(stretches).size).toBe(4);
  });

  it('grows with the span and never past it', () => {
    const position = fc.integer({ min: 1, max: 18 });
    fc.assert(
      fc.property(position, fc.integer({ min: 8, max: 12 }), (p, little) => {
        const span = { index: 5, little };
        const limit = spanLength(span, GUITAR.scale);
        return reachByFret(GUITAR, span, p).every((reach, f) => {
          const outer = f < p ? p + 3 : p;
          const within = distanceBetween(GUITAR.scale, f, outer) <= limit + 1e-6;
          return f === 0 || (f >= p && f <= p + 3) || (reach === 'stretch') === within;
        });
      }),
    );
  });
});
