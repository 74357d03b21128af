import { type Degree, midiOf, pitchClass, pitchClassOf } from '#theory';
import type { Demands, ToneDemand } from './demands.ts';
import { type Fingering, type Frets, fingeringOf } from './fingers.ts';
import { HAND_FRETS } from './reach.ts';
import type { Form, Instrument } from './types.ts';

/**
 * A chord quality in a form, in frets above the anchor: what every string plays, which degree
 * sounds there, the fingers, and what had to be left out.
 */
export interface Shape {
  readonly frets: Frets;
  readonly degrees: readonly (Degree | undefined)[];
  readonly fingering: Fingering;
  readonly missing: readonly Degree[];
  readonly cost: number;
}

/**
 * What makes a grip less like its form or harder to hold; the unit is one fret of one moved tone.
 * The figures are our own. They are the smallest set under which the textbook grips of the five
 * forms come out of the search.
 */
const COST = {
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

const LEAST_REST = COST.restAtEdge;
const HIGHEST = 5;
const WIDEST = 5;

/** One way to use a string. */
interface Choice {
  readonly fret: number | null;
  readonly tone?: ToneDemand;
  readonly cost: number;
}

interface Search {
  readonly form: Form;
  readonly demands: Demands;
  /** Semitones of every open string above a root that lies below them all. */
  readonly heights: readonly number[];
  /** Open strings take no finger; in a moved form they lie under the index. */
  readonly open: boolean;
  readonly rootString: number;
  readonly choices: readonly (readonly Choice[])[];
}

const lowestPlayed = (frets: Frets): number => frets.findLastIndex((f) => f !== null);

function heightsAboveRoot(form: Form, midis: readonly number[]): readonly number[] {
  const root = pitchClassOf(form.root);
  return midis.map((midi) => midi - root);
}

const toneAt = (demands: Demands, height: number): ToneDemand | undefined =>
  demands.byOffset[pitchClass(height)];

/** Leaving a string of the form silent costs at least this; those outside it are silent for nothing. */
const restChoice = (form: Form, index: number): Choice => ({
  fret: null,
  cost: form.frets[index] === null ? 0 : LEAST_REST,
});

function moveCost(search: Omit<Search, 'choices'>, index: number, to: number): number {
  const from = search.form.frets[index];
  if (from === null || from === undefined) return COST.addedBass;
  if (from === to) return 0;
  const before = toneAt(search.demands, (search.heights[index] ?? 0) + from);
  const beyond = Math.max(0, to - HAND_FRETS) * COST.beyondHand;
  const fifthOverBass =
    index === search.rootString - 1 && before?.degree.number === 5 && before.degree.alter === 0;
  return COST.move + Math.abs(to - from) + beyond + (fifthOverBass ? COST.fifthOverBassMoved : 0);
}

function choicesFor(search: Omit<Search, 'choices'>, index: number): readonly Choice[] {
  const { form, demands, heights, rootString } = search;
  const outside = form.frets[index] === null;
  const choices: Choice[] = [restChoice(form, index)];
  if (outside && (demands.bass === 0 || index < rootString)) return choices;
  for (let f = 0; f <= HIGHEST; f++) {
    const tone = toneAt(demands, (heights[index] ?? 0) + f);
    const rootMoved = index === rootString && demands.bass === 0 && f !== form.frets[index];
    if (tone === undefined || rootMoved || (outside && tone.offset !== demands.bass)) continue;
    choices.push({ fret: f, tone, cost: moveCost(search, index, f) });
  }
  return choices.sort((a, b) => a.cost - b.cost);
}

/**
 * Muting a string between sounding ones is harder than leaving out the thinnest, save beside the
 * bass, whose finger mutes it in passing (common practice).
 */
function restSurcharge(form: Form, picked: readonly Choice[]): number {
  const first = picked.findIndex((choice) => choice.fret !== null);
  const bass = picked.findLastIndex((choice) => choice.fret !== null);
  let cost = 0;
  for (let i = first + 1; i < bass; i++) {
    if (picked[i]?.fret !== null || form.frets[i] === null) continue;
    cost += (i === bass - 1 ? COST.restBesideBass : COST.restInside) - LEAST_REST;
  }
  return cost;
}

/** Hand and ear find a form by its outermost root, so that one is given up last. */
function outerRootGivenUp(search: Search, picked: readonly Choice[]): number {
  const f = search.form.frets[0];
  const isRoot = typeof f === 'number' && pitchClass((search.heights[0] ?? 0) + f) === 0;
  return isRoot && picked[0]?.fret === null ? COST.outerRootGivenUp : 0;
}

interface Sound {
  readonly height: number;
  readonly degree: Degree;
}

function soundsOf(search: Search, picked: readonly Choice[]): readonly Sound[] {
  return picked
    .flatMap((choice, i) =>
      choice.fret === null || choice.tone === undefined
        ? []
        : [{ height: (search.heights[i] ?? 0) + choice.fret, degree: choice.tone.degree }],
    )
    .sort((a, b) => a.height - b.height);
}

const lowPenalty = (degree: Degree): number =>
  degree.number === 9 ? COST.lowNinth : degree.number > 9 ? COST.lowExtension : 0;

/** Extensions sound muddy within an octave of the bass, half steps harsh, doubled tensions heavy. */
function soundCost(sounds: readonly Sound[]): number {
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

function widthCost(frets: Frets, open: boolean): number | undefined {
  const held = frets.filter((f): f is number => f !== null && (f > 0 || !open));
  const width = held.length === 0 ? 0 : Math.max(...held) - Math.min(...held);
  if (width > WIDEST) return undefined;
  return Math.max(0, width - 3) * COST.fretBeyondFour;
}

function fingerCost(fingering: Fingering): number {
  const flat = fingering.barres.filter((barre) => barre.finger > 1).length;
  const fourth = fingering.count > 3 ? COST.fourthFinger : 0;
  return fingering.count * COST.finger + fourth + flat * COST.flatHigherFinger;
}

/** The tones left out and what that costs; undefined when one of them is indispensable. */
function absences(
  demands: Demands,
  picked: readonly Choice[],
): { readonly missing: readonly Degree[]; readonly cost: number } | undefined {
  const gone = demands.tones.filter((tone) => !picked.some((choice) => choice.tone === tone));
  if (gone.some((tone) => tone.required)) return undefined;
  return {
    missing: gone.map((tone) => tone.degree),
    cost: gone.reduce((sum, tone) => sum + tone.absence, 0),
  };
}

/** Prices a complete choice of strings; undefined when it cannot be held or is not the chord. */
function shapeOf(search: Search, picked: readonly Choice[], base: number): Shape | undefined {
  const left = absences(search.demands, picked);
  const sounds = soundsOf(search, picked);
  const lowest = sounds[0];
  if (left === undefined || lowest === undefined) return undefined;
  if (pitchClass(lowest.height) !== search.demands.bass) return undefined;
  const frets = picked.map((choice) => choice.fret);
  const width = widthCost(frets, search.open);
  const fingering = fingeringOf(frets, search.open ? 0 : -1);
  if (width === undefined || fingering === undefined) return undefined;
  const extra =
    left.cost +
    width +
    outerRootGivenUp(search, picked) +
    fingerCost(fingering) +
    soundCost(sounds);
  return {
    frets,
    degrees: picked.map((choice) => choice.tone?.degree),
    fingering,
    missing: left.missing,
    cost: base + restSurcharge(search.form, picked) + extra,
  };
}

/** Depth-first over the strings, thickest first, dropping whatever already costs more than the best. */
function cheapest(search: Search): Shape | undefined {
  let best: Shape | undefined;
  const picked: Choice[] = search.choices.map(() => ({ fret: null, cost: 0 }));
  const visit = (index: number, base: number): void => {
    if (best !== undefined && base >= best.cost) return;
    if (index < 0) {
      const shape = shapeOf(search, picked, base);
      if (shape !== undefined && (best === undefined || shape.cost < best.cost)) best = shape;
      return;
    }
    for (const choice of search.choices[index] ?? []) {
      picked[index] = choice;
      visit(index - 1, base + choice.cost);
    }
  };
  visit(search.choices.length - 1, 0);
  return best;
}

interface Setting {
  readonly form: Form;
  readonly demands: Demands;
  readonly midis: readonly number[];
}

function findShape({ form, demands, midis }: Setting, open: boolean): Shape | undefined {
  const heights = heightsAboveRoot(form, midis);
  const frame = { form, demands, heights, open, rootString: lowestPlayed(form.frets) };
  return cheapest({ ...frame, choices: form.frets.map((_, i) => choicesFor(frame, i)) });
}

/** A form keeps its open shape up the neck wherever four fingers can hold that; else it is sought anew. */
function movedShape(setting: Setting, open: Shape | undefined): Shape | undefined {
  const fingering = open === undefined ? undefined : fingeringOf(open.frets, -1);
  const holds = open !== undefined && widthCost(open.frets, false) !== undefined;
  return holds && fingering !== undefined ? { ...open, fingering } : findShape(setting, false);
}

interface ShapePair {
  readonly open: Shape | undefined;
  readonly moved: Shape | undefined;
}

const cache = new WeakMap<Form, Map<string, ShapePair>>();
const MOST_CACHED = 2000;

function shapePair(form: Form, demands: Demands, instrument: Instrument): ShapePair {
  const pairs = cache.get(form) ?? new Map<string, ShapePair>();
  cache.set(form, pairs);
  const known = pairs.get(demands.key);
  if (known !== undefined) return known;
  const midis = instrument.strings.map((string) => midiOf(string.pitch));
  const open = findShape({ form, demands, midis }, true);
  const pair = { open, moved: movedShape({ form, demands, midis }, open) };
  if (pairs.size >= MOST_CACHED) pairs.clear();
  pairs.set(demands.key, pair);
  return pair;
}

/**
 * The grip of a chord in a form that moves as few tones as possible as little as possible, in
 * frets above the anchor. `open`: the form lies at the nut or the capo, where its open strings need
 * no finger. Undefined when four fingers cannot hold the chord in this form.
 */
export function shapeIn(
  form: Form,
  demands: Demands,
  instrument: Instrument,
  open: boolean,
): Shape | undefined {
  const pair = shapePair(form, demands, instrument);
  return open ? pair.open : pair.moved;
}
