import { type Degree, pitchClass, pitchClassOf } from '#theory';
import type { Demands, ToneDemand } from './demands.ts';
import { type Fingering, type Frets, fingeringOf } from './fingers.ts';
import { openMidis } from './places.ts';
import { HAND_FRETS } from './reach.ts';
import {
  bassAstray,
  COST,
  fingerCost,
  isInHand,
  LEAST_REST,
  outerRootGivenUp,
  restSurcharge,
  type Sound,
  soundCost,
  thinness,
  WIDEST,
  widthCost,
} from './shape-cost.ts';
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

const HIGHEST = 5;
/** A player's own form may have been put down with tones that lower below its lowest fret. */
const LOWEST_OF_OWN = -2;
const NOTHING_OPEN = LOWEST_OF_OWN - 1;
/** A fret behind the anchor the index still finds a bass (common practice: x-7-10-9-8-8 for C/E). */
const BEHIND = -1;

/** One way to use a string. `bit` stands for its tone among the chord's tones. */
interface Choice {
  readonly fret: number | null;
  readonly tone?: ToneDemand;
  readonly bit: number;
  readonly cost: number;
}

interface Frame {
  readonly form: Form;
  readonly demands: Demands;
  /** Semitones of every open string above a root that lies below them all. */
  readonly heights: readonly number[];
  /** Open strings take no finger; in a moved form they lie under the index. */
  readonly open: boolean;
  readonly rootString: number;
  /** Frets between the lowest and the highest held, at most. */
  readonly widest: number;
  /** The lowest fret that is looked at, from the anchor. */
  readonly lowest: number;
  /** Whether the bass is let behind the anchor, and then has to lie with the other tones. */
  readonly bassNear: boolean;
}

interface Search extends Frame {
  readonly choices: readonly (readonly Choice[])[];
  /** The tones that no grip may lack, one bit each. */
  readonly required: number;
  /** The tones that the strings up to an index can still bring. */
  readonly within: readonly number[];
}

/** Index of the thickest string that a shape plays. */
export const lowestPlayed = (frets: Frets): number => frets.findLastIndex((f) => f !== null);

function heightsAboveRoot(form: Form, midis: readonly number[]): readonly number[] {
  const root = pitchClassOf(form.root);
  return midis.map((midi) => midi - root);
}

const toneAt = (demands: Demands, height: number): ToneDemand | undefined =>
  demands.byOffset[pitchClass(height)];

/** Root and fifth alone, of which three strings are enough (common practice). */
const isPower = ({ tones }: Demands): boolean => tones.length < 3;

/** Leaving a string of the form silent costs at least this; those outside it are silent for nothing. */
function restChoice({ form, demands, rootString }: Frame, index: number): Choice {
  const rest = isPower(demands) && index < rootString ? COST.restPower : LEAST_REST;
  return { fret: null, bit: 0, cost: form.frets[index] === null ? 0 : rest };
}

function moveCost(frame: Frame, index: number, to: number): number {
  const from = frame.form.frets[index];
  if (from === null || from === undefined) return COST.addedBass;
  if (from === to) return 0;
  const before = toneAt(frame.demands, (frame.heights[index] ?? 0) + from);
  const beyond = Math.max(0, to - HAND_FRETS) * COST.beyondHand;
  const fifthOverBass =
    index === frame.rootString - 1 && before?.degree.number === 5 && before.degree.alter === 0;
  return COST.move + Math.abs(to - from) + beyond + (fifthOverBass ? COST.fifthOverBassMoved : 0);
}

/** The root keeps its place; below a form of the player's own lies whatever it put lowest. */
const maySoundLowest = (form: Form, f: number, tone: ToneDemand): boolean =>
  form.own === undefined
    ? f === form.frets[lowestPlayed(form.frets)]
    : tone.degree.number === form.own.bass.number;

/** Whether a tone may lie lowest: the symbol's bass, or what a player's own form has there. */
function isBass({ form, demands }: Frame, tone: ToneDemand): boolean {
  const own = demands.bass === 0 ? form.own : undefined;
  return own === undefined ? tone.offset === demands.bass : tone.degree.number === own.bass.number;
}

