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

/** Frets the hand's finger travels, a change of string and a stretch counting one each. */
function movementOf(from: Tone, to: Tone): number {
  const stretches = [from, to].filter((tone) => tone.reach === 'stretch').length;
  const open = [from, to].some((tone) => tone.reach === 'open');
  const frets = open ? 0 : Math.abs(from.fret - to.fret);
  return frets + (from.string === to.string ? 0 : 1) + stretches;
}

const soundAt = (tone: Tone, opens: readonly number[]): number =>
  (opens[tone.string - 1] ?? 0) + tone.fret;

function connect(from: Tone, to: Tone, semitones: number): Connection | undefined {
  const samePlace = from.string === to.string && from.fret === to.fret;
  if (Math.abs(semitones) > MOST_SEMITONES || (semitones === 0 && !samePlace)) return undefined;
  return {
    from: { string: from.string, fret: from.fret },
    to: { string: to.string, fret: to.fret },
    semitones,
    fromDegree: from.degree,
    toDegree: to.degree,
  };
}

function byFinger(now: Reading, next: Reading, opens: readonly number[]): readonly Ranked[] {
  const starts = now.tones.filter(isReachable);
  const ends = next.tones.filter(isReachable);
  const resolving = resolves(now.chord, next.chord);
  const found: Ranked[] = [];
  for (const from of starts) {
    for (const to of ends) {
      if (Math.abs(from.string - to.string) > 1) continue;
      const connection = connect(from, to, soundAt(to, opens) - soundAt(from, opens));
      if (connection === undefined) continue;
      const rank = rankOf(connection, resolving);
      found.push({ connection, rank, movement: movementOf(from, to) });
    }
  }
  return found;
}

function byBend(now: Reading, next: Reading, bends: readonly Bend[]): readonly Ranked[] {
  const resolving = resolves(now.chord, next.chord);
  return bends.flatMap((bend) => {
    const from = now.tones.find((t) => t.string === bend.string && t.fret === bend.fret);
    const arrives = bend.of === 'next' && bend.steps <= MOST_SEMITONES && bend.ease !== 'no';
    if (from === undefined || from.kind === 'colour' || !arrives) return [];
    const place = { string: bend.string, fret: bend.fret };
    const connection = {
      from: place,
      to: place,
      semitones: bend.steps,
      fromDegree: from.degree,
      toDegree: bend.degree,
      bend,
    };
    return [
      { connection, rank: rankOf(connection, resolving), movement: bend.ease === 'hard' ? 3 : 1 },
    ];
  });
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
  return [...byFinger(now, next, opens), ...byBend(now, next, bends)]
    .sort((a, b) => a.rank - b.rank || a.movement - b.movement)
    .map(({ connection }) => connection);
}
