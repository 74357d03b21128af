import type { Chord } from '#theory';
import { type FormPlace, formPlaces, placesForHand } from './grips.ts';
import { fret, samePlace } from './places.ts';
import { reachByFret } from './reach.ts';
import type { FormAtHand, Grip, GripTone, Instrument, Place, Reach, Span } from './types.ts';
import { mutedWithin } from './why.ts';

/** Where the hand is and what it can do; all that reach depends on. */
export interface Hand {
  /** Fret under the index finger. */
  readonly position: number;
  readonly instrument: Instrument;
  readonly span: Span;
}

/** In the order in which players reach for the forms up the neck (common practice). */
const PRACTICE = ['E', 'A', 'D', 'C', 'G'];

/** A form at one place as it lies to the hand, with what is needed to rank it. */
export interface Measured {
  readonly at: FormAtHand;
  readonly distance: number;
  /** Set where the grip is only a part of another form's that the hand has too: how many places that has. */
  readonly partOf: number | undefined;
  /** Set where the grip takes more than four frets. */
  readonly wide: boolean;
  readonly upper: true | undefined;
}

/** Open strings count as under the hand only where it holds half of what the grip frets, or more. */
function countTones(
  tones: readonly GripTone[],
  reach: readonly Reach[],
): readonly [number, number] {
  let held = 0;
  let open = 0;
  let stretched = 0;
  for (const tone of tones) {
    const how = reach[tone.fret];
    if (how === 'hand') held++;
    else if (how === 'open') open++;
    else if (how === 'stretch') stretched++;
  }
  return [2 * held >= tones.length - open ? held + open : held, stretched];
}

const NO_PLACES: readonly Place[] = [];
const NO_OVERLAPS: FormAtHand['overlaps'] = [];

/** How many places a grip has, if the hand comes to all of them. */
const reached = (grip: Grip | undefined, reach: readonly Reach[]): number | undefined =>
  grip?.tones.every((tone) => reach[tone.fret] !== 'out') ? grip.tones.length : undefined;

function measure(place: FormPlace, hand: Hand, reach: readonly Reach[]): Measured {
  const { form, anchor, grip, wide, upper } = place;
  const partOf = reached(place.partOf, reach);
  const distance = Math.abs(place.position - hand.position);
  if (grip === undefined) {
    const at: FormAtHand = {
      form,
      anchor: fret(anchor),
      under: 0,
      stretched: 0,
      of: 0,
      overlaps: NO_OVERLAPS,
    };
    return { at, distance, partOf, wide, upper };
  }
  const [under, stretched] = countTones(grip.tones, reach);
  const of = grip.tones.length;
  return {
    at: { form, anchor: fret(anchor), grip, under, stretched, of, overlaps: NO_OVERLAPS },
    distance,
    partOf,
    wide,
    upper,
  };
}

/**
 * Share of the grip under the hand. A tone that the hand stretches to counts half, save in a grip
 * that stretches the hand wherever it is, and where the hand holds nothing to stretch from. What is
 * only a part of another form's grip counts as that part, so that the form which has the whole comes
 * first.
 */
export function shareOf({ at, partOf = at.of, wide }: Measured): number {
  const { under, stretched, of } = at;
  if (of === 0) return -1;
  return (under + (wide || under === 0 ? 0 : stretched / 2)) / partOf;
}

/** What is only a part of another form’s grip comes after a grip of its own. */
export const ownFirst = (a: Measured, b: Measured): number =>
  Number(a.partOf !== undefined) - Number(b.partOf !== undefined);

const practiceRank = (name: string): number => {
  const rank = PRACTICE.indexOf(name);
  return rank === -1 ? PRACTICE.length : rank;
};

/** A grip within four frets comes before one that stretches the hand by itself (common practice). */
export const narrowFirst = (a: Measured, b: Measured): number => Number(a.wide) - Number(b.wide);

/** Whether a string rests among the others; one beside the bass is muted by its finger in passing. */
const isMutedWithin = ({ grip }: FormAtHand): boolean => {
  const bass = grip?.tones.at(-1)?.string ?? 0;
  return grip !== undefined && mutedWithin(grip).some((string) => string < bass - 1);
};

/** A grip that sounds string by string comes before one with a string to be muted in it (common practice). */
export const cleanFirst = (a: Measured, b: Measured): number =>
  Number(isMutedWithin(a.at)) - Number(isMutedWithin(b.at));

/** In the order in which players reach for the forms. */
export const usualFirst = (a: Measured, b: Measured): number =>
  practiceRank(a.at.form.name) - practiceRank(b.at.form.name);

