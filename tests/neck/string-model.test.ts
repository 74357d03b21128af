import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bendAngle,
  bendWork,
  bentFrequency,
  bentTension,
  densityOf,
  distanceTo,
  mechanicsOf,
  millimetres,
} from '#neck';

const SCALE = 0.6477;
const E4 = 329.6276;
const B3 = 246.9417;
const G3 = 195.9977;
const DEGREE = Math.PI / 180;
const NEWTON_PER_POUND = 4.4482216;

const firstString = mechanicsOf(0.01, false, E4, SCALE);
const atFret = (n: number): number => distanceTo(millimetres(SCALE * 1000), n) / 1000;
const cents = (ratio: number): number => 1200 * Math.log2(ratio);

/** D. R. Grimes, PLoS ONE 9(7): e102088, formula as reproduced and derived anew; figures computed from it. */
describe('the bent string', () => {
  it('is the published .010 at E4: 10134.1 N, 0.395553 g/m, 72.121 N', () => {
    expect(firstString.stiffness).toBeCloseTo(10134.1, 0);
    expect(firstString.density * 1000).toBeCloseTo(0.3955, 3);
    expect(Math.abs(firstString.tension - 72.121)).toBeLessThan(0.02);
  });

  it.each([
    [0, 329.628, 72.121, 0, 0],
    [0.5, 330.502, 72.507, 1.265, 2.826],
    [1, 333.111, 73.665, 2.571, 5.653],
    [2, 343.349, 78.298, 5.465, 11.309],
    [3, 359.763, 86.028, 9.005, 16.972],
    [4, 381.551, 96.867, 13.514, 22.646],
  ])(
    'at %f degrees sounds %f Hz under %f N, pushed by %f N over %f mm',
    (angle, hertz, tension, force, travel) => {
      const string = { length: SCALE, tension: 72.121, stiffness: 10134.1, density: 0.000395553 };
      const theta = angle * DEGREE;
      expect(Math.abs(bentFrequency(string, theta) - hertz)).toBeLessThan(0.01);
      expect(Math.abs(bentTension(string, theta) - tension)).toBeLessThan(0.005);
      expect(Math.abs(2 * bentTension(string, theta) * Math.sin(theta) - force)).toBeLessThan(
        0.005,
      );
      expect(Math.abs(500 * SCALE * Math.tan(theta) - travel)).toBeLessThan(0.005);
    },
  );

  it('at rest sounds its own pitch, which the misprinted formula does not give', () => {
    expect(bentFrequency(firstString, 0)).toBeCloseTo(E4, 6);
    expect(2 * firstString.tension - firstString.stiffness).toBeLessThan(0);
  });

  it('rises evenly to both sides and ever more', () => {
    const angle = fc.double({ min: 0.001, max: 0.2, noNaN: true });
    fc.assert(
      fc.property(angle, (theta) => {
        const here = bentFrequency(firstString, theta);
        expect(bentFrequency(firstString, -theta)).toBeCloseTo(here, 9);
        expect(bentFrequency(firstString, theta + 0.001)).toBeGreaterThan(here);
        expect(bendAngle(firstString, here / E4)).toBeCloseTo(theta, 6);
      }),
    );
    const one = cents(bentFrequency(firstString, DEGREE) / E4);
    expect(one / cents(bentFrequency(firstString, DEGREE / 2) / E4)).toBeCloseTo(3.97, 1);
  });
});

