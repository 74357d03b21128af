/** The fingerings of the open dataset @tombatossals/chords-db 0.5.1 (guitar.json), and what names claim. */
import dataset from '@tombatossals/chords-db/lib/guitar.json';
import {
  type Chord,
  type Degree,
  makeChord,
  type NameReading,
  nameChords,
  type PitchClass,
  parseChord,
  pitchClass,
  pitchClassOf,
  semitonesOf,
} from '#theory';

export interface Fingering {
  /** The dataset's name and the frets from string 6 on, counted from the nut: `C major x-3-2-0-1-0`. */
  readonly text: string;
  readonly key: string;
  readonly suffix: string;
  /** Sounding pitch classes, the lowest first, doublings kept. */
  readonly sounds: readonly PitchClass[];
  readonly bass: PitchClass;
}

export function chord(symbol: string): Chord {
  const read = parseChord(symbol);
  if (!read.ok) throw new Error(symbol);
  return read.value;
}

function fretsText({ frets, baseFret }: { frets: readonly number[]; baseFret: number }): string {
  return frets.map((f) => (f < 0 ? 'x' : f === 0 ? 0 : f + baseFret - 1)).join('-');
}

export const FINGERINGS: readonly Fingering[] = Object.values(dataset.chords).flatMap((chords) =>
  chords.flatMap(({ key, suffix, positions }) =>
    positions.map((position) => {
      const sounds = [...position.midi].sort((a, b) => a - b).map(pitchClass);
      const text = `${key} ${suffix} ${fretsText(position)}`;
      return { text, key, suffix, sounds, bass: sounds[0] ?? pitchClass(0) };
    }),
  ),
);

export const ours = ({ sounds, bass }: Fingering): readonly NameReading[] =>
  nameChords(sounds, bass);

/** What a name says of the notes that sound. */
export interface Claim {
  readonly root: PitchClass;
  /** All that the plain name means, whether it sounds or not. */
  readonly tones: readonly Degree[];
  readonly silent: readonly Degree[];
  /** Semitones of the lowest note above the root. */
  readonly bass: PitchClass;
  /** The lowest note is a tone of the chord. */
  readonly ownBass: boolean;
}

export function claim(root: PitchClass, tones: readonly Degree[], of: Fingering): Claim {
  const bass = pitchClass(of.bass - root);
  const sounding = new Set(of.sounds.map((sound) => pitchClass(sound - root)));
  const offset = (tone: Degree) => pitchClass(semitonesOf(tone));
  return {
    root,
    tones,
    silent: tones.filter((tone) => !sounding.has(offset(tone))),
    bass,
    ownBass: tones.some((tone) => offset(tone) === bass),
  };
}

/** What is claimed by one of our names. */
export function claimed({ symbol }: NameReading, of: Fingering): Claim {
  const { root, tones } = chord(symbol);
  return claim(pitchClassOf(root), tones, of);
}

/** The canonical name of a quality, as a chord on C without the C: `m7`, `` for a major triad. */
export const kindOf = (tones: readonly Degree[]): string =>
  makeChord({ root: { letter: 'C', alter: 0 }, tones }).slice(1);

export const rootless = ({ silent }: Claim): boolean => silent.some(({ number }) => number === 1);

/** Nothing is silent but perhaps the plain fifth and ninth. */
const nearlyWhole = ({ silent }: Claim): boolean =>
  silent.every(({ number, alter }) => (number === 5 || number === 9) && alter === 0);

/** Why one name may stand before another for the same notes. */
export interface Reason<Other extends Claim = Claim> {
  readonly reason: string;
  readonly holds: (first: Claim, other: Other) => boolean;
}

/** The text of the first reason that holds. */
export const reasonFor = <Other extends Claim>(
  reasons: readonly Reason<Other>[],
  first: Claim,
  other: Other,
): string | undefined => reasons.find(({ holds }) => holds(first, other))?.reason;

/** How often each text occurs, in order of first occurrence. */
export function tally(texts: readonly string[]): Readonly<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const text of texts) counts[text] = (counts[text] ?? 0) + 1;
  return counts;
}

/**
 * Pairs of chords that consist of the same notes. Where neither has its root in the bass nothing in the
 * notes says which is meant (common practice).
 */
export const SAME_NOTES: readonly (readonly [string, string])[] = [
  ['sus4', 'sus2'],
  ['m7', '6'],
  ['m6', 'm7b5'],
  ['aug', 'aug'],
  ['dim7', 'dim7'],
  ['7b5', '7b5'],
  ['9#5', '9b5'],
  ['69', '9sus4'],
  ['69', 'm7(add11)'],
  ['69', '11(no3)'],
  ['m69', '7sus4b9'],
  ['dim(maj7)', '(addb9)'],
];

const sameNotes = (a: Claim, b: Claim): boolean => {
  const kinds = [kindOf(a.tones), kindOf(b.tones)];
  return SAME_NOTES.some(
    (pair) =>
      kinds.every((kind, i) => kind === pair[i]) || kinds.every((kind, i) => kind === pair[1 - i]),
  );
};

/** Principles of naming (common practice), the weightier first. */
export const PRINCIPLES: readonly Reason[] = [
  {
    reason: 'a name whose root sounds comes before one whose root does not',
    holds: (first, other) => !rootless(first) && rootless(other),
  },
  {
    reason: 'the lowest note is taken for the root, where no more than fifth and ninth are missing',
    holds: (first, other) => first.bass === 0 && other.bass !== 0 && nearlyWhole(first),
  },
  {
    reason: 'a chord that is all there comes before one with tones left out',
    holds: (first, other) => first.silent.length === 0 && first.ownBass && other.silent.length > 0,
  },
  {
    reason: 'two chords of the same notes, neither on its root',
    holds: (first, other) => first.bass !== 0 && other.bass !== 0 && sameNotes(first, other),
  },
];
