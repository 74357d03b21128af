/**
 * How far and how hard a string has to be pushed for a bend. Formula for the bent string after
 * D. R. Grimes, "String Theory – The Physics of String-Bending and Other Electric Guitar
 * Techniques", PLoS ONE 9(7): e102088 (2014), as reproduced in encyclopedia articles and derived
 * anew; the paper's own table could not be read.
 */

import type { BendModel } from './bend-limits.ts';

/** A string's mechanics. Lengths in metres, tension in newtons, density in kg/m. */
export interface StringMechanics {
  /** Nut to bridge. */
  readonly length: number;
  /** Tension at rest. */
  readonly tension: number;
  /** Young's modulus times the area that carries the load (the core of a wound string), newtons. */
  readonly stiffness: number;
  /** Mass by length at rest. */
  readonly density: number;
}

/** Sideways travel at the finger (metres), and the force that holds it there (newtons). */
export interface BendWork {
  readonly travel: number;
  readonly force: number;
}

/** Steel, handbook value for Young's modulus, Pa (from memory). */
const STEEL_MODULUS = 200e9;
const INCH = 0.0254;
const POUND_PER_INCH = 17.857967;
/** Plain steel wire: 0.2820 lb/in³ for every plain gauge of a maker's tension guide. */
const PLAIN_WEIGHT = 0.282;

/**
 * Unit weights of nickel-wound strings, gauge in inches to lb/in (a maker's tension guide, as
 * transcribed alike in three public files).
 */
const WOUND_WEIGHTS: readonly (readonly [gauge: number, weight: number])[] = [
  [0.024, 0.00010857],
  [0.026, 0.00012671],
  [0.03, 0.00017236],
  [0.032, 0.00019347],
  [0.036, 0.00023964],
  [0.042, 0.00032279],
  [0.046, 0.00038216],
  [0.052, 0.00048109],
];

/** Core of a wound string as a share of its diameter: about .54 at .024, .36 at .052 (from memory). */
const coreShare = (gauge: number): number =>
  Math.min(0.6, Math.max(0.3, 0.54 - (gauge - 0.024) * 6.4));

/** lb/in³ of the whole cross-section of a wound string, interpolated between the listed gauges. */
function woundWeight(gauge: number): number {
  const per = WOUND_WEIGHTS.map(([g, w]) => [g, w / ((Math.PI / 4) * g * g)] as const);
  const after = per.findIndex(([g]) => g >= gauge);
  const first = per[0];
  const last = per[per.length - 1];
  if (first === undefined || last === undefined) return PLAIN_WEIGHT;
  if (after === 0) return first[1];
  const upper = per[after];
  const lower = per[after - 1];
  if (upper === undefined || lower === undefined) return last[1];
  const share = (gauge - lower[0]) / (upper[0] - lower[0]);
  return lower[1] + share * (upper[1] - lower[1]);
}

/** Mass by length, kg/m, of a string of so many inches. */
export function densityOf(gauge: number, wound: boolean): number {
  const area = (Math.PI / 4) * gauge * gauge;
  return area * (wound ? woundWeight(gauge) : PLAIN_WEIGHT) * POUND_PER_INCH;
}

/**
 * The mechanics of a string from what is known of it: gauge in inches, open frequency in Hz,
 * scale in metres. T = 4·L²·f²·μ.
 */
export function mechanicsOf(
  gauge: number,
  wound: boolean,
  frequency: number,
  length: number,
): StringMechanics {
  const density = densityOf(gauge, wound);
  const core = gauge * (wound ? coreShare(gauge) : 1) * INCH;
  return {
    length,
    density,
    tension: 4 * length * length * frequency * frequency * density,
    stiffness: STEEL_MODULUS * (Math.PI / 4) * core * core,
  };
}

/** Frequency (Hz) of a string pushed at its middle by an angle (radians): Grimes' formula. */
export const bentFrequency = (string: StringMechanics, angle: number): number =>
  Math.sqrt(
    (string.stiffness + Math.cos(angle) * (string.tension - string.stiffness)) / string.density,
  ) /
  (2 * string.length);

/** Angle (radians) at the middle for a frequency ratio; the inverse of `bentFrequency`. */
export const bendAngle = (string: StringMechanics, ratio: number): number =>
  Math.acos(
    (string.stiffness - string.tension * ratio * ratio) / (string.stiffness - string.tension),
  );

/** Tension (N) of the string bent at its middle by an angle (radians). */
export const bentTension = (string: StringMechanics, angle: number): number =>
  string.tension + (string.stiffness * (1 - Math.cos(angle))) / Math.cos(angle);

interface Pushed {
  readonly ratio: number;
  readonly force: number;
}

/** What a sideways push of `travel` does to a string stopped `behind` metres from the nut. */
function pushed(string: StringMechanics, behind: number, travel: number, model: BendModel): Pushed {
  const ahead = string.length - behind;
  const bentAhead = Math.hypot(ahead, travel);
  const bentBehind = Math.hypot(behind, travel);
  const rest = model === 'whole' ? string.length : ahead;
  const bent = model === 'whole' ? bentAhead + bentBehind : bentAhead;
  const tension = string.tension + string.stiffness * (bent / rest - 1);
  const density = string.density * (rest / bent);
  const before = Math.sqrt(string.tension / string.density) / ahead;
  const after = Math.sqrt(tension / density) / bentAhead;
  const nutSide = model === 'whole' && behind > 0 ? travel / bentBehind : travel / bentAhead;
  return { ratio: after / before, force: tension * (travel / bentAhead + nutSide) };
}

/** Farther than any string lies from the edge of the neck: beyond it a bend is given up. */
const FARTHEST = 0.2;

/**
 * The push that raises a stopped note by `steps` semitones, `behind` metres from the nut. Found by
 * bisection, pitch rising with travel. Undefined when 20 cm do not suffice.
 */
export function bendWork(
  string: StringMechanics,
  behind: number,
  steps: number,
  model: BendModel,
): BendWork | undefined {
  const wanted = 2 ** (steps / 12);
  if (pushed(string, behind, FARTHEST, model).ratio < wanted) return undefined;
  let low = 0;
  let high = FARTHEST;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (pushed(string, behind, middle, model).ratio < wanted) low = middle;
    else high = middle;
  }
  return { travel: high, force: pushed(string, behind, high, model).force };
}
