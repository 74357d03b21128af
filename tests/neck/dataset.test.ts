/**
 * Open grips against the open dataset @tombatossals/chords-db 0.5.1 (guitar.json): of every form,
 * the open chord for six qualities, where the dataset has it.
 */
import dataset from '@tombatossals/chords-db/lib/guitar.json';
import { describe, expect, it } from 'vitest';
import { fret, midiAtPlace, stringNumber } from '#neck';
import { chordNotes, midi, pitchClass, pitchClassOf } from '#theory';
import { chord, GUITAR, gripOf, gripText } from './support.ts';

interface Entry {
  readonly frets: readonly number[];
  readonly fingers: readonly number[];
  readonly baseFret: number;
}

const FORMS = ['C', 'A', 'G', 'E', 'D'] as const;
/** Our quality and the dataset's suffix. */
const SUFFIXES = [
  ['', 'major'],
  ['m', 'minor'],
  ['7', '7'],
  ['maj7', 'maj7'],
  ['m7', 'm7'],
  ['sus4', 'sus4'],
] as const;

/** Where the dataset's open entries are other grips than the form's, and why ours stands. */
const OTHER_GRIPS: Readonly<Record<string, string>> = {
  Cm: 'the dataset has x31013, a little finger more for a doubled fifth',
  Cmaj7: 'the dataset has 332000, whose lowest tone is the fifth',
  Cm7: 'the dataset has x3134x, without the doubled root that the form keeps',
  Gm: 'the dataset has 310033, which needs all four fingers',
  Gm7: 'the dataset has no open grip',
};

/** Where the dataset holds the same grip with other fingers, and why ours stand. */
const OTHER_FINGERS: Readonly<Record<string, string>> = {
  Dmaj7: 'the dataset lays the index flat, which three fingertips need not',
  Dm7: 'the dataset puts two fingertips where the index lies flat',
  Esus4: 'the dataset takes the little finger, where A has 1, 2 and 3',
  Gmaj7: 'the dataset has the middle finger beside the ring finger on string 6, ours the index',
};

/** Entries of the dataset among these chords that hold a tone foreign to the chord. */
const WRONG_ENTRIES: readonly string[] = [];

const chords: Readonly<Record<string, readonly { suffix: string; positions: readonly Entry[] }[]>> =
  dataset.chords;

function entriesOf(root: string, suffix: string): readonly Entry[] {
  return chords[root]?.find((entry) => entry.suffix === suffix)?.positions ?? [];
}

const gripOfEntry = ({ frets, baseFret }: Entry): string =>
  frets.map((f) => (f < 0 ? 'x' : f === 0 ? '0' : String(f + baseFret - 1))).join('-');

const isOpen = (entry: Entry): boolean => entry.baseFret === 1 && entry.frets.includes(0);

/** Pitch classes a grip text sounds. */
function soundsOf(grip: string): readonly number[] {
  const classes = grip.split('-').flatMap((sign, i) => {
    if (sign === 'x') return [];
    const place = { string: stringNumber(6 - i), fret: fret(Number(sign)) };
    return [pitchClass(midiAtPlace(GUITAR, place) ?? midi(0))];
  });
  return [...new Set(classes)].sort((a, b) => a - b);
}

const foreignTones = (grip: string, symbol: string): readonly number[] => {
  const own = chordNotes(chord(symbol)).map(pitchClassOf);
  return soundsOf(grip).filter((sound) => !own.some((tone) => tone === sound));
};

describe('the open grips', () => {
  for (const form of FORMS) {
    for (const [quality, suffix] of SUFFIXES) {
      const symbol = form + quality;
      const open = entriesOf(form, suffix).filter(isOpen).map(gripOfEntry);
      const reason = OTHER_GRIPS[symbol];
      it(`of ${symbol} ${reason === undefined ? 'stand in the dataset' : `differ: ${reason}`}`, () => {
        const ours = [...gripText(symbol, form, 0)].join('-');
        expect(open.includes(ours)).toBe(reason === undefined);
        expect(foreignTones(ours, symbol)).toEqual([]);
      });
    }
  }

  for (const form of FORMS) {
    for (const [quality, suffix] of SUFFIXES) {
      const symbol = form + quality;
      const ours = gripOf(symbol, form, 0);
      const frets = [...gripText(symbol, form, 0)].join('-');
      const entries = entriesOf(form, suffix).filter((entry) => gripOfEntry(entry) === frets);
      if (entries.length === 0) continue;
      const reason = OTHER_FINGERS[symbol];
      it(`of ${symbol} ${reason === undefined ? 'are fingered as in the dataset' : `are not: ${reason}`}`, () => {
        const fingers = [6, 5, 4, 3, 2, 1].map(
          (string) => ours.tones.find((tone) => tone.string === string)?.finger ?? 0,
        );
        const theirs = entries.map((entry) => entry.fingers.join(' '));
        expect(theirs.includes(fingers.join(' '))).toBe(reason === undefined);
      });
    }
  }

  it('are compared with entries that sound their chords, all but these', () => {
    const wrong = FORMS.flatMap((form) =>
      SUFFIXES.flatMap(([quality, suffix]) =>
        entriesOf(form, suffix)
          .filter((entry) => foreignTones(gripOfEntry(entry), form + quality).length > 0)
          .map((entry) => `${form}${quality} ${gripOfEntry(entry)}`),
      ),
    );
    expect(wrong).toEqual(WRONG_ENTRIES);
  });

  it.each([
    ['C6/9', '69', 'C', 0],
    ['C7b9', '7b9', 'C', 0],
    ['C7#9', '7#9', 'C', 0],
    ['Cm9', 'm9', 'C', 0],
    ['Cm6/9', 'm69', 'C', 0],
    ['Cmaj13', 'maj13', 'G', 5],
    ['C13', '13', 'E', 8],
    ['Cmaj11', 'maj11', 'C', 0],
  ])(
    'of %s (%s there) in the %s form at %i stand in the dataset',
    (symbol, suffix, form, anchor) => {
      const there = entriesOf('C', suffix).map(gripOfEntry);
      const ours = gripText(symbol, form, anchor);
      expect(there).toContain(ours.includes('-') ? ours : [...ours].join('-'));
    },
  );
});
