import {
  type Chord,
  type Degree,
  frequencyOf,
  type Midi,
  midi,
  midiOf,
  type NoteName,
  noteAt,
  type Pitch,
  pitchAt,
  pitchClass,
  pitchClassOf,
  plainName,
  semitonesOf,
} from '#theory';
import type { BendLimits, BendModel } from './bend-limits.ts';
import { demandsOf } from './demands.ts';
import { fret, millimetres, stringNumber } from './places.ts';
import { distanceTo, HAND_FRETS } from './reach.ts';
import { type BendWork, bendWork, mechanicsOf } from './string-model.ts';
import type { Instrument, Millimetres, Place, Reading, Tone } from './types.ts';

export const EASES = ['comfortable', 'hard', 'no'] as const;
/** `no` = not practical. */
export type Ease = (typeof EASES)[number];

/** Semitones a bend may span: half, whole, one and a half steps. */
export const BEND_STEPS = [1, 2, 3] as const;
export type BendSteps = (typeof BEND_STEPS)[number];

/** Raising a fretted note to a tone of the chord now sounding or of the next one. */
export interface Bend extends Place {
  readonly steps: BendSteps;
  /** What it reaches. */
  readonly pitch: Pitch;
  readonly degree: Degree;
  /** Whose chord `degree` is counted in. */
  readonly of: 'now' | 'next';
  readonly finger: number;
  /** Away from the nearer edge of the neck: thin strings are pushed up, thick ones pulled down. */
  readonly direction: 'push' | 'pull';
  readonly travel: Millimetres;
  /** Newtons at the finger, by the model alone. */
  readonly force: number;
  readonly ease: Ease;
}

export interface BendQuery {
  readonly chord: Chord;
  readonly next?: Chord;
  readonly position: number;
  readonly instrument: Instrument;
  readonly colours: readonly Degree[];
  readonly spelling: 'exact' | 'plain';
  readonly limits: BendLimits;
}

type WorkTable = readonly (readonly (readonly (BendWork | undefined)[])[])[];

function workTable(instrument: Instrument, model: BendModel): WorkTable {
  const frets = Array.from({ length: instrument.frets + 1 }, (_, f) => f);
  return instrument.strings.map(({ pitch, gauge, wound }) => {
    const metres = instrument.scale / 1000;
    const string = mechanicsOf(gauge / 1000, wound, frequencyOf(midiOf(pitch)), metres);
    return frets.map((f) => {
      const behind = distanceTo(instrument.scale, f) / 1000;
      return BEND_STEPS.map((steps) => bendWork(string, behind, steps, model));
    });
  });
}

const tables = new WeakMap<Instrument, Partial<Record<BendModel, WorkTable>>>();

/** Travel and force of every bend on an instrument, worked out once. */
function workOf(instrument: Instrument, model: BendModel): WorkTable {
  const known = tables.get(instrument) ?? {};
  const table = known[model] ?? workTable(instrument, model);
  if (known[model] === undefined) tables.set(instrument, { ...known, [model]: table });
  return table;
}

/** How hard a push is for a player with these limits. */
export function easeOf(
  work: BendWork,
  limits: BendLimits,
  how: { readonly wound: boolean; readonly supported: boolean },
): Ease {
  const feltBy =
    (how.wound ? limits.woundFactor : 1) * (how.supported ? 1 : limits.unsupportedFactor);
  const force = work.force * feltBy;
  const travel = work.travel * 1000;
  if (force <= limits.comfortable.force && travel <= limits.comfortable.travel)
    return 'comfortable';
  return force <= limits.hard.force && travel <= limits.hard.travel ? 'hard' : 'no';
}

const EASE_RANK: Readonly<Record<Ease, number>> = { comfortable: 0, hard: 1, no: 2 };

/** A bend whatever it is for, with the MIDI number that it reaches. */
interface Push extends Omit<Bend, 'pitch' | 'degree' | 'of'> {
  readonly sounding: Midi;
}

const easierFirst = (a: Omit<Push, 'sounding'>, b: Omit<Push, 'sounding'>): number =>
  EASE_RANK[a.ease] - EASE_RANK[b.ease] || a.force - b.force;

type Hand = Pick<BendQuery, 'position' | 'instrument' | 'limits'>;

function pushesAtPlace(hand: Hand, index: number, f: number): readonly Push[] {
  const { instrument, limits, position } = hand;
  const string = instrument.strings[index];
  const row = workOf(instrument, limits.model)[index]?.[f];
  if (string === undefined || row === undefined) return [];
  const finger = Math.min(HAND_FRETS, f - position) + 1;
  const how = { wound: string.wound, supported: finger > 1 };
  const place = { string: stringNumber(index + 1), fret: fret(f), finger };
  const direction = index + 1 <= instrument.strings.length / 2 ? 'push' : 'pull';
  return BEND_STEPS.flatMap((steps) => {
    const work = row[steps - 1];
    if (work === undefined) return [];
    const sounding = midi(midiOf(string.pitch) + f + steps);
    const travel = millimetres(work.travel * 1000);
    const ease = easeOf(work, limits, how);
    return [{ ...place, steps, direction, travel, force: work.force, ease, sounding }];
  });
}

function computePushes(hand: Hand): readonly Push[] {
  const { instrument, position } = hand;
  const first = Math.max(position, instrument.capo + 1);
  const last = Math.min(position + HAND_FRETS, instrument.frets);
  const frets = Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
  return instrument.strings
    .flatMap((_, index) => frets.flatMap((f) => pushesAtPlace(hand, index, f)))
    .sort(easierFirst);
}

