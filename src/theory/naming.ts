/** What a set of sounding notes can be called. */
import { parseChord } from './chords.ts';
import { noteAt, semitonesOf } from './degrees.ts';
import { makeNoteName, pitchClass, pitchClassOf, plainName } from './notes.ts';
import type { Chord, NoteName, PitchClass } from './types.ts';

/** One name for a set of notes, with how far-fetched it is (0 = as plain as can be). */
export interface NameReading {
  readonly symbol: string;
  readonly chord: Chord;
  /** The root is not among the notes. */
  readonly rootless: boolean;
  readonly cost: number;
}

/** Qualities that notes may be named by, the more usual first. */
const QUALITIES = (
  ' m 7 m7 maj7 sus4 sus2 5 6 m6 7sus4 9 m9 maj9 add9 madd9 dim aug m7b5 dim7 69 13 7b9 7#9 m11 ' +
  '9sus4 m(maj7) 7#5 7b5 m69 13sus4 11 maj7#11 9#11 7#11 7b13 7b9b13 7#9b13 7#5b9 7#5#9 7b5b9 ' +
  'maj13 m13 13b9 13#11 9#5 9b5 maj7#5 maj7b5 maj9#11 7sus2 7b9sus4 m9b5 m(maj9) madd11 add11 ' +
  'dim(maj7) sus24 maj7sus4 maj7sus2 6sus4 m7#5 (b5)'
).split(' ');

interface Quality {
  readonly suffix: string;
  readonly mask: number;
  /** The mask without its plain fifth, where it has one beside a third and more. */
  readonly withoutFifth: number | undefined;
  /** Worth naming without its root: it has a third and a seventh or sixth. */
  readonly full: boolean;
  readonly cost: number;
}

const bitOf = (semitones: number): number => 1 << pitchClass(semitones);

function qualityOf(suffix: string, rank: number): Quality | undefined {
  const chord = parseChord(`C${suffix}`);
  if (!chord.ok) return undefined;
  const { tones } = chord.value;
  const mask = tones.reduce((all, tone) => all | bitOf(semitonesOf(tone)), 0);
  const numbers = new Set(tones.map((tone) => tone.number));
  const plainFifth = tones.some((tone) => tone.number === 5 && tone.alter === 0);
  const full = numbers.has(3) && (numbers.has(7) || numbers.has(6));
  const mayLackFifth = plainFifth && tones.length > 3 && numbers.has(3);
  return {
    suffix,
    mask,
    withoutFifth: mayLackFifth ? mask & ~bitOf(7) : undefined,
    full,
    cost: rank * 0.08,
  };
}

let knownQualities: readonly Quality[] = [];

/** Read by the parser itself, once, when the first notes are named. */
function qualities(): readonly Quality[] {
  if (knownQualities.length === 0) {
    knownQualities = QUALITIES.flatMap((suffix, rank) => qualityOf(suffix, rank) ?? []);
  }
  return knownQualities;
}

const COST = { inversion: 1.2, foreignBass: 1.6, noFifth: 0.7, noRoot: 3 } as const;

interface Notes {
  /** One bit for each pitch class above the root in question. */
  readonly mask: number;
  readonly bass: number;
}

interface Match {
  readonly quality: Quality;
  readonly rootless: boolean;
  readonly slash: boolean;
  readonly cost: number;
}

function matchWhole(quality: Quality, { mask, bass }: Notes, extra: number): readonly Match[] {
  const slash = bass !== 0;
  const inversion = slash ? COST.inversion : 0;
  const cost = quality.cost + extra + inversion;
  if (mask === quality.mask) return [{ quality, rootless: false, slash, cost }];
  if (mask === quality.withoutFifth) {
    return [{ quality, rootless: false, slash, cost: cost + COST.noFifth }];
  }
  return [];
}

/** The chord above a bass that does not belong to it. */
function matchAbove(quality: Quality, { mask, bass }: Notes): readonly Match[] {
  const bassBit = 1 << bass;
  const above = mask & ~bassBit;
  const fits = bass !== 0 && above === quality.mask && (quality.mask & bassBit) === 0;
  return fits
    ? [{ quality, rootless: false, slash: true, cost: quality.cost + COST.foreignBass }]
    : [];
}

/** The chord whose root is left to the bass player. */
function matchRootless(quality: Quality, { mask }: Notes): readonly Match[] {
  if (!quality.full) return [];
  const rooted = mask | 1;
  const lacksFifth = rooted === quality.withoutFifth;
  if (rooted !== quality.mask && !lacksFifth) return [];
  const cost = quality.cost + COST.noRoot + (lacksFifth ? COST.noFifth : 0);
  return [{ quality, rootless: true, slash: false, cost }];
}

function matchesFor(notes: Notes, quality: Quality): readonly Match[] {
  const rooted = (notes.mask & 1) !== 0;
  return rooted
    ? [...matchWhole(quality, notes, 0), ...matchAbove(quality, notes)]
    : matchRootless(quality, notes);
}

/** Qualities whose black-key roots are spelled with sharps, a flat root needing more accidentals. */
const SHARP_LIKE = /^(?:m|dim|aug)/;

/** D♭ rather than C♯ for a major kind of chord; else the simplest spelling. */
function rootName(pc: PitchClass, suffix: string): NoteName {
  const sharp = SHARP_LIKE.test(suffix) && !suffix.startsWith('maj');
  return pc === 1 && !sharp ? { letter: 'D', alter: -1 } : plainName(pc);
}

/** The bass in the spelling that it has in the chord, or its simplest if it is foreign to it. */
function bassName(chord: Chord, bass: number): NoteName {
  const target = pitchClass(pitchClassOf(chord.root) + bass);
  const names = chord.tones.map((tone) => noteAt(chord.root, tone));
  return names.find((name) => pitchClassOf(name) === target) ?? plainName(target);
}

function readingOf(root: PitchClass, notes: Notes, match: Match): NameReading | undefined {
  const { suffix } = match.quality;
  const plain = parseChord(makeNoteName(rootName(root, suffix)) + suffix);
  if (!plain.ok) return undefined;
  const bass = match.slash ? `/${makeNoteName(bassName(plain.value, notes.bass))}` : '';
  const symbol = makeNoteName(plain.value.root) + suffix + bass;
  const chord = parseChord(symbol);
  if (!chord.ok) return undefined;
  return { symbol, chord: chord.value, rootless: match.rootless, cost: match.cost };
}

/**
 * Every name for a set of sounding notes, best first: plain chords, inversions as slash chords,
 * chords over a foreign bass, chords without their fifth, and rootless ones. `classes` are the
 * pitch classes that sound, `bass` the lowest of them. Empty for fewer than two different notes, or
 * where no name is known.
 */
export function nameChords(
  classes: readonly PitchClass[],
  bass: PitchClass,
): readonly NameReading[] {
  if (new Set(classes).size < 2) return [];
  const readings: NameReading[] = [];
  for (let pc = 0; pc < 12; pc++) {
    const root = pitchClass(pc);
    const mask = classes.reduce((all, c) => all | bitOf(c - root), 0);
    const notes = { mask, bass: pitchClass(bass - root) };
    for (const quality of qualities()) {
      for (const match of matchesFor(notes, quality)) {
        const reading = readingOf(root, notes, match);
        if (reading !== undefined) readings.push(reading);
      }
    }
  }
  return readings.sort((a, b) => a.cost - b.cost);
}
