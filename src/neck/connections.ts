import { type Chord, type Degree, pitchClass, pitchClassOf, sameDegree } from '#theory';
import type { Bend } from './bends.ts';
import type { Place, Reading, Tone } from './types.ts';

/** A way from a tone of this chord to a tone of the next. */
export interface Connection {
  readonly from: Place;
  readonly to: Place;
  /** 0 common tone, ±1 half step, ±2 whole step. */
  readonly semitones: number;
  readonly fromDegree: Degree;
  readonly toDegree: Degree;
  /** The bend that arrives there at the change, where that is the way. */
  readonly bend?: Bend;
}

interface Ranked {
  readonly connection: Connection;
  readonly rank: number;
  readonly movement: number;
}

const MOST_SEMITONES = 2;

const isReachable = (tone: Tone): boolean =>
  tone.kind !== 'colour' &&
  (tone.reach === 'hand' || tone.reach === 'stretch' || tone.reach === 'open');

const hasTone = (chord: Chord, number: number, alter: number): boolean =>
  chord.tones.some((tone) => tone.number === number && tone.alter === alter);

/** A dominant (major third, minor seventh) whose root falls a fifth or a half step to the next root. */
function resolves(now: Chord, next: Chord): boolean {
  const fall = pitchClass(pitchClassOf(now.root) - pitchClassOf(next.root));
  return (
    hasTone(now, 3, 0) &&
    (hasTone(now, 7, -1) || now.tones.length === 3) &&
    (fall === 7 || fall === 1)
  );
}

const isGuideTone = (degree: Degree): boolean => degree.number === 3 || degree.number === 7;

/**
 * Best first: where a dominant resolves, its third by a half step into the root or third (common
 * practice); a half step into the next third or seventh; a common tone that changes its degree;
 * other half steps; whole steps; a tone that merely stays.
 */
function rankOf(connection: Connection, resolving: boolean): number {
  const { semitones, fromDegree, toDegree } = connection;
  const half = Math.abs(semitones) === 1;
  const leading = fromDegree.number === 3 && (toDegree.number === 1 || toDegree.number === 3);
  if (half && resolving && leading) return 0;
  if (half && isGuideTone(toDegree)) return 1;
  if (semitones === 0 && sameDegree(fromDegree, toDegree)) return 7;
  if (semitones === 0) return isGuideTone(toDegree) ? 2 : 3;
  if (half) return 4;
  return isGuideTone(toDegree) ? 5 : 6;
}

/** What a move of a finger is worth: two a fret, so that a string's change lies between one and two. */
const MOVE = { fret: 2, string: 3, stretch: 2, bend: 2, hardBend: 6 } as const;

/** How much the hand has to move; to or from an open string the fret does not matter. */
function movementOf(from: Tone, to: Tone): number {
  const open = from.reach === 'open' || to.reach === 'open';
  const frets = open ? 0 : Math.abs(from.fret - to.fret);
  const stretches = (from.reach === 'stretch' ? 1 : 0) + (to.reach === 'stretch' ? 1 : 0);
  const strings = from.string === to.string ? 0 : 1;
  return frets * MOVE.fret + strings * MOVE.string + stretches * MOVE.stretch;
}

/** A reachable tone, its MIDI number, and its place as connections share it. */
interface End {
  readonly tone: Tone;
  readonly sound: number;
  readonly place: Place;
}

/** Reachable tones by string, string 1 at index 0. */
function endsOf(reading: Reading, opens: readonly number[]): readonly (readonly End[])[] {
  const strings = opens.map((): End[] => []);
  for (const tone of reading.tones) {
    if (!isReachable(tone)) continue;
    const { string, fret } = tone;
    const sound = (opens[string - 1] ?? 0) + fret;
    strings[string - 1]?.push({ tone, sound, place: { string, fret } });
  }
  return strings;
}

const areJoined = (from: Tone, to: Tone, semitones: number): boolean =>
  semitones === 0
    ? from.string === to.string
    : semitones <= MOST_SEMITONES && semitones >= -MOST_SEMITONES;

function joined(from: End, to: End, resolving: boolean): Ranked {
  const connection = {
    from: from.place,
    to: to.place,
    semitones: to.sound - from.sound,
    fromDegree: from.tone.degree,
    toDegree: to.tone.degree,
  };
  const rank = rankOf(connection, resolving);
  return { connection, rank, movement: movementOf(from.tone, to.tone) };
}

type Ends = ReturnType<typeof endsOf>;

function byFinger(starts: Ends, ends: Ends, resolving: boolean): Ranked[] {
  const found: Ranked[] = [];
  const join = (from: End, string: readonly End[] | undefined): void => {
    if (string === undefined) return;
    for (const to of string) {
      if (!areJoined(from.tone, to.tone, to.sound - from.sound)) continue;
      found.push(joined(from, to, resolving));
    }
  };
  for (const [index, own] of starts.entries()) {
    for (const from of own) {
      join(from, ends[index - 1]);
      join(from, ends[index]);
      join(from, ends[index + 1]);
    }
  }
  return found;
}

const arrives = ({ of, steps, ease }: Bend): boolean =>
  of === 'next' && steps <= MOST_SEMITONES && ease !== 'no';

function bent(from: End, bend: Bend, resolving: boolean): Ranked {
  const connection = {
    from: from.place,
    to: from.place,
    semitones: bend.steps,
    fromDegree: from.tone.degree,
    toDegree: bend.degree,
    bend,
  };
  const rank = rankOf(connection, resolving);
  return { connection, rank, movement: bend.ease === 'hard' ? MOVE.hardBend : MOVE.bend };
}

function byBend(starts: Ends, bends: readonly Bend[], resolving: boolean): readonly Ranked[] {
  const found: Ranked[] = [];
  for (const bend of bends) {
    if (!arrives(bend)) continue;
    for (const from of starts[bend.string - 1] ?? []) {
      if (from.place.fret === bend.fret) found.push(bent(from, bend, resolving));
    }
  }
  return found;
}

/** Room for any movement and any number of connections in one number that sorts by all three. */
const MOVEMENTS = 64;
const MOST = 4096;

/** Sorted as numbers, which is many times as fast as by comparing. */
function bestFirst(found: readonly Ranked[]): readonly Connection[] {
  const order = new Int32Array(found.length);
  for (let i = 0; i < found.length; i++) {
    const ranked = found[i];
    if (ranked) order[i] = (ranked.rank * MOVEMENTS + ranked.movement) * MOST + i;
  }
  order.sort();
  const best: Connection[] = [];
  for (const key of order) {
    const ranked = found[key % MOST];
    if (ranked) best.push(ranked.connection);
  }
  return best;
}

/**
 * What leads from one chord to the next without leaving the hand: from every reachable tone to
 * reachable tones within a whole step on the same or a neighbouring string, and the bends that
 * arrive at the change. Best first; among equals the one with less movement. `opens`: MIDI numbers
 * of the open strings, string 1 first.
 */
export function connectionsBetween(
  now: Reading,
  next: Reading,
  bends: readonly Bend[],
  opens: readonly number[],
): readonly Connection[] {
  const starts = endsOf(now, opens);
  const resolving = resolves(now.chord, next.chord);
  const fingered = byFinger(starts, endsOf(next, opens), resolving);
  return bestFirst(fingered.concat(byBend(starts, bends, resolving)));
}