function choicesFor(frame: Frame, index: number): readonly Choice[] {
  const { form, demands, heights, rootString } = frame;
  const outside = form.frets[index] === null;
  const choices: Choice[] = [restChoice(frame, index)];
  if (outside && (demands.bass === 0 || index < rootString)) return choices;
  for (let f = frame.lowest; f <= HIGHEST; f++) {
    const tone = toneAt(demands, (heights[index] ?? 0) + f);
    if (tone === undefined) continue;
    if (index === rootString && demands.bass === 0 && !maySoundLowest(form, f, tone)) continue;
    const lowered = f < 0 && form.own === undefined;
    if ((outside || lowered) && tone.offset !== demands.bass) continue;
    choices.push({
      fret: f,
      tone,
      bit: 1 << demands.tones.indexOf(tone),
      cost: moveCost(frame, index, f),
    });
  }
  return choices.sort((a, b) => a.cost - b.cost);
}

/** A form without a root of its own need not hold one. */
function requiredBits({ form, demands }: Frame): number {
  const waived = (tone: ToneDemand): boolean =>
    form.own?.rootless === true && tone.degree.number === 1;
  return demands.tones.reduce(
    (all, tone, i) => (tone.required && !waived(tone) ? all | (1 << i) : all),
    0,
  );
}

/** Everything about a search that does not change while it runs. */
function prepare(frame: Frame): Search {
  const choices = frame.form.frets.map((_, i) => choicesFor(frame, i));
  const bits = choices.map((own) => own.reduce((all, choice) => all | choice.bit, 0));
  let within = 0;
  return {
    ...frame,
    choices,
    required: requiredBits(frame),
    within: bits.map((own) => {
      within |= own;
      return within;
    }),
  };
}

function soundsOf(search: Search, picked: readonly Choice[]): readonly Sound[] {
  const sounds: Sound[] = [];
  for (const [i, choice] of picked.entries()) {
    if (choice.fret === null || choice.tone === undefined) continue;
    sounds.push({ height: (search.heights[i] ?? 0) + choice.fret, degree: choice.tone.degree });
  }
  return sounds.sort((a, b) => a.height - b.height);
}

const absentTones = (demands: Demands, held: number): readonly ToneDemand[] =>
  demands.tones.filter((_, i) => (held & (1 << i)) === 0);

/** A complete choice of strings that holds all it must, so far without fingers. */
interface Draft {
  readonly picked: readonly Choice[];
  readonly held: number;
  readonly base: number;
}

/** Prices a draft; undefined when it cannot be held, is not the chord, or costs `most` or more. */
function shapeOf(search: Search, draft: Draft, most: number): Shape | undefined {
  const { form, demands, heights, open } = search;
  const frets = draft.picked.map((choice) => choice.fret);
  const absent = absentTones(demands, draft.held);
  const width = widthCost(frets, open, search.widest);
  if (width === undefined || (search.bassNear && bassAstray(frets, open))) return undefined;
  const left = absent.reduce((sum, tone) => sum + tone.absence, 0);
  const rests =
    restSurcharge(form, frets) +
    outerRootGivenUp(form, heights, frets) +
    thinness(frets, demands.tones.length);
  const known = draft.base + left + width + rests;
  if (known >= most) return undefined;
  const sounds = soundsOf(search, draft.picked);
  const fingering = fingeringOf(frets, open ? 0 : NOTHING_OPEN);
  const lowest = toneAt(demands, sounds[0]?.height ?? 0);
  if (fingering === undefined || lowest === undefined || !isBass(search, lowest)) return undefined;
  return {
    frets,
    degrees: draft.picked.map((choice) => choice.tone?.degree),
    fingering,
    missing: absent.map((tone) => tone.degree),
    cost: known + fingerCost(fingering, frets) + soundCost(sounds),
  };
}

/**
 * Depth-first over the strings, thickest first, dropping whatever already costs more than the best
 * or can no longer bring every indispensable tone.
 */
