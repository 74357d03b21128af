import { type Degree, pitchClass } from '#theory';
import type { Fingering, Frets } from './fingers.ts';
import type { Form } from './types.ts';

/**
 * What makes a grip less like its form or harder to hold; the unit is one fret of one moved tone.
 * The figures are our own. They are the smallest set under which the textbook grips of the five
 * forms come out of the search.
 */
export const COST = {
  move: 1,
  restAtEdge: 2.7,
  restInside: 4.2,
  restBesideBass: 2.75,
  outerRootGivenUp: 0.1,
  fifthOverBassMoved: 1.5,
  addedBass: 1,
  lowNinth: 10,
  lowExtension: 2,
  halfStepClash: 4,
  doubledTension: 0.6,
  finger: 0.1,
  fourthFinger: 0.5,
  flatHigherFinger: 0.9,
  fretBeyondFour: 1.5,
  beyondHand: 1,
} as const;

/** No rest of a string that belongs to the form costs less. */
export const LEAST_REST = COST.restAtEdge;

/** Widest grip that is looked at anywhere, in frets from the lowest held to the highest. */
export const WIDEST = 5;

/** A sounding string: semitones above a root below all strings, and its degree. */
export interface Sound {
  readonly height: number;
  readonly degree: Degree;
}

/**
 * What resting strings cost above the least. Muting between sounding strings is harder than leaving
 * out the thinnest, save beside the bass, whose finger mutes it in passing (common practice).
 */
export function restSurcharge(form: Form, frets: Frets): number {
  const first = frets.findIndex((f) => f !== null);
  const bass = frets.findLastIndex((f) => f !== null);
  let cost = 0;
  for (let i = first + 1; i < bass; i++) {
    if (frets[i] !== null || form.frets[i] === null) continue;
    cost += (i === bass - 1 ? COST.restBesideBass : COST.restInside) - LEAST_REST;
  }
  return cost;
}

/** Hand and ear find a form by its outermost root, so that one is given up last. */
export function outerRootGivenUp(form: Form, heights: readonly number[], frets: Frets): number {
  const f = form.frets[0];
  const isRoot = typeof f === 'number' && pitchClass((heights[0] ?? 0) + f) === 0;
  return isRoot && frets[0] === null ? COST.outerRootGivenUp : 0;
}

const lowPenalty = (degree: Degree): number =>
  degree.number === 9 ? COST.lowNinth : degree.number > 9 ? COST.lowExtension : 0;

/**
 * Extensions sound muddy within an octave of the bass, half steps harsh, doubled tensions heavy.
 * `sounds` from low to high.
 */
export function soundCost(sounds: readonly Sound[]): number {
  const bass = sounds[0]?.height ?? 0;
  let cost = 0;
  for (const [i, { height, degree }] of sounds.entries()) {
    const before = sounds[i - 1];
    if (height - bass < 12) cost += lowPenalty(degree);
    if (before !== undefined && height - before.height === 1) cost += COST.halfStepClash;
    const tension = degree.number > 5;
    if (tension && sounds.slice(0, i).some((s) => s.degree === degree)) cost += COST.doubledTension;
  }
  return cost;
}

/** What the distance between the outer held frets costs; undefined beyond `widest` frets. */
export function widthCost(frets: Frets, open: boolean, widest: number): number | undefined {
  let low = Number.POSITIVE_INFINITY;
  let high = 0;
  for (const f of frets) {
    if (f === null || (open && f === 0)) continue;
    low = Math.min(low, f);
    high = Math.max(high, f);
  }
  if (high - low > widest) return undefined;
  return Math.max(0, high - low - 3) * COST.fretBeyondFour;
}

export function fingerCost(fingering: Fingering): number {
  const flat = fingering.barres.filter((barre) => barre.finger > 1).length;
  const fourth = fingering.count > 3 ? COST.fourthFinger : 0;
  return fingering.count * COST.finger + fourth + flat * COST.flatHigherFinger;
}
