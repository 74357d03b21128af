import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isTempo, makeTempoMap, secondsAt, tickAt } from '#line';
import { ticks } from '#theory';

const SIXTEENTH = 240;

describe('a tempo map', () => {
  it('gives a sixteenth at 120 an eighth of a second ("A tale of two clocks")', () => {
    expect(secondsAt(makeTempoMap(120), SIXTEENTH)).toBeCloseTo(0.125, 12);
  });

  it.each([20, 90, 133, 300])('does not drift in ten minutes at %i', (tempo) => {
    const map = makeTempoMap(tempo);
    const last = Math.floor((600 * tempo * 4) / 60);
    for (let i = 0; i <= last; i++) {
      const exact = (i * 15) / tempo;
      expect(Math.abs(secondsAt(map, i * SIXTEENTH) - exact)).toBeLessThan(1e-6);
    }
  });

  it('changes tempo where it is told to, and goes on from there', () => {
    const map = makeTempoMap(60, [
      { at: ticks(3840), tempo: 120 },
      { at: ticks(7680), tempo: 30 },
    ]);
    const seconds = [0, 960, 3840, 4800, 7680, 8640].map((tick) => secondsAt(map, tick));
    expect(seconds).toEqual([0, 1, 4, 4.5, 6, 8]);
  });

  it('knows the tick at a second', () => {
    const tempo = fc.integer({ min: 20, max: 300 });
    const changes = fc.array(fc.record({ at: fc.nat(100_000).map(ticks), tempo }), {
      maxLength: 6,
    });
    fc.assert(
      fc.property(tempo, changes, fc.nat(200_000), (first, later, tick) => {
        const map = makeTempoMap(first, later);
        expect(tickAt(map, secondsAt(map, tick))).toBeCloseTo(tick, 5);
      }),
    );
  });

  it.each([19.9, 300.1, 0, -1, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d', (tempo) => {
    expect(isTempo(tempo)).toBe(false);
  });

  it('takes tempi from 20 to 300', () => {
    expect([20, 92.5, 300].every(isTempo)).toBe(true);
  });
});
