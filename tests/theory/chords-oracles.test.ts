import teoria from 'teoria';
import { describe, expect, it } from 'vitest';
import { chordDictionary } from '#theory';
import { meaning, notes, shownTones } from './short.ts';

/** The spelled notes that teoria 2.5 gives a symbol, sorted. */
const byTeoria = (symbol: string): string =>
  teoria
    .chord(symbol)
    .notes()
    .map((note) => note.name().toUpperCase() + (note.accidental()?.replace('x', '##') ?? '?'))
    .sort()
    .join(' ');

const byUs = (symbol: string): string => notes(symbol).split(' ').sort().join(' ');

const ROOTS = 'C C# Db D D# Eb E E# Fb F F# Gb G G# Ab A A# Bb B B# Cb'.split(' ');

const SHARED_QUALITIES = [
  ...' m dim aug + o 5 sus2 sus4 6 m6 6/9 7 m7 mi7 -7 maj7 M7 mM7 m7b5 ø dim7 o7 +7 7b5 7#5'.split(
    ' ',
  ),
  ...'9 m9 maj9 11 m11 13 m13 maj13 7sus4 9sus4 7b9 7#9 9#11 13#11 13b9 maj7#5 add9'.split(' '),
];

/** Where teoria reads otherwise, and why it is not followed. */
const TEORIA_DIFFERS: readonly (readonly [symbol: string, teoria: string, ours: string])[] = [
  // It stacks every third below an altered tension. MusicXML 4.0 adds the one degree that is named.
  ['C7#11', 'Bb C D E F# G', 'Bb C E F# G'],
  ['Cmaj7#11', 'B C D E F# G', 'B C E F# G'],
  ['C7b13', 'Ab Bb C D E F G', 'Ab Bb C E G'],
];

describe('Against teoria 2.5, letter by letter', () => {
  it.each(SHARED_QUALITIES)('the quality %j is the same on every root', (quality) => {
    for (const root of ROOTS) {
      const [ours, theirs] = [byUs(root + quality), byTeoria(root + quality)];
      // It has no name for a note with three accidentals.
      if (theirs.includes('?')) expect(ours).toMatch(/###|bbb/);
      else expect(ours).toBe(theirs);
    }
  });

  it.each(TEORIA_DIFFERS)('%s is another chord there', (symbol, theirs, ours) => {
    expect(byTeoria(symbol)).toBe(theirs);
    expect(byUs(symbol)).toBe(ours);
  });
});

const ELEVENTH = 'MusicXML 4.0: a thirteenth holds the eleventh, an eleventh the third';
const FIFTH =
  'a tension does not push out the fifth (MusicXML 4.0 adds and alters degree by degree)';
const FLAT_FIVE = 'what is written b5 alters the fifth and is no ♯11';
const SHARP_FIVE = 'what is written #5 is spelled as a fifth';
const LITERAL = 'the number that is written is the number that is meant';

/** Every alias of tonal 6.4.3 that means something else here, and why. */
const TONAL_DIFFERS: Readonly<Record<string, readonly [ours: string, reason: string]>> = {
  '11': ['R 3 5 b7 9 11', ELEVENTH],
  '13': ['R 3 5 b7 9 11 13', ELEVENTH],
  m13: ['R b3 5 b7 9 11 13', ELEVENTH],
  '-13': ['R b3 5 b7 9 11 13', ELEVENTH],
  maj13: ['R 3 5 7 9 11 13', ELEVENTH],
  Maj13: ['R 3 5 7 9 11 13', ELEVENTH],
  '^13': ['R 3 5 7 9 11 13', ELEVENTH],
  '13no5': ['R 3 b7 9 11 13', ELEVENTH],
  '13b9': ['R 3 5 b7 b9 11 13', ELEVENTH],
  '13#9': ['R 3 5 b7 #9 11 13', ELEVENTH],
  '11b9': ['R 3 5 b7 b9 11', ELEVENTH],
  '13b5': ['R 3 b5 b7 9 11 13', ELEVENTH],
  '7b13': ['R 3 5 b7 b13', FIFTH],
  '9b13': ['R 3 5 b7 9 b13', FIFTH],
  M7b6: ['R 3 5 b6 7', FIFTH],
  '^7b6': ['R 3 5 b6 7', FIFTH],
  mb6M7: ['R b3 5 b6 7', FIFTH],
  mb6b9: ['R b3 5 b6 b9', FIFTH],
  M6b5: ['R 3 b5 6', FLAT_FIVE],
  '6b5': ['R 3 b5 6', FLAT_FIVE],
  '7b5b13': ['R 3 b5 b7 b13', FLAT_FIVE],
  '7b5#9': ['R 3 b5 b7 #9', FLAT_FIVE],
  '7#9b5': ['R 3 b5 b7 #9', FLAT_FIVE],
  '7b5b9': ['R 3 b5 b7 b9', FLAT_FIVE],
  '7b9b5': ['R 3 b5 b7 b9', FLAT_FIVE],
  '7b5b9b13': ['R 3 b5 b7 b9 b13', FLAT_FIVE],
  '9b5b13': ['R 3 b5 b7 9 b13', FLAT_FIVE],
  'm7#5': ['R b3 #5 b7', SHARP_FIVE],
  'm9#5': ['R b3 #5 b7 9', SHARP_FIVE],
  add13: ['R 3 5 13', LITERAL],
  'maj#4': ['R 3 5 #11', LITERAL],
  M7add13: ['R 3 5 7 13', LITERAL],
  o7M7: ['R b3 b5 bb7 7', LITERAL],
  m9b5: ['R b3 b5 b7 9', LITERAL],
  sus4add9: ['R 4 5 9', LITERAL],
  madd4: ['R b3 5 11', 'add4 is the eleventh, as tonal itself has it in m7add4'],
  '^': ['R 3 5 7', 'a triangle alone is the major seventh chord (common practice)'],
  '^#5': ['R 3 #5 7', 'a triangle alone is the major seventh chord (common practice)'],
  '4': [
    'R 4 5',
    'C4 on a lead sheet is sus4 (common practice); tonal takes it for a quartal chord',
  ],
  quartal: ['quality at 1', 'no chord symbol of lead sheets'],
  m11A: ['quality at 4', 'no chord symbol of lead sheets'],
  alt7: ['R 3 #5 b7 #9', 'one meaning for alt, that of tonal’s own 7alt'],
};

describe('Against tonal’s dictionary', () => {
  const dictionary = chordDictionary();
  const aliases = dictionary.flatMap(({ aliases: all, degrees }) =>
    all.map((alias) => ({ alias, degrees })),
  );

  it('all 106 types are looked at', () => {
    expect(dictionary).toHaveLength(106);
    const known = new Set(aliases.map(({ alias }) => alias));
    expect(Object.keys(TONAL_DIFFERS).filter((alias) => !known.has(alias))).toEqual([]);
  });

  it.each(aliases)('$alias is the same, or another for a stated reason', ({ alias, degrees }) => {
    // Straight after a root the accidental would be the root's own.
    const symbol = /^[#b]/.test(alias) ? `C(${alias})` : `C${alias}`;
    const theirs = shownTones(degrees);
    const other = TONAL_DIFFERS[alias];
    expect(meaning(symbol)).toBe(other?.[0] ?? theirs);
    expect(other?.[0]).not.toBe(theirs);
  });
});
