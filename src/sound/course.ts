/** The course of a note's pitch: bends, slides, vibrato, and where it comes from. */
import type { BendPoint } from '#line';
import type { StringNote } from './types.ts';

/** A change of pitch between two moments, in seconds from the note's beginning. */
interface Move {
  readonly from: number;
  readonly until: number;
  readonly semitones: number;
}

/** Semitones above the note's own pitch as a sum of moves, and a vibrato on top. */
export interface Course {
  /** Where it begins. */
  readonly base: number;
  readonly moves: readonly Move[];
  readonly vibrato: { readonly depth: number; readonly from: number; readonly until: number };
}

/** How long a slide takes, seconds, and the most of its note that it may take. */
const SLIDE = { seconds: 0.11, share: 0.4 } as const;
/** How long a finger takes to come down or off; a string has to be given time to change length. */
const LEGATO_SECONDS = 0.005;
const SHORTEST_MOVE = 0.003;
/** A player lets a note speak before the vibrato begins, and it dies with the note. */
const VIBRATO = { hertz: 5.2, after: 0.12, fade: 0.08 } as const;

const slideSeconds = (length: number): number => Math.min(SLIDE.seconds, SLIDE.share * length);

const move = (from: number, until: number, semitones: number): Move => ({
  from,
  until: Math.max(until, from + SHORTEST_MOVE),
  semitones,
});

function bendMoves(points: readonly BendPoint[], length: number): readonly Move[] {
  return points.slice(1).map((point, i) => {
    const before = points[i] ?? point;
    return move(before.at * length, point.at * length, point.semitones - before.semitones);
  });
}

/** Farther than any finger slides at once; what is left of the neck is not asked here. */
const slideAway = ({ slideOut, slideOn, length }: StringNote): readonly Move[] => {
  const semitones = slideOn ?? slideOut;
  return semitones === undefined ? [] : [move(length - slideSeconds(length), length, semitones)];
};

/**
 * The course of a note. `cameFrom` is the pitch (semitones above the note's own) at which its string
 * still sounds, where the note goes on from there without being picked.
 */
export function courseOf(note: StringNote, cameFrom = 0): Course {
  const { length, slideIn = 0, bend = [], vibrato = 0 } = note;
  const legato = cameFrom === 0 ? [] : [move(0, LEGATO_SECONDS, -cameFrom)];
  const into = slideIn === 0 ? [] : [move(0, slideSeconds(length), -slideIn)];
  return {
    base: cameFrom + slideIn + (bend[0]?.semitones ?? 0),
    moves: [...legato, ...into, ...bendMoves(bend, length), ...slideAway(note)],
    vibrato: { depth: vibrato, from: Math.min(VIBRATO.after, length / 4), until: length },
  };
}

/** Slow at both ends, as a finger is. */
const eased = (share: number): number => share * share * (3 - 2 * share);

const shareOf = (from: number, until: number, seconds: number): number =>
  Math.min(1, Math.max(0, (seconds - from) / (until - from)));

function vibratoAt({ depth, from, until }: Course['vibrato'], seconds: number): number {
  if (depth === 0 || seconds <= from || seconds >= until) return 0;
  const near = Math.min(1, (seconds - from) / VIBRATO.fade, (until - seconds) / VIBRATO.fade);
  const turn = 2 * Math.PI * VIBRATO.hertz * (seconds - from);
  return depth * near * (0.5 - 0.5 * Math.cos(turn));
}

/** Semitones above the note's own pitch, so many seconds after it began. */
export function semitonesAt(course: Course, seconds: number): number {
  let sum = course.base + vibratoAt(course.vibrato, seconds);
  for (const { from, until, semitones } of course.moves)
    sum += semitones * eased(shareOf(from, until, seconds));
  return sum;
}

/** Whether the pitch moves at any time between two moments. */
export function movesBetween(course: Course, from: number, until: number): boolean {
  const { depth, from: start, until: end } = course.vibrato;
  if (depth !== 0 && until > start && from < end) return true;
  return course.moves.some((one) => until > one.from && from < one.until);
}