type Bends = readonly Bend[];
type ByChord = WeakMap<Chord, Bends[]>;

/** What is remembered for an instrument under the limits last asked for; lists are by position. */
interface Known {
  readonly limits: BendLimits;
  readonly pushes: (readonly Push[])[];
  readonly bends: Readonly<Record<BendQuery['spelling'], Readonly<Record<Bend['of'], ByChord>>>>;
}

const known = new WeakMap<Instrument, Known>();

const noBends = () => ({ now: new WeakMap(), next: new WeakMap() });

function knownFor({ instrument, limits }: Hand): Known {
  const before = known.get(instrument);
  if (before?.limits === limits) return before;
  const fresh = { limits, pushes: [], bends: { exact: noBends(), plain: noBends() } };
  known.set(instrument, fresh);
  return fresh;
}

/** Every bend that starts under the hand, easiest first: what the chords have no say in. */
function pushesAt(hand: Hand, remembered: Known): readonly Push[] {
  const pushes = remembered.pushes[hand.position] ?? computePushes(hand);
  remembered.pushes[hand.position] = pushes;
  return pushes;
}

function nameOf(chord: Chord, degree: Degree, spelling: BendQuery['spelling']): NoteName {
  const name = noteAt(chord.root, degree);
  return spelling === 'plain' ? plainName(name) : name;
}

const makeBend = (push: Push, name: NoteName, degree: Degree, of: Bend['of']): Bend => ({
  string: push.string,
  fret: push.fret,
  steps: push.steps,
  pitch: pitchAt(name, push.sounding),
  degree,
  of,
  finger: push.finger,
  direction: push.direction,
  travel: push.travel,
  force: push.force,
  ease: push.ease,
});

/** The bends among `pushes` that reach one of these degrees of a chord, in their order. */
function reaching(
  pushes: readonly Push[],
  chord: Chord,
  degrees: readonly Degree[],
  of: Bend['of'],
  spelling: BendQuery['spelling'],
): Bends {
  const targets = degrees.map((degree) => ({ degree, name: nameOf(chord, degree, spelling) }));
  const byClass = targets.map(({ name }) => pitchClassOf(name));
  return pushes.flatMap((push) => {
    const target = targets[byClass.indexOf(pitchClass(push.sounding))];
    return target ? [makeBend(push, target.name, target.degree, of)] : [];
  });
}

/** The bends to the tones of a chord, found once for each position. */
function toChord(query: BendQuery, chord: Chord, of: Bend['of'], remembered: Known): Bends {
  const byChord = remembered.bends[query.spelling][of];
  const byPosition = byChord.get(chord) ?? [];
  const before = byPosition[query.position];
  if (before !== undefined) return before;
  const degrees = demandsOf(chord).tones.map((tone) => tone.degree);
  const bends = reaching(pushesAt(query, remembered), chord, degrees, of, query.spelling);
  byPosition[query.position] = bends;
  byChord.set(chord, byPosition);
  return bends;
}

function toColours(query: BendQuery, remembered: Known): Bends {
  const { chord, colours, spelling } = query;
  if (colours.length === 0) return [];
  const { byOffset } = demandsOf(chord);
  const degrees = colours.filter(
    (degree) => byOffset[pitchClass(semitonesOf(degree))] === undefined,
  );
  return reaching(pushesAt(query, remembered), chord, degrees, 'now', spelling);
}

/** Two lists in order as one; of equally easy bends those of `first` come first. */
function merged(first: Bends, second: Bends): Bends {
  if (second.length === 0) return first;
  const bends: Bend[] = [];
  let at = 0;
  for (const bend of first) {
    for (let other = second[at]; other && easierFirst(other, bend) < 0; other = second[at]) {
      bends.push(other);
      at += 1;
    }
    bends.push(bend);
  }
  return bends.concat(second.slice(at));
}

/**
 * Every bend of a half, whole or one-and-a-half step that starts under the hand and reaches a tone
 * of this chord (or a colour switched on) or of the next, easiest first.
 */
export function bendsAtHand(query: BendQuery): readonly Bend[] {
  const remembered = knownFor(query);
  const now = toChord(query, query.chord, 'now', remembered);
  const next = query.next ? toChord(query, query.next, 'next', remembered) : [];
  return merged(merged(now, toColours(query, remembered)), next);
}

/** Places by string and fret as one number; no neck has as many frets. */
const keyOf = ({ string, fret: f }: Place): number => string * 64 + f;

/**
 * A reading that marks the tones which only a bend within the limits reaches; the same reading where
 * there is none. `bends` are those of the reading's chord under the same hand.
 */
export function reachedByBends(reading: Reading, bends: readonly Bend[]): Reading {
  const reached: boolean[] = [];
  for (const bend of bends) {
    if (bend.of === 'now' && bend.ease !== 'no') reached[keyOf(bend) + bend.steps] = true;
  }
  const isReached = (tone: Tone): boolean => tone.reach === 'out' && reached[keyOf(tone)] === true;
  if (!reading.tones.some(isReached)) return reading;
  const tones = reading.tones.map(
    (tone): Tone => (isReached(tone) ? { ...tone, reach: 'bend' } : tone),
  );
  return { ...reading, tones };
}
