/** A bass part from chords alone. */
import type { PlayedSlot } from '#line';
import { type Chord, type NoteName, noteAt, pitchClassOf, ticks } from '#theory';
import { BASS_TONES } from './bass-tones.ts';
import type { Stroke } from './groups.ts';
import type { NoteEvent } from './performance.ts';

/** Its lowest note, E1. */
const LOWEST = 28;
const FORCE = 0.75;

/** What stands at a stroke: its chord, and the one that follows. */
interface Under {
  readonly chord: Chord;
  readonly next: Chord | undefined;
}

const bassOf = (chord: Chord): NoteName => chord.bass ?? chord.root;

/** In the octave above the lowest note. */
const low = (name: NoteName): number => LOWEST + ((pitchClassOf(name) - (LOWEST % 12) + 12) % 12);

/** The chord's own third or fifth, however altered; its bass where it has none, and under a slash. */
function toneOf(chord: Chord, number: number): number {
  const root = low(bassOf(chord));
  const degree = chord.tones.find((tone) => tone.number === number);
  if (degree === undefined || chord.bass !== undefined) return root;
  const tone = low(noteAt(chord.root, degree));
  return tone < root ? tone + 12 : tone;
}

/** A half step below the next bass note, or above it where that is nearer to the hand. */
function approach({ chord, next }: Under): number {
  if (next === undefined) return toneOf(chord, 5);
  const target = low(bassOf(next));
  if (target === low(bassOf(chord))) return toneOf(chord, 5);
  return target - 1 < LOWEST ? target + 1 : target - 1;
}

function pitchOf(sign: string, under: Under): number {
  const root = low(bassOf(under.chord));
  switch (sign) {
    case '3':
      return toneOf(under.chord, 3);
    case '5':
      return toneOf(under.chord, 5);
    case '8':
      return root + 12;
    case 'a':
      return approach(under);
    default:
      return root;
  }
}

/** The string on which it lies lowest on the neck. */
function stringFor(midi: number): number {
  const index = BASS_TONES.findIndex(({ open }) => open <= midi);
  return (index === -1 ? BASS_TONES.length - 1 : index) + 1;
}

interface Placed {
  readonly at: number;
  readonly sign: string;
  readonly slot: number;
}

/** The strokes that fall into a slot; its beginning always has the bass note. */
function strokesIn(slot: PlayedSlot, index: number, strokes: readonly Stroke[]): readonly Placed[] {
  const end = slot.start + slot.length;
  const within = strokes.filter(({ at }) => at > slot.start && at < end);
  const first = slot.held ? (strokes.find(({ at }) => at === slot.start)?.sign ?? '') : 'R';
  const begins = first === '' ? [] : [{ at: slot.start as number, sign: first }];
  return [...begins, ...within].map(({ at, sign }) => ({ at, sign, slot: index }));
}

const chordOf = (slot: PlayedSlot | undefined): Chord | undefined =>
  slot?.harmony.kind === 'chord' ? slot.harmony.chord : undefined;

/** Every note lasts until the next, or until the chart ends. */
function noteOf(
  one: Placed,
  next: Placed | undefined,
  slots: readonly PlayedSlot[],
): readonly NoteEvent[] {
  const slot = slots[one.slot];
  const chord = chordOf(slot);
  if (slot === undefined || chord === undefined) return [];
  const until = next?.at ?? slot.start + slot.length;
  const midi = pitchOf(one.sign, { chord, next: chordOf(slots[one.slot + 1]) });
  return [
    {
      kind: 'note',
      start: ticks(one.at),
      length: ticks(Math.max(1, until - one.at)),
      string: stringFor(midi),
      midi,
      force: one.sign === 'R' ? FORCE : 0.85 * FORCE,
      attack: 'pick',
    },
  ];
}

/**
 * The bass of a whole chart: the strokes of the feel (bar by bar, as played), and the bass note
 * wherever a chord begins.
 */
export function bassEvents(
  slots: readonly PlayedSlot[],
  strokes: readonly (readonly Stroke[])[],
): readonly NoteEvent[] {
  const placed = slots.flatMap((slot, i) => strokesIn(slot, i, strokes[slot.bar] ?? []));
  return placed.flatMap((one, i) => noteOf(one, placed[i + 1], slots));
}
