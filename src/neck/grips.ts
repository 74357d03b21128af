import { type Chord, pitchClass, pitchClassOf } from '#theory';
import { demandsOf } from './demands.ts';
import { makeFingering } from './fingering-text.ts';
import { type Fingering, fingeringOf } from './fingers.ts';
import { formsOf } from './forms.ts';
import { fret, openMidis, samePlace, stringNumber } from './places.ts';
import { distanceBetween, HAND_FRETS } from './reach.ts';
import { lowestPlayed, type Shape, shapeIn } from './shapes.ts';
import type { Barre, Form, Grip, GripTone, Instrument } from './types.ts';

function gripTones(
  { frets, degrees }: Shape,
  { fingers }: Fingering,
  anchor: number,
): readonly GripTone[] {
  return frets.flatMap((f, i) => {
    const degree = degrees[i];
    if (f === null || degree === undefined) return [];
    const finger = fingers[i];
    const place = { string: stringNumber(i + 1), fret: fret(f + anchor), degree };
    return [finger === undefined ? place : { ...place, finger }];
  });
}

const moved = (barre: Barre, anchor: number): Barre => ({
  ...barre,
  fret: fret(barre.fret + anchor),
});

/** The fingers of a shape; a bass behind the anchor is an open string where that lies a fret from the nut. */
function fingeringAt({ frets, fingering }: Shape, { own }: Form, open: number): Fingering {
  const bassOpen = own === undefined && open < 0 && frets.includes(open);
  return bassOpen ? (fingeringOf(frets, open) ?? fingering) : fingering;
}

function makeGrip(form: Form, shape: Shape, anchor: number, capo: number): Grip {
  const fingering = fingeringAt(shape, form, capo - anchor);
  return {
    form,
    anchor: fret(anchor),
    tones: gripTones(shape, fingering, anchor),
    barres: fingering.barres.map((barre) => moved(barre, anchor)),
    missing: shape.missing,
  };
}

const grips = new WeakMap<Shape, Grip[]>();

/** The same shape at the same anchor is the same grip, whatever chord object asked for it. */
function gripAt(form: Form, shape: Shape, anchor: number, capo: number): Grip {
  const known = grips.get(shape) ?? [];
  const grip = known[anchor] ?? makeGrip(form, shape, anchor, capo);
  known[anchor] = grip;
  grips.set(shape, known);
  return grip;
}

/** A form of a chord at one place along the neck; without `grip` where no hand could hold it. */
export interface FormPlace {
  readonly form: Form;
  readonly anchor: number;
  /** Fret under the index finger when the form is held. */
  readonly position: number;
  readonly grip?: Grip;
  /** The grip of another form that this one is only a part of. */
  readonly partOf?: Grip;
  /** Whether the grip takes more frets than one finger to a fret gives, wherever the hand is. */
  readonly wide: boolean;
  /** Whether it is the upper part of a form, which is offered only where the hand has all of it. */
  readonly upper?: true;
}

/** Frets behind the nut or capo within which an anchor may lie: no form leaves more of its frets free. */
export const FRETS_BEHIND = 2;

/**
 * Frets at which the form's open strings come to lie for the chord's root. One may lie behind the nut
 * or capo, for a grip that holds nothing as low: x21222 of B9 is a C form moved down a fret.
 */
function anchorsOf(form: Form, chord: Chord, { capo, frets }: Instrument): readonly number[] {
  const first = pitchClassOf(chord.root) - pitchClassOf(form.root);
  const lowest = capo - FRETS_BEHIND + pitchClass(first - capo + FRETS_BEHIND);
  const anchors: number[] = [];
  for (let anchor = lowest; anchor <= frets; anchor += 12) anchors.push(anchor);
  return anchors;
}

/** Highest fret that the form itself needs above its anchor. */
const heightOf = (form: Form): number => Math.max(0, ...form.frets.map((f) => f ?? 0));

