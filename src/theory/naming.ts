/** What a set of sounding notes can be called. */
import { parseChord } from './chords.ts';
import { noteAt, parseDegree, semitonesOf } from './degrees.ts';
import { bitOf, type NamePattern, patternsOn } from './name-patterns.ts';
import { makeNoteName, pitchClass, plainName } from './notes.ts';
import type { Chord, NoteName, PitchClass } from './types.ts';

/** One name for a set of notes, with how far-fetched it is (0 = as plain as can be). */
export interface NameReading {
  readonly symbol: string;
  readonly chord: Chord;
  /** The root is not among the notes. */
  readonly rootless: boolean;
  readonly cost: number;
}

/**
 * What the figures bring about (common practice):
 * - an inversion comes after a whole name of about the same rank on its own root;
 * - a triad over a foreign bass comes after every usual name that is complete and on its root, anything
 *   larger than a triad after the inversions too;
 * - a triad whose ninth or seventh is the bass is written as triad and bass, F/G and D/C, before
 *   G9sus4 without its fifth and before D7/C, unless the bass sounds again higher up;
 * - what has no root comes after every usual name that is complete, inverted or not.
 */
const COST = {
  inversion: 1.2,
  foreignBass: 1.6,
  beyondTriad: 0.6,
  addedInBass: -0.5,
  noRoot: 3,
} as const;

interface Notes {
  /** One bit for each pitch class above the root in question. */
  readonly mask: number;
  /** The lowest note in semitones above the root. */
  readonly bass: number;
  readonly bassTwice: boolean;
}

interface Match {
  readonly suffix: string;
  readonly rootless: boolean;
  readonly slash: boolean;
  readonly cost: number;
}

function matchWhole({ mask, bass }: Notes): readonly Match[] {
  const slash = bass !== 0;
  const inversion = slash ? COST.inversion : 0;
  return patternsOn(mask).map(({ suffix, cost }) => {
    return { suffix, rootless: false, slash, cost: cost + inversion };
  });
}

/** Semitones above the root of a triad: ninth, minor seventh, major seventh. */
const ADDED = new Set([2, 10, 11]);

function foreignCost(suffix: string, { bass, bassTwice }: Notes): number {
  if (suffix !== '' && suffix !== 'm') return COST.foreignBass + COST.beyondTriad;
  return COST.foreignBass + (ADDED.has(bass) && !bassTwice ? COST.addedInBass : 0);
}

/** With a third in the bass nothing is suspended, and no power chord stays one. */
const contradicts = ({ hasThird }: NamePattern, bass: number): boolean =>
  !hasThird && (bass === 3 || bass === 4);

/** The chord above a bass that does not belong to it. */
function matchAbove(notes: Notes): readonly Match[] {
  if (notes.bass === 0) return [];
  return patternsOn(notes.mask & ~bitOf(notes.bass))
    .filter((pattern) => pattern.whole && !contradicts(pattern, notes.bass))
    .map(({ suffix, cost }) => {
      return { suffix, rootless: false, slash: true, cost: cost + foreignCost(suffix, notes) };
    });
}

/** The chord whose root is left to the bass player. */
const matchRootless = ({ mask }: Notes): readonly Match[] =>
  patternsOn(mask | 1)
    .filter(({ full }) => full)
    .map(({ suffix, cost }) => {
      return { suffix, rootless: true, slash: false, cost: cost + COST.noRoot };
    });

const matchesFor = (notes: Notes): readonly Match[] =>
  (notes.mask & 1) !== 0 ? [...matchWhole(notes), ...matchAbove(notes)] : matchRootless(notes);

/** Minor and diminished kinds, whose C♯ and G♯ need fewer accidentals than D♭ and A♭. */
const MINOR_LIKE = /^(?:m(?!aj)|dim)/;

/** C♯m and G♯m, but D♭ and A♭; else the simplest spelling. */
function rootName(pc: PitchClass, suffix: string): NoteName {
  if (pc !== 1 && pc !== 8) return plainName(pc);
  if (MINOR_LIKE.test(suffix)) return { letter: pc === 1 ? 'C' : 'G', alter: 1 };
  return { letter: pc === 1 ? 'D' : 'A', alter: -1 };
}

/** How a foreign bass is spelled above the root, by semitones: F/G♭ and E/G♯ rather than F/F♯ and E/A♭. */
const FOREIGN = ['R', 'b2', '2', 'b3', '3', '4', '#4', '5', 'b6', '6', 'b7', '7'].flatMap(
  (text) => {
    const degree = parseDegree(text);
    return degree.ok ? [degree.value] : [];
  },
);

/** The bass in the spelling that it has in the chord; one that is foreign to it as simple as can be. */
function bassName({ root, tones }: Chord, bass: number): NoteName {
  const own = tones.find((tone) => pitchClass(semitonesOf(tone)) === bass);
  if (own) return noteAt(root, own);
  const foreign = FOREIGN[bass];
  return foreign ? plainName(noteAt(root, foreign)) : root;
}

function readingOf(root: PitchClass, notes: Notes, match: Match): NameReading | undefined {
  const { suffix } = match;
  const plain = parseChord(makeNoteName(rootName(root, suffix)) + suffix);
  if (!plain.ok) return undefined;
  const bass = match.slash ? `/${makeNoteName(bassName(plain.value, notes.bass))}` : '';
  const symbol = makeNoteName(plain.value.root) + suffix + bass;
  const chord = parseChord(symbol);
  if (!chord.ok) return undefined;
  return { symbol, chord: chord.value, rootless: match.rootless, cost: match.cost };
}

function readingsOn(root: PitchClass, notes: Notes): readonly NameReading[] {
  return matchesFor(notes).flatMap((match) => readingOf(root, notes, match) ?? []);
}

/**
 * Every name for a set of sounding notes, best first: plain chords, inversions as slash chords,
 * chords over a foreign bass, chords without their fifth, thirteenths without their eleventh, both
 * without their ninth, and rootless ones. `classes` are the pitch classes that sound, `bass` the
 * lowest of them; where every sounding note is given, doublings too, a bass that sounds once is told
 * from one that belongs to the chord. Empty for fewer than two different notes, or where no name is
 * known.
 */
export function nameChords(
  classes: readonly PitchClass[],
  bass: PitchClass,
): readonly NameReading[] {
  if (new Set(classes).size < 2) return [];
  const bassTwice = classes.filter((sounding) => sounding === bass).length > 1;
  const readings = Array.from({ length: 12 }, (_, pc) => {
    const mask = classes.reduce((all, sounding) => all | bitOf(sounding - pc), 0);
    return readingsOn(pitchClass(pc), { mask, bass: pitchClass(bass - pc), bassTwice });
  });
  return readings.flat().sort((a, b) => a.cost - b.cost);
}
