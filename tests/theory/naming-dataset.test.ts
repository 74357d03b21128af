/** Names of fingerings against the names that the open dataset @tombatossals/chords-db 0.5.1 gives them. */
import { describe, expect, it } from 'vitest';
import {
  type Chord,
  type Degree,
  type NameReading,
  pitchClass,
  pitchClassOf,
  sameDegree,
  semitonesOf,
} from '#theory';
import {
  type Claim,
  chord,
  claim,
  claimed,
  FINGERINGS,
  type Fingering,
  ours,
  PRINCIPLES,
  reasonFor,
  SAME_NOTES,
  tally,
} from './fingering-short.ts';

/** The dataset's names for qualities where ours are others; `alt` is a major triad with a flat fifth. */
const SUFFIXES: Readonly<Record<string, string>> = {
  major: '',
  minor: 'm',
  '7sg': '7',
  alt: '(b5)',
  aug7: '7#5',
  aug9: '9#5',
  mmaj7: 'm(maj7)',
  mmaj7b5: 'dim(maj7)',
  mmaj9: 'm(maj9)',
  mmaj11: 'm(maj11)',
};

function datasetChord({ key, suffix }: Fingering): Chord {
  const [quality = '', bass] = suffix.split('/');
  return chord(`${key}${SUFFIXES[quality] ?? quality}${bass === undefined ? '' : `/${bass}`}`);
}

const has = (tones: readonly Degree[], number: number, alter?: number): boolean =>
  tones.some((tone) => tone.number === number && (alter === undefined || tone.alter === alter));

/** Whether a grip of the chord may do without the tone and be the same chord (common practice). */
function mayBeSilent({ number, alter }: Degree, tones: readonly Degree[]): boolean {
  if (alter !== 0) return false;
  if (number === 1) return has(tones, 3) && (has(tones, 6) || has(tones, 7));
  if (number === 5) return tones.length > 3;
  if (number === 9) return has(tones, 7) && (has(tones, 11, 0) || has(tones, 13, 0));
  return number === 11 && has(tones, 13, 0);
}

/** What is wrong with an entry: what sounds is not the chord it is filed under. */
function faultOf(of: Fingering): string | undefined {
  const { root, tones, bass } = datasetChord(of);
  const names = [...tones.map((tone) => pitchClass(semitonesOf(tone) + pitchClassOf(root)))];
  const own = bass === undefined ? names : [...names, pitchClassOf(bass)];
  if (of.sounds.some((sound) => !own.includes(sound))) return 'a foreign tone';
  const { silent } = claim(pitchClassOf(root), tones, of);
  const lost = silent.find((tone) => !mayBeSilent(tone, tones));
  if (lost !== undefined) return `no ${lost.number}`;
  return bass !== undefined && of.bass !== pitchClassOf(bass) ? 'another bass' : undefined;
}

/** Entries of the dataset that do not sound the chord that they are filed under, by what is wrong. */
const WRONG_ENTRIES: Readonly<Record<string, readonly string[]>> = {
  'a foreign tone': [
    'C# aug x-4-4-4-2-2',
    'C# aug 4-4-6-4-7-4',
    'C# 7b5 x-x-12-13-13-14',
    'C# 11 x-4-3-0-0-4',
    'C# 11 x-4-5-4-6-4',
    'C# 11 9-8-9-8-8-9',
    'C# 11 9-10-9-10-9-9',
    'C# 9#11 x-3-2-0-0-3',
    'D 7#9 0-0-0-10-7-8',
    'D maj9 x-5-4-6-4-x',
    'D mmaj7 x-5-3-2-2-0',
    'D mmaj11 5-5-5-7-7-5',
    'Eb 7b5 x-6-7-6-8-6',
    'Eb 11 0-6-6-6-8-6',
    'Eb maj7b5 x-6-7-7-8-6',
    'Eb m69 11-9-10-10-9-9',
    'E madd9 x-x-3-1-1-3',
    'E madd9 x-8-6-5-8-x',
    'E madd9 x-8-6-0-6-8',
    'E madd9 x-8-10-0-9-8',
    'F /A 5-3-3-5-6-0',
    'F# alt x-9-10-11-11-9',
    'G m11 x-x-5-5-7-7',
    'G add9 x-x-3-2-1-4',
    'Ab maj7b5 0-0-6-7-8-8',
    'A dim 5-3-x-4-3-x',
    'A m/G# x-x-4-5-5-5',
    'Bb 6 x-13-11-11-10-x',
    'B aug x-14-13-12-12-0',
  ],
  'no 3': ['C 9 8-10-8-7-8-10'],
  'no 7': ['C 9 0-3-2-0-3-0'],
  // A 9#11 names its ninth; what sounds is a 7b5.
  'no 9': [
    'C 9#11 x-3-4-3-5-3',
    'C 9#11 x-x-10-11-11-12',
    'C# 9#11 x-4-5-4-6-4',
    'C# 9#11 9-10-9-10-9-9',
    'D 9#11 x-x-0-1-1-2',
    'D 9#11 x-9-0-7-9-8',
    'Eb 9#11 x-x-1-2-2-3',
    'Eb 9#11 x-6-7-6-8-x',
    'E 9#11 0-1-0-1-0-0',
    'E 9#11 0-5-0-3-5-4',
    'F 9#11 x-x-3-4-4-5',
    'F 9#11 x-8-9-8-10-8',
    'F# 9#11 x-x-4-5-5-6',
    'F# 9#11 x-9-10-9-11-9',
    'G 9#11 x-x-5-6-6-7',
    'G 9#11 x-10-11-10-12-10',
    'Ab 9#11 4-x-4-5-3-x',
    'Ab 9#11 x-x-6-7-7-8',
    'Ab 9#11 x-11-12-11-13-11',
    'A 9#11 x-0-1-0-2-0',
    'A 9#11 x-x-7-8-8-9',
    'Bb 9#11 x-x-8-9-9-10',
    'B 9#11 x-2-3-2-4-2',
    'B 9#11 7-x-7-8-6-x',
    'B 9#11 x-x-9-10-10-11',
  ],
};

