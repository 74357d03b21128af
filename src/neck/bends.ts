import {
  type Chord,
  type Degree,
  frequencyOf,
  midi,
  midiOf,
  noteAt,
  type Pitch,
  pitchAt,
  pitchClass,
  pitchClassOf,
  plainName,
  semitonesOf,
} from '#theory';
import { demandsOf } from './demands.ts';
import { fret, millimetres, stringNumber } from './places.ts';
import { distanceTo, HAND_FRETS } from './reach.ts';
import { type BendModel, type BendWork, bendWork, mechanicsOf } from './string-model.ts';
import type { Instrument, Millimetres, Place } from './types.ts';

export const EASES = ['comfortable', 'hard', 'no'] as const;
/** `no` = not practical. */
export type Ease = (typeof EASES)[number];

/**
 * What a player calls comfortable and what hard. Force in newtons as felt (see `woundFactor`),
 * travel in millimetres at the finger; whatever is beyond `hard` is not practical.
 */
export interface BendLimits {
  readonly model: BendModel;
  readonly comfortable: { readonly force: number; readonly travel: number };
  readonly hard: { readonly force: number; readonly travel: number };
  /** Windings catch on the frets: a wound string feels so many times as stiff as the model says. */
  readonly woundFactor: number;
  /** An index finger has none behind it to help. */
  readonly unsupportedFactor: number;
}

/**
 * Set so that common practice comes out: a whole step on plain strings at fret 12 comfortable; more
 * than a half step on a wound string, or at fret 1, hard.
 */
export const DEFAULT_BEND_LIMITS: BendLimits = {
  model: 'whole',
  comfortable: { force: 12.5, travel: 21 },
  hard: { force: 30, travel: 32 },
  woundFactor: 2,
  unsupportedFactor: 2,
};

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

interface Target {
  readonly degree: Degree;
  readonly of: Bend['of'];
  readonly chord: Chord;
}

/** Every tone worth bending to, by pitch class; the chord now sounding first. */
function targetsOf(query: BendQuery): readonly (readonly Target[])[] {
  const targets: Target[][] = Array.from({ length: 12 }, () => []);
  const add = (chord: Chord, degree: Degree, of: Bend['of']): void => {
    targets[pitchClass(pitchClassOf(chord.root) + semitonesOf(degree))]?.push({
      degree,
      of,
      chord,
    });
  };
  for (const { degree } of demandsOf(query.chord).tones) add(query.chord, degree, 'now');
  for (const degree of query.colours) {
    const offset = pitchClass(semitonesOf(degree));
    if (demandsOf(query.chord).byOffset[offset] === undefined) add(query.chord, degree, 'now');
  }
  if (query.next === undefined) return targets;
  for (const { degree } of demandsOf(query.next).tones) add(query.next, degree, 'next');
  return targets;
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

function bendTo(
  query: BendQuery,
  place: Place,
  steps: BendSteps,
  target: Target,
): Bend | undefined {
  const string = query.instrument.strings[place.string - 1];
  const row = workOf(query.instrument, query.limits.model)[place.string - 1]?.[place.fret];
  const work = row?.[steps - 1];
  if (string === undefined || work === undefined) return undefined;
  const finger = Math.min(HAND_FRETS, place.fret - query.position) + 1;
  const exact = noteAt(target.chord.root, target.degree);
  const name = query.spelling === 'plain' ? plainName(exact) : exact;
  return {
    ...place,
    steps,
    pitch: pitchAt(name, midi(midiOf(string.pitch) + place.fret + steps)),
    degree: target.degree,
    of: target.of,
    finger,
    direction: place.string <= query.instrument.strings.length / 2 ? 'push' : 'pull',
    travel: millimetres(work.travel * 1000),
    force: work.force,
    ease: easeOf(work, query.limits, { wound: string.wound, supported: finger > 1 }),
  };
}

const EASE_RANK: Readonly<Record<Ease, number>> = { comfortable: 0, hard: 1, no: 2 };

const easierFirst = (a: Bend, b: Bend): number =>
  EASE_RANK[a.ease] - EASE_RANK[b.ease] || a.force - b.force;

function bendsOnString(
  query: BendQuery,
  index: number,
  targets: readonly (readonly Target[])[],
): readonly Bend[] {
  const string = query.instrument.strings[index];
  if (string === undefined) return [];
  const open = midiOf(string.pitch);
  const bends: Bend[] = [];
  const last = Math.min(query.position + HAND_FRETS, query.instrument.frets);
  for (let f = Math.max(query.position, query.instrument.capo + 1); f <= last; f++) {
    const place = { string: stringNumber(index + 1), fret: fret(f) };
    for (const steps of BEND_STEPS) {
      for (const target of targets[(open + f + steps) % 12] ?? []) {
        const bend = bendTo(query, place, steps, target);
        if (bend !== undefined) bends.push(bend);
      }
    }
  }
  return bends;
}

/**
 * Every bend of a half, whole or one-and-a-half step that starts under the hand and reaches a tone
 * of this chord (or a colour switched on) or of the next, easiest first.
 */
export function bendsAtHand(query: BendQuery): readonly Bend[] {
  const targets = targetsOf(query);
  return query.instrument.strings
    .flatMap((_, index) => bendsOnString(query, index, targets))
    .sort(easierFirst);
}