/** Share under the hand without a stretch. */
const firmOf = ({ at, partOf = at.of }: Measured): number => at.under / partOf;

const better = (a: Measured, b: Measured): number =>
  shareOf(b) - shareOf(a) ||
  firmOf(b) - firmOf(a) ||
  ownFirst(a, b) ||
  narrowFirst(a, b) ||
  a.distance - b.distance ||
  cleanFirst(a, b) ||
  usualFirst(a, b);

const nearer = (a: Measured, b: Measured): number => a.distance - b.distance || better(a, b);

const overlapCache = new WeakMap<Grip, WeakMap<Grip, readonly Place[]>>();

const computeShared = (a: Grip, b: Grip): readonly Place[] =>
  a.tones.filter((tone) => b.tones.some((other) => samePlace(tone, other)));

/** Places that two grips have in common; grips are shared objects, so each pair is compared once. */
function sharedPlaces(a: Grip | undefined, b: Grip | undefined): readonly Place[] {
  if (a === undefined || b === undefined) return NO_PLACES;
  const byOther = overlapCache.get(a) ?? new WeakMap<Grip, readonly Place[]>();
  const known = byOther.get(b);
  if (known !== undefined) return known;
  const shared = computeShared(a, b);
  byOther.set(b, shared);
  overlapCache.set(a, byOther);
  return shared;
}

function withOverlaps(at: FormAtHand, all: readonly FormAtHand[]): FormAtHand {
  const overlaps: FormAtHand['overlaps'][number][] = [];
  for (const { form, anchor, grip } of all) {
    const shared = form === at.form ? NO_PLACES : sharedPlaces(at.grip, grip);
    if (shared.length > 0) overlaps.push({ form, anchor, shared });
  }
  return overlaps.length === 0 ? at : { ...at, overlaps };
}

function measuredOf(places: readonly FormPlace[], hand: Hand): readonly Measured[] {
  const reach = reachByFret(hand.instrument, hand.span, hand.position);
  return places.map((place) => measure(place, hand, reach));
}

const measureAll = (chord: Chord, hand: Hand): readonly Measured[] =>
  measuredOf(placesForHand(chord, hand.instrument), hand).filter(
    ({ at, upper }) => !upper || at.under + at.stretched === at.of,
  );

/** One copy of every form: the one of which most lies under the hand, or `by` another order. */
function oneOfEach(measured: readonly Measured[], by: typeof better): readonly Measured[] {
  const best = new Map<string, Measured>();
  for (const one of measured) {
    const known = best.get(one.at.form.name);
    if (known === undefined || by(one, known) < 0) best.set(one.at.form.name, one);
  }
  return [...best.values()];
}

/** Every form in its best copy, best first. */
export const ranked = (chord: Chord, hand: Hand): readonly Measured[] =>
  [...oneOfEach(measureAll(chord, hand), better)].sort(better);

/**
 * The forms of a chord as they lie to the hand, best first: most of the grip under the hand, then
 * with the fewest stretches, then within four frets, then the nearest, then without a string muted in
 * it, then the more usual. Each form
 * once, in its best copy, with the places that it shares with the others.
 */
export function formsAtHand(chord: Chord, hand: Hand): readonly FormAtHand[] {
  const forms = ranked(chord, hand).map(({ at }) => at);
  return forms.map((at) => withOverlaps(at, forms));
}

/** The best form under the hand alone, without the rest of the ranking. */
export function bestAtHand(chord: Chord, hand: Hand): FormAtHand | undefined {
  let best: Measured | undefined;
  for (const one of measureAll(chord, hand)) {
    if (best === undefined || better(one, best) < 0) best = one;
  }
  return best?.at;
}

/** A form asked for by name, in its copy nearest to the hand. */
export function nearestCopy(chord: Chord, hand: Hand, form: string): FormAtHand | undefined {
  const copies = measureAll(chord, hand).filter((one) => one.at.form.name === form);
  return oneOfEach(copies, nearer)[0]?.at;
}

/** One copy of a form, as it lies best to the hand. */
export function copyAt(
  chord: Chord,
  hand: Hand,
  form: string,
  anchor: number,
): FormAtHand | undefined {
  const copies = measureAll(chord, hand).filter(
    ({ at }) => at.form.name === form && at.anchor === anchor,
  );
  return oneOfEach(copies, better)[0]?.at;
}

/** Every copy of every form along the neck, from the nut up, measured against the hand: "where else". */
export const formsAlongNeck = (chord: Chord, hand: Hand): readonly FormAtHand[] =>
  measuredOf(formPlaces(chord, hand.instrument), hand).map(({ at }) => at);
