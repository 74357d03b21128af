import { type Degree, pitchClass } from '#theory';
import type { Fingering, Frets } from './fingers.ts';
import { HAND_FRETS } from './reach.ts';
import type { Barre, Form } from './types.ts';

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
  restPower: 0.4,
  noneToMute: 0.6,
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
  fingerAboveFlat: 2.7,
  flatStopsShort: 2.5,
  flatBesideTip: 2.7,
  barreOverRest: 5,
  openShapeGivenUp: 1.8,
  thin: 3,
  fretBeyondFour: 2.5,
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

/** Strings that a chord on the guitar has at least; of root and fifth alone three are enough (common practice). */
const LEAST_STRINGS = 4;

/** A grip of fewer strings is hardly a form any more. `tones`: how many different ones the chord has. */
export const thinness = (frets: Frets, tones: number): number =>
  COST.thin *
  Math.max(0, Math.min(LEAST_STRINGS, tones + 1) - frets.filter((f) => f !== null).length);

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

/** Frets from the lowest held to the highest; open strings are not held where the form lies at the nut. */
function widthOf(frets: Frets, open: boolean): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const f of frets) {
    if (f === null || (open && f === 0)) continue;
    low = Math.min(low, f);
    high = Math.max(high, f);
  }
  return Math.max(0, high - low);
}

/**
 * What the distance between the outer held frets costs, every fret beyond four more than the one
 * before; undefined beyond `widest` frets.
 */
export function widthCost(frets: Frets, open: boolean, widest: number): number | undefined {
  const width = widthOf(frets, open);
  if (width > widest) return undefined;
  const beyond = Math.max(0, width - HAND_FRETS);
  return ((beyond * (beyond + 1)) / 2) * COST.fretBeyondFour;
}

/** Whether all of a moved grip lies within the four frets of a hand. */
export const isInHand = (frets: Frets): boolean => widthOf(frets, false) <= HAND_FRETS;

/** Whether the bass alone takes the hand out of its four frets. */
export function bassAstray(frets: Frets, open: boolean): boolean {
  const bass = frets.findLastIndex((f) => f !== null);
  const others = Math.max(HAND_FRETS, widthOf(frets.slice(0, bass), open));
  return widthOf(frets, open) > others;
}

/**
 * A flat finger cannot mute a string that it lies on. One that is not the index gives way under a
 * finger before it, and can hardly end short of a thinner string that sounds lower.
 */
function flatCost({ finger, fret, from, to }: Barre, frets: Frets): number {
  const under = frets.slice(to - 1, from);
  const silent = under.filter((f) => f === null).length * COST.barreOverRest;
  if (finger === 1) return silent;
  const above = under.some((f) => (f ?? 0) > fret) ? COST.fingerAboveFlat : 0;
  const short = (frets[to - 2] ?? fret) < fret ? COST.flatStopsShort : 0;
  return silent + COST.flatHigherFinger + above + short;
}

/** Whether a string rests between others that sound, and not beside the bass, whose finger mutes it. */
function restsInside(frets: Frets): boolean {
  const first = frets.findIndex((f) => f !== null);
  const bass = frets.findLastIndex((f) => f !== null);
  return frets.slice(first, bass - 1).includes(null);
}

/** Strings that a flat finger takes beside the tip of another one without standing in its way: x32333. */
const MOST_BESIDE_TIP = 3;

/** Flat fingers over more strings than that, with the tip of another one before them in the same fret. */
const besideTip = (
  { barres, fingers }: Pick<Fingering, 'barres' | 'fingers'>,
  frets: Frets,
): number =>
  barres.filter(
    ({ finger, fret, from, to }) =>
      from - to >= MOST_BESIDE_TIP &&
      fingers.some((other, i) => frets[i] === fret && (other ?? finger) < finger),
  ).length;

/** What the fingers of a shape ask for. Where all four hold a string each, none is left to mute with. */
export function fingerCost({ count, barres, fingers }: Fingering, frets: Frets): number {
  const fourth = count > 3 ? COST.fourthFinger : 0;
  const allTips = count > 3 && barres.length === 0 && restsInside(frets);
  const flat = barres.reduce((sum, barre) => sum + flatCost(barre, frets), 0);
  const tips = besideTip({ barres, fingers }, frets) * COST.flatBesideTip;
  return count * COST.finger + fourth + flat + tips + (allTips ? COST.noneToMute : 0);
}
