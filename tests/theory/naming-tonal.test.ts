/** Names of fingerings against what tonal 6.4.3 detects in those of @tombatossals/chords-db 0.5.1. */
import { ChordType, Chord as TonalChord } from 'tonal';
import { describe, expect, it } from 'vitest';
import {
  type Degree,
  degreeOfInterval,
  makeNoteName,
  type NameReading,
  nameChords,
  parseNoteName,
  pitchClass,
  pitchClassOf,
  plainName,
  semitonesOf,
} from '#theory';
import {
  type Claim,
  claim,
  claimed,
  FINGERINGS,
  type Fingering,
  kindOf,
  ours,
  PRINCIPLES,
  type Reason,
  reasonFor,
  tally,
} from './fingering-short.ts';

/**
 * Types of tonal's dictionary that are no names of ours, by the first of their aliases, with what the
 * notes are instead (common practice).
 */
const NOT_OURS: Readonly<Record<string, string>> = {
  'm#5': 'a major triad over its third',
  m11A: 'an eleventh chord over its ninth',
  'm9#5': 'a major triad with 9 and #11 over its third',
  mb6b9: 'a major triad with 11 over its third',
  mb6M7: 'a triad with both thirds over the major one',
  mMaj7b6: 'a major seventh with both thirds over the major one',
  mMaj9b6: 'the same with #11',
  o7M7: 'a 7b9 over its ninth',
  '+add#9': 'a maj7#5 over its fifth',
  'M7#5sus4': 'suspended with a sharp fifth and a major seventh, which is not in use',
  'M9#5sus4': 'the same with a ninth',
};

/**
 * Detected first by tonal, and what we put first instead, by kind: these names are the more far-fetched.
 * Those that are no names of ours have their reason above.
 */
const FAR_FETCHED: Readonly<Record<string, readonly string[]>> = {
  'm#5': [''],
  m11A: ['11'],
  mb6b9: [''],
  mb6M7: ['', 'm'],
  o7M7: ['7b9'],
  '+add#9': ['maj7#5'],
  '4': ['7sus4'], // a stack of fourths, for which chart notation has no suffix: 4 means sus4
  'm7#5': ['(add9)'], // an add9 over its third, E G C D
  '7#5sus4': ['m'], // a minor triad over a foreign bass, G B♭ D over C
  M9sus4: ['11'], // tonal leaves the third out of an eleventh, we do not (MusicXML 4.0)
};

interface Detected extends Claim {
  readonly alias: string;
}

const degrees = (intervals: readonly string[]): readonly Degree[] =>
  intervals.flatMap((interval) => degreeOfInterval(interval) ?? []);

/** Read against the notes that tonal was given: `Cb9sus` is b9sus on C where no C♭ was among them. */
function read(name: string, notes: readonly string[], of: Fingering): Detected {
  const [symbol = ''] = name.split('/');
  const tonic = notes.find(
    (note) => symbol.startsWith(note) && !ChordType.get(symbol.slice(note.length)).empty,
  );
  const root = parseNoteName(tonic ?? '');
  if (!root.ok || tonic === undefined) throw new Error(name);
  const { intervals, aliases } = ChordType.get(symbol.slice(tonic.length));
  const alias = aliases[0] ?? '';
  return { ...claim(pitchClassOf(root.value), degrees(intervals), of), alias };
}

function detected(of: Fingering): readonly Detected[] {
  const notes = of.sounds.map((sound) => makeNoteName(plainName(sound)));
  return TonalChord.detect(notes).map((name) => read(name, notes, of));
}

const isTriad = ({ tones }: Claim): boolean => ['', 'm'].includes(kindOf(tones));

const isFarFetched = (first: Claim, { alias }: Detected): boolean =>
  FAR_FETCHED[alias]?.includes(kindOf(first.tones)) ?? false;

/** Why our first name may have another root than tonal's. */
const REASONS: readonly Reason<Detected>[] = [
  ...PRINCIPLES,
  {
    reason: 'a triad whose seventh or ninth is the bass is written over it',
    holds: (first, other) => isTriad(first) && [2, 10, 11].includes(first.bass) && other.bass !== 0,
  },
  { reason: 'tonal’s name is far-fetched', holds: isFarFetched },
];

/** We name the notes from the same root, whether on it or inverted. */
const named = (names: readonly NameReading[], { root }: Claim, of: Fingering): boolean =>
  names.some(
    (name) => !name.rootless && claimed(name, of).root === root && claimed(name, of).ownBass,
  );

describe('the names that tonal detects', () => {
  const all = FINGERINGS.map((of) => ({ of, names: ours(of), theirs: detected(of) }));
  const compared = all.flatMap(({ theirs: [theirs], ...rest }) =>
    theirs === undefined ? [] : [{ ...rest, theirs }],
  );

  it('are ours for every type of its dictionary, all but these', () => {
    const unknown = ChordType.all().filter(({ intervals }) => {
      const classes = degrees(intervals).map((tone) => pitchClass(semitonesOf(tone)));
      const names = nameChords(classes, pitchClass(0));
      return !names.some(({ chord, rootless }) => !rootless && pitchClassOf(chord.root) === 0);
    });
    const aliases = unknown.map(({ aliases: [first] }) => first);
    expect(aliases.sort()).toEqual(Object.keys(NOT_OURS).sort());
  });

  it('are all among ours on the open dataset, not only its first, but for those types', () => {
    const readings = all.flatMap(({ theirs, ...rest }) =>
      theirs.map((reading) => ({ ...rest, reading })),
    );
    const missing = readings.filter(({ names, reading, of }) => !named(names, reading, of));
    const types = new Set(missing.map(({ reading }) => reading.alias));
    expect([...types].filter((alias) => !(alias in NOT_OURS))).toEqual([]);
    expect([readings.length, missing.length]).toEqual([3507, 191]);
  });

  it('leave 229 fingerings of the dataset without a name, we only a cluster', () => {
    expect(all.length - compared.length).toBe(229);
    const unnamed = all.filter(({ names }) => names.length === 0);
    expect(unnamed.map(({ of }) => of.text)).toEqual(['Ab maj7b5 0-0-6-7-8-8']);
  });

  it('have the root of our first name, unless a reason puts another first', () => {
    const reasons = compared.flatMap(({ of, names: [name], theirs }) => {
      const first = name && claimed(name, of);
      if (first?.root === theirs.root) return [];
      const told = `${of.text}: ${name?.symbol} rather than ${theirs.root} ${theirs.alias}`;
      return [(first && reasonFor(REASONS, first, theirs)) ?? told];
    });
    expect(tally(reasons)).toEqual({
      'the lowest note is taken for the root, where no more than fifth and ninth are missing': 54,
      'two chords of the same notes, neither on its root': 64,
      'a triad whose seventh or ninth is the bass is written over it': 3,
      'tonal’s name is far-fetched': 93,
    });
    expect([compared.length, reasons.length]).toEqual([1840, 214]);
  });
});