/**
 * No grip asks for more between the outer fingers. A flat hand spans some 152 mm from index to little
 * finger (working border of the Boyle/PASK analysis of pianists' hands); pressing strings takes some
 * of that (our own estimate).
 */
const WIDEST_GRIP = 130;
const WIDTHS = [5, 4, 3] as const;

/** Distance between the outermost held frets of a grip, mm. */
export function gripWidth(grip: Grip, { scale, capo }: Instrument): number {
  const held = grip.tones.flatMap((tone) => (tone.fret > capo ? [tone.fret as number] : []));
  return held.length < 2 ? 0 : distanceBetween(scale, Math.min(...held), Math.max(...held));
}

/** The grip of a form at an anchor; where the neck's wide frets stretch it too far, a narrower one. */
function gripFor(form: Form, chord: Chord, anchor: number, on: Instrument): Grip | undefined {
  for (const widest of WIDTHS) {
    const shape = shapeIn(form, demandsOf(chord), on, anchor === on.capo, widest);
    if (shape === undefined) return undefined;
    const grip = gripAt(form, shape, anchor, on.capo);
    if (gripWidth(grip, on) <= WIDEST_GRIP) return grip;
  }
  return undefined;
}

function placeAt(
  form: Form,
  chord: Chord,
  anchor: number,
  instrument: Instrument,
): FormPlace | undefined {
  const { capo, frets } = instrument;
  const grip = gripFor(form, chord, anchor, instrument);
  const behind = anchor < capo;
  if (behind && !grip?.tones.every((tone) => tone.fret > capo)) return undefined;
  if (grip === undefined) {
    const fits = anchor + heightOf(form) <= frets;
    return fits ? { form, anchor, position: Math.max(capo + 1, anchor), wide: false } : undefined;
  }
  const fits = grip.tones.every((tone) => tone.fret >= capo && tone.fret <= frets);
  const position = positionOf(grip, capo);
  const wide = grip.tones.some((tone) => tone.fret > position + HAND_FRETS);
  return fits ? { form, anchor, position, grip, wide } : undefined;
}

/** Fewer strings than these are no grip of four tones. */
const UPPER_STRINGS = 4;
/** A root alone is no likeness: the upper part of a form keeps another of its places, too. */
const LEAST_LIKE = 2;

/** Strings on which a grip leaves the form's open shape as it is. */
export const likeness = ({ form, anchor, tones }: Grip): number =>
  tones.filter(({ string, fret: f }) => form.frets[string - 1] === f - anchor).length;

/** Whether one grip has all the places of another. */
export const contains = (whole: Grip, part: Grip): boolean =>
  part.tones.every((tone) => whole.tones.some((other) => samePlace(tone, other)));

/** Whether a grip is better called by another form: all of it lies in that form's, which is more like itself. */
const isPartOf = (part: Grip, whole: Grip): boolean =>
  likeness(whole) > likeness(part) && contains(whole, part);

function withOwner(place: FormPlace, all: readonly FormPlace[]): FormPlace {
  const { grip } = place;
  const owner = grip && all.find((other) => other.grip && isPartOf(grip, other.grip));
  return owner?.grip ? { ...place, partOf: owner.grip } : place;
}

function computePlaces(chord: Chord, instrument: Instrument): readonly FormPlace[] {
  const places = formsOf(instrument)
    .flatMap((form) =>
      anchorsOf(form, chord, instrument).flatMap(
        (anchor) => placeAt(form, chord, anchor, instrument) ?? [],
      ),
    )
    .sort((a, b) => a.anchor - b.anchor);
  return places.map((place) => withOwner(place, places));
}

const cache = new WeakMap<Instrument, Map<string, readonly FormPlace[]>>();
const MOST_CACHED = 4000;

/**
 * Every copy of every form of a chord that fits on the neck, from the nut up, computed once for each
 * meaning of a chord on an instrument. A form in which no four fingers can hold the chord has no grip.
 */