describe('the travel of a bend at the middle of the string', () => {
  it.each([
    [0.009, E4, 9.46, 13.58, 19.8, 25.01, 9],
    [0.01, E4, 9.46, 13.58, 19.8, 25.01, 11.11],
    [0.011, B3, 7.07, 10.15, 14.8, 18.69, 5.64],
    [0.013, B3, 7.07, 10.15, 14.8, 18.69, 7.88],
    [0.016, G3, 5.61, 8.05, 11.73, 14.82, 5.96],
    [0.017, G3, 5.61, 8.05, 11.73, 14.82, 6.73],
  ])(
    'of a plain %f at %f Hz is as published, and so is the force',
    (gauge, hertz, quarter, half, whole, oneAndAHalf, force) => {
      const string = mechanicsOf(gauge, false, hertz, SCALE);
      const travels = [0.5, 1, 2, 3].map((steps) => bendWork(string, SCALE / 2, steps, 'whole'));
      const published = [quarter, half, whole, oneAndAHalf];
      travels.forEach((work, i) => {
        expect(Math.abs((work?.travel ?? 0) * 1000 - (published[i] ?? 0))).toBeLessThan(0.01);
      });
      expect(Math.abs((travels[2]?.force ?? 0) - force)).toBeLessThan(0.02);
    },
  );

  it('does not depend on the gauge of plain strings; only the force does (I. Malone, 2013)', () => {
    const gauge = fc.double({ min: 0.008, max: 0.018, noNaN: true });
    fc.assert(
      fc.property(gauge, gauge, fc.integer({ min: 1, max: 20 }), (a, b, fret) => {
        const one = bendWork(mechanicsOf(a, false, E4, SCALE), atFret(fret), 2, 'whole');
        const other = bendWork(mechanicsOf(b, false, E4, SCALE), atFret(fret), 2, 'whole');
        expect(one?.travel).toBeCloseTo(other?.travel ?? 0, 9);
        expect((one?.force ?? 0) / (other?.force ?? 1)).toBeCloseTo((a * a) / (b * b), 6);
      }),
    );
  });

  /** I. Malone, "Bending with Dojo part 3": 58 N, whole tone, middle moved 19.7 mm. */
  it('is 19.7 mm for a whole tone on a high E at 58 N, within 0.11 mm', () => {
    const work = bendWork(mechanicsOf(0.009, false, E4, SCALE), SCALE / 2, 2, 'whole');
    expect(Math.abs((work?.travel ?? 0) * 1000 - 19.7)).toBeLessThan(0.11);
  });

  it.each([
    [5, 11.71, 17.07, 20.34, 29.66],
    [7, 12.74, 18.57, 18.12, 26.42],
    [12, 13.58, 19.8, 13.58, 19.8],
    [15, 13.45, 19.61, 11.42, 16.65],
  ])('at fret %i tells the two models apart', (fret, whole1, whole2, sounding1, sounding2) => {
    const travel = (steps: number, model: 'whole' | 'sounding') =>
      1000 * (bendWork(firstString, atFret(fret), steps, model)?.travel ?? 0);
    const found = [
      travel(1, 'whole'),
      travel(2, 'whole'),
      travel(1, 'sounding'),
      travel(2, 'sounding'),
    ];
    const published = [whole1, whole2, sounding1, sounding2];
    expect(found.map((mm, i) => Math.abs(mm - (published[i] ?? 0)) < 0.011)).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });
});

describe('the tension of a string', () => {
  /** Unit weights of a maker's tension guide; T = UW·(2·L·F)²/386.4. */
  it.each([
    [0.01, false, E4, 16.2],
    [0.013, false, B3, 15.37],
    [0.017, false, G3, 16.55],
    [0.026, true, 146.8324, 18.39],
    [0.036, true, 110, 19.52],
    [0.046, true, 82.4069, 17.47],
  ])('of a %f at scale 25.5 in is as tabulated', (gauge, wound, hertz, pounds) => {
    const { tension } = mechanicsOf(gauge, wound, hertz, SCALE);
    expect(Math.abs(tension / NEWTON_PER_POUND - pounds)).toBeLessThan(0.03);
  });

  it('goes with the square of the scale', () => {
    const longer = mechanicsOf(0.01, false, E4, 25.5).tension;
    expect(mechanicsOf(0.01, false, E4, 24.75).tension / longer).toBeCloseTo(0.94204, 5);
  });

  it('has the densities of the guide between its gauges too', () => {
    expect(densityOf(0.039, true)).toBeGreaterThan(densityOf(0.036, true));
    expect(densityOf(0.039, true)).toBeLessThan(densityOf(0.042, true));
  });
});
