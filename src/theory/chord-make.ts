/** One canonical symbol for a chord. */
import { makeHarte } from './chord-harte.ts';
import { readChord } from './chord-read.ts';
import { inOrder } from './chord-tones.ts';
import { makeDegree, sameDegree } from './degrees.ts';
import { makeNoteName } from './notes.ts';
import type { Chord, Degree } from './types.ts';

/** The names a chord may start from, the plainer first. */
const BASES = (
  ' m 7 m7 maj7 6 m6 sus4 sus2 5 dim aug dim7 m7b5 m(maj7) 9 m9 maj9 69 m69 7sus4 9sus4 7sus2 sus24 ' +
  '11 m11 maj11 13 m13 maj13 13sus4 maj7sus4 maj9sus4 m(maj9) 6sus4 maj7sus2 sus#4 susb2 dim(maj7)'
).split(' ');

interface Base {
  readonly name: string;
  readonly tones: readonly Degree[];
}

const C = 'C';

/** Read by the parser itself, once, when the first chord is named. */
let knownBases: readonly Base[] = [];

function bases(): readonly Base[] {
  if (knownBases.length > 0) return knownBases;
  knownBases = BASES.flatMap((name) => {
    const chord = readChord(C + name);
    return chord.ok ? [{ name, tones: chord.value.tones }] : [];
  });
  return knownBases;
}

const holds = (tones: readonly Degree[], degree: Degree): boolean =>
  tones.some((tone) => sameDegree(tone, degree));

/** What has to be said besides a base's name. */
interface Change {
  readonly base: Base;
  readonly altered: readonly Degree[];
  readonly added: readonly Degree[];
  readonly omitted: readonly Degree[];
  readonly cost: number;
}

const ALTERABLE = new Set([5, 9, 11, 13]);

const isAltered = (tone: Degree, base: Base): boolean => {
  const hasSeventh = base.tones.some((known) => known.number === 7);
  return tone.alter !== 0 && ALTERABLE.has(tone.number) && (hasSeventh || tone.number === 5);
};

/** A third or fifth is left out more readily than a tension that the name brought in. */
const omissionCost = (omitted: readonly Degree[]): number =>
  omitted.reduce((sum, { number }) => sum + (number <= 5 ? 1 : 1.2), 0);

function changeOf(tones: readonly Degree[], base: Base): Change {
  const extra = tones.filter((tone) => !holds(base.tones, tone));
  const altered = extra.filter((tone) => isAltered(tone, base));
  const added = extra.filter((tone) => !isAltered(tone, base));
  const replaced = (tone: Degree) => altered.some((known) => known.number === tone.number);
  const omitted = base.tones.filter((tone) => !holds(tones, tone) && !replaced(tone));
  const cost = altered.length + 1.1 * added.length + omissionCost(omitted);
  return { base, altered, added, omitted, cost };
}

/** A major seventh is added by name, since a plain 7 would be the minor one. */
const addedName = (tone: Degree): string => {
  if (tone.number !== 7) return makeDegree(tone);
  return tone.alter === 0 ? 'maj7' : makeDegree({ number: 7, alter: tone.alter });
};

function qualityOf({ base, altered, added, omitted }: Change): string {
  const alterations = altered.map((tone) => makeDegree(tone)).join('');
  // Straight after the root an accidental would belong to the root.
  const shown = base.name === '' && alterations !== '' ? `(${alterations})` : alterations;
  const additions = added.map((tone) => `(add${addedName(tone)})`).join('');
  const omissions = omitted.map((tone) => `(no${tone.number})`).join('');
  return base.name + shown + additions + omissions;
}

function means(quality: string, tones: readonly Degree[]): boolean {
  const chord = readChord(C + quality);
  return (
    chord.ok &&
    chord.value.tones.length === tones.length &&
    tones.every((tone) => holds(chord.value.tones, tone))
  );
}

const MOST_CHANGES = 4;

function nameQuality(tones: readonly Degree[]): string {
  const changes = bases()
    .map((base) => changeOf(tones, base))
    .filter(({ cost }) => cost <= MOST_CHANGES)
    .sort((a, b) => a.cost - b.cost);
  return changes.map(qualityOf).find((quality) => means(quality, tones)) ?? makeHarte(tones);
}

const REMEMBERED = 512;
const remembered = new Map<string, string>();

function qualityName(tones: readonly Degree[]): string {
  const key = tones.map((tone) => makeDegree(tone)).join(' ');
  const known = remembered.get(key);
  if (known !== undefined) return known;
  const name = nameQuality(tones);
  if (remembered.size >= REMEMBERED) remembered.clear();
  remembered.set(key, name);
  return name;
}

/**
 * The canonical ASCII symbol of a chord: `Cm7b5`, `F#13#11`, `C(b5)`, `G7(add13)(no5)`, `D69/F#`.
 * A set of tones that no such name can say is written out degree by degree, `C:(b3,4,b7)`, after
 * Harte et al., ISMIR 2005.
 *
 * Reading it gives the same chord back, for every chord that `parseChord` gives and for any tones
 * that hold the root, with numbers from 1 to 13 and up to two accidentals, if the root has at most two
 * accidentals, the bass at most four and the tones stand in order (number, then alteration).
 */
export function makeChord(chord: Chord): string {
  const bass = chord.bass ? `/${makeNoteName(chord.bass)}` : '';
  return makeNoteName(chord.root) + qualityName(inOrder(chord.tones)) + bass;
}