export function formPlaces(chord: Chord, instrument: Instrument): readonly FormPlace[] {
  const byMeaning = cache.get(instrument) ?? new Map<string, readonly FormPlace[]>();
  if (byMeaning.size === 0) cache.set(instrument, byMeaning);
  const meaning = demandsOf(chord).key + pitchClassOf(chord.root);
  const known = byMeaning.get(meaning);
  if (known !== undefined) return known;
  if (byMeaning.size >= MOST_CACHED) byMeaning.clear();
  const places = computePlaces(chord, instrument);
  byMeaning.set(meaning, places);
  return places;
}

/** The thinner strings of a form from its next root on, where they are enough for a grip. */
function computeUpper(form: Form, midis: readonly number[]): Form | undefined {
  const root = pitchClassOf(form.root);
  const lowest = lowestPlayed(form.frets);
  const next = form.frets.findLastIndex(
    (f, i) => i < lowest && f !== null && pitchClass((midis[i] ?? 0) + f - root) === 0,
  );
  if (form.own || next < UPPER_STRINGS - 1) return undefined;
  return { ...form, frets: form.frets.map((f, i) => (i > next ? null : f)) };
}

const uppers = new WeakMap<Form, Form | undefined>();

function upperOf(form: Form, on: Instrument): Form | undefined {
  if (!uppers.has(form)) uppers.set(form, computeUpper(form, openMidis(on)));
  return uppers.get(form);
}

const lowestTone = ({ grip }: FormPlace): GripTone | undefined => grip?.tones.at(-1);

/**
 * The thinner strings of a form, played from its next root on (common practice: xx4354, the upper part of
 * the E form, for F#9). Only where no other grip within a hand has its lowest root there.
 */
function upperPlace(
  { form, anchor, grip: whole }: FormPlace,
  chord: Chord,
  on: Instrument,
  all: readonly FormPlace[],
): FormPlace | undefined {
  const upper = chord.bass ? undefined : upperOf(form, on);
  const place = upper && placeAt(upper, chord, anchor, on);
  const root = place && lowestTone(place);
  if (!root || place.wide || !place.grip || (whole && contains(whole, place.grip)))
    return undefined;
  const grip = { ...place.grip, form };
  if (likeness(grip) < LEAST_LIKE) return undefined;
  const taken = all.some((other) => {
    const lowest = lowestTone(other);
    return lowest && !other.wide && samePlace(lowest, root);
  });
  return taken ? undefined : { ...place, form, grip, upper: true };
}

const atHandCache = new WeakMap<readonly FormPlace[], readonly FormPlace[]>();

/** Every copy of every form, and what a hand may play of one where no other form has a grip. */
export function placesForHand(chord: Chord, instrument: Instrument): readonly FormPlace[] {
  const all = formPlaces(chord, instrument);
  const known = atHandCache.get(all);
  if (known !== undefined) return known;
  const more = all.flatMap((place) => upperPlace(place, chord, instrument, all) ?? []);
  const places = more.length === 0 ? all : [...all, ...more];
  atHandCache.set(all, places);
  return places;
}

/** Every playable grip of a chord, from the nut up. */
export const gripsOf = (chord: Chord, instrument: Instrument): readonly Grip[] =>
  formPlaces(chord, instrument).flatMap((place) => place.grip ?? []);

/** A grip as it is typed: `x32010`, `x-10-12-11-12-x`. `strings`: how many the instrument has. */
export function makeGripText(grip: Grip, strings: number): string {
  const frets: (number | null)[] = Array.from({ length: strings }, () => null);
  for (const tone of grip.tones) frets[tone.string - 1] = tone.fret;
  return makeFingering(frets);
}

/** Where the index finger goes for a grip: its lowest fretted tone, or fret 1 for open strings only. */
export function positionOf(grip: Grip, capo: number): number {
  const held = grip.tones.flatMap((tone) => (tone.fret > capo ? [tone.fret as number] : []));
  return held.length === 0 ? capo + 1 : Math.min(...held);
}