function cheapest(search: Search): Shape | undefined {
  let best: Shape | undefined;
  let most = Number.POSITIVE_INFINITY;
  const picked: Choice[] = search.choices.map(() => ({ fret: null, bit: 0, cost: 0 }));
  const visit = (index: number, base: number, held: number): void => {
    const reachable = held | (search.within[index] ?? 0);
    if (base >= most || (reachable & search.required) !== search.required) return;
    if (index < 0) {
      const shape = shapeOf(search, { picked, held, base }, most);
      if (shape === undefined || shape.cost >= most) return;
      best = shape;
      most = shape.cost;
      return;
    }
    for (const choice of search.choices[index] ?? []) {
      picked[index] = choice;
      visit(index - 1, base + choice.cost, held | choice.bit);
    }
  };
  visit(search.choices.length - 1, 0, 0);
  return best;
}

interface Setting {
  readonly form: Form;
  readonly demands: Demands;
  readonly midis: readonly number[];
  readonly widest: number;
}

function findShape(
  setting: Setting,
  open: boolean,
  lowest: number,
  bassNear = false,
): Shape | undefined {
  const heights = heightsAboveRoot(setting.form, setting.midis);
  const rootString = lowestPlayed(setting.form.frets);
  return cheapest(prepare({ ...setting, heights, open, rootString, lowest, bassNear }));
}

/** An open shape held up the neck, where the strings that were open need a finger. */
function keptShape({ widest }: Setting, open: Shape): Shape | undefined {
  const { frets, fingering: before } = open;
  const fingering = fingeringOf(frets, NOTHING_OPEN);
  const width = widthCost(frets, false, widest);
  if (fingering === undefined || width === undefined) return undefined;
  const held = fingerCost(fingering, frets) + width;
  const wasHeld = fingerCost(before, frets) + (widthCost(frets, true, widest) ?? 0);
  return { ...open, fingering, cost: open.cost - wasHeld + held };
}

/** A form keeps its open shape up the neck unless another one is much better to hold there. */
function wholeShape(setting: Setting, open: Shape | undefined): Shape | undefined {
  const sought = findShape(setting, false, setting.form.own === undefined ? 0 : LOWEST_OF_OWN);
  if (open === undefined || setting.form.own !== undefined) return sought;
  const kept = keptShape(setting, open);
  const much = (sought?.cost ?? 0) + COST.openShapeGivenUp;
  return kept !== undefined && kept.cost <= much ? kept : sought;
}

/** Whether a grip with its bass near is worth one string less than the grip that reaches for it. */
const isWorth = (near: Shape, far: Shape): boolean =>
  near.cost <= far.cost + (isInHand(near.frets) ? COST.restAtEdge : 0);

/**
 * A bass that the symbol names rather lies with the other tones than a stretch away from them, even
 * if that leaves the lowest string silent (common practice).
 */
function movedShape(setting: Setting, open: Shape | undefined): Shape | undefined {
  const shape = wholeShape(setting, open);
  const { form, demands } = setting;
  if (demands.bass === 0 || form.own !== undefined) return shape;
  if (shape !== undefined && !bassAstray(shape.frets, false)) return shape;
  const near = findShape(setting, false, BEHIND, true);
  return near && (shape === undefined || isWorth(near, shape)) ? near : shape;
}

interface ShapePair {
  readonly open: Shape | undefined;
  readonly moved: Shape | undefined;
}

const cache = new WeakMap<Form, Map<string, ShapePair>>();
const MOST_CACHED = 2000;

function shapePair(form: Form, demands: Demands, on: Instrument, widest: number): ShapePair {
  const pairs = cache.get(form) ?? new Map<string, ShapePair>();
  cache.set(form, pairs);
  const key = demands.key + widest;
  const known = pairs.get(key);
  if (known !== undefined) return known;
  const setting = { form, demands, midis: openMidis(on), widest };
  const open = findShape(setting, true, 0);
  const pair = { open, moved: movedShape(setting, open) };
  if (pairs.size >= MOST_CACHED) pairs.clear();
  pairs.set(key, pair);
  return pair;
}

/**
 * The grip of a chord in a form that moves as few tones as possible as little as possible, in
 * frets above the anchor. `open`: the form lies at the nut or the capo, where its open strings need
 * no finger. `widest`: frets between the lowest and the highest held. Undefined when four fingers
 * cannot hold the chord in this form.
 */
export function shapeIn(
  form: Form,
  demands: Demands,
  instrument: Instrument,
  open: boolean,
  widest = WIDEST,
): Shape | undefined {
  const pair = shapePair(form, demands, instrument, widest);
  return open ? pair.open : pair.moved;
}