const classesOf = (kind: string) =>
  chord(`C${kind}`).tones.map((tone) => pitchClass(semitonesOf(tone)));

const isTheirs = (theirs: Claim, of: Fingering) => (reading: NameReading) => {
  const said = claimed(reading, of);
  return (
    said.root === theirs.root &&
    said.tones.length === theirs.tones.length &&
    said.tones.every((tone, i) => sameDegree(tone, theirs.tones[i] ?? tone))
  );
};

interface Compared {
  readonly of: Fingering;
  readonly theirs: Claim;
  readonly names: readonly NameReading[];
  readonly at: number;
}

function compare(of: Fingering): Compared {
  const { root, tones } = datasetChord(of);
  const theirs = claim(pitchClassOf(root), tones, of);
  const names = ours(of);
  return { of, theirs, names, at: names.findIndex(isTheirs(theirs, of)) };
}

describe('the names that the open dataset gives to its fingerings', () => {
  const compared = FINGERINGS.filter((of) => faultOf(of) === undefined).map(compare);

  it('are compared for every entry that sounds its chord: all but these', () => {
    const wrong = FINGERINGS.flatMap((of) => (faultOf(of) ? [`${faultOf(of)}: ${of.text}`] : []));
    const listed = Object.entries(WRONG_ENTRIES).flatMap(([fault, entries]) =>
      entries.map((entry) => `${fault}: ${entry}`),
    );
    expect(wrong.sort()).toEqual(listed.sort());
    expect([FINGERINGS.length, compared.length]).toEqual([2069, 2013]);
  });

  it('are all among ours, with their quality and bass', () => {
    expect(compared.filter(({ at }) => at < 0).map(({ of }) => of.text)).toEqual([]);
    const otherBass = compared.filter(({ of, names, at }) => {
      const bass = names[at]?.chord.bass;
      const lowest = bass ?? names[at]?.chord.root;
      return !names[at]?.rootless && lowest !== undefined && pitchClassOf(lowest) !== of.bass;
    });
    expect(otherBass.map(({ of }) => of.text)).toEqual([]);
  });

  it('come first, unless a principle of naming puts another first', () => {
    const later = compared.filter(({ at }) => at > 0);
    const reasons = later.map(({ of, names, theirs }) => {
      const first = names[0] && claimed(names[0], of);
      return (first && reasonFor(PRINCIPLES, first, theirs)) ?? `${of.text}: ${names[0]?.symbol}`;
    });
    expect(tally(reasons)).toEqual({
      'a name whose root sounds comes before one whose root does not': 13,
      'the lowest note is taken for the root, where no more than fifth and ninth are missing': 86,
      'a chord that is all there comes before one with tones left out': 89,
      'two chords of the same notes, neither on its root': 29,
    });
    expect(compared.length - later.length).toBe(1796);
  });
});

describe('the pairs of chords that are held to be of the same notes', () => {
  it.each(SAME_NOTES)('%s and %s are', (a, b) => {
    const transposed = (n: number) => classesOf(b).map((pc) => pitchClass(pc + n));
    const same = Array.from({ length: 12 }, (_, n) => transposed(n)).filter((other) =>
      classesOf(a).every((pc) => other.includes(pc)),
    );
    expect(classesOf(a).length).toBe(classesOf(b).length);
    expect(same.length).toBeGreaterThan(a === b ? 1 : 0);
  });
});
