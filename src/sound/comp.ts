/** Strummed accompaniment. */
import type { PlayedSlot } from '#line';
import { type Instrument, midiAtPlace, type Place } from '#neck';
import { type Chord, ticks } from '#theory';
import type { Stroke } from './groups.ts';
import type { NoteEvent } from './performance.ts';

/** Which places are held for a written slot (its index in `slotsOf`) and its chord. */
export type Holding = (index: number, chord: Chord) => readonly Place[];

/** How a stroke passes the strings. */
interface Manner {
  readonly down: boolean;
  readonly force: number;
  readonly dead: boolean;
  /** An up-stroke meets only the thinner strings. */
  readonly most: number;
}

const MANNERS: Readonly<Record<string, Manner>> = {
  D: { down: true, force: 0.72, dead: false, most: 8 },
  d: { down: true, force: 0.56, dead: false, most: 8 },
  u: { down: false, force: 0.46, dead: false, most: 4 },
  m: { down: true, force: 0.4, dead: true, most: 5 },
};

interface Placed {
  readonly at: number;
  readonly sign: string;
  readonly slot: number;
}

/** A chord is struck where it begins, whatever the row says; otherwise the row goes on. */
function strokesIn(slot: PlayedSlot, index: number, strokes: readonly Stroke[]): readonly Placed[] {
  const end = slot.start + slot.length;
  const found = strokes.filter(({ at }) => at >= slot.start && at < end);
  const begins = found[0]?.at === slot.start || slot.held;
  const all = begins ? found : [{ at: slot.start as number, sign: 'D' }, ...found];
  return all.map(({ at, sign }) => ({ at, sign, slot: index }));
}

/** In the order in which the pick meets them. */
function inOrder(places: readonly Place[], { down, most }: Manner): readonly Place[] {
  const fromThin = [...places].sort((a, b) => a.string - b.string).slice(0, most);
  return down ? fromThin.reverse() : fromThin;
}

/** No two strokes of a hand are quite alike; the same bar of the same chart always is. */
const unevenness = (at: number, i: number): number => 1 + 0.05 * Math.sin(at * 0.37 + i * 1.9);

interface Strum {
  readonly at: number;
  readonly length: number;
  readonly manner: Manner;
  readonly places: readonly Place[];
  readonly spread: number;
}

function strumEvents(strum: Strum, instrument: Instrument): readonly NoteEvent[] {
  const { at, length, manner, spread } = strum;
  return inOrder(strum.places, manner).flatMap((place, i) => {
    const midi = midiAtPlace(instrument, place);
    if (midi === undefined) return [];
    return [
      {
        kind: 'note' as const,
        start: ticks(at),
        length: ticks(length),
        string: place.string,
        midi,
        force: manner.force * unevenness(at, i),
        attack: 'pick' as const,
        late: i * spread * (manner.down ? 1 : 0.7),
        ...(manner.dead ? { dead: true } : {}),
      },
    ];
  });
}

const chordOf = (slot: PlayedSlot | undefined): Chord | undefined =>
  slot?.harmony.kind === 'chord' ? slot.harmony.chord : undefined;

/** What a comp needs besides its chords. */
export interface CompQuery {
  readonly instrument: Instrument;
  readonly holding: Holding;
  /** Seconds from string to string. */
  readonly spread: number;
}

/**
 * The comp of a whole chart: the strokes of the feel (bar by bar, as played) on what is held, each
 * lasting until the next. Silent where no chord stands.
 */
export function compEvents(
  slots: readonly PlayedSlot[],
  strokes: readonly (readonly Stroke[])[],
  { instrument, holding, spread }: CompQuery,
): readonly NoteEvent[] {
  const placed = slots.flatMap((slot, i) => strokesIn(slot, i, strokes[slot.bar] ?? []));
  return placed.flatMap((one, i) => {
    const slot = slots[one.slot];
    const chord = chordOf(slot);
    const manner = MANNERS[one.sign];
    if (slot === undefined || chord === undefined || manner === undefined) return [];
    const until = placed[i + 1]?.at ?? slot.start + slot.length;
    const length = Math.max(1, until - one.at);
    const places = holding(slot.index, chord);
    return strumEvents({ at: one.at, length, manner, places, spread }, instrument);
  });
}
