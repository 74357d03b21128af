/** What every part plays, in ticks: pitch is known, tempo and level are not. */
import type { LineNote, PlayedBar } from '#line';
import { type Instrument, midiAtPlace, stringNumber } from '#neck';
import { type Ticks, ticks } from '#theory';
import type { DrumName } from './drums.ts';
import { PARTS, type PartName, type StringNote } from './types.ts';

/** A note on a string of a part. */
export interface NoteEvent extends Omit<StringNote, 'start' | 'length'> {
  readonly kind: 'note';
  readonly start: Ticks;
  readonly length: Ticks;
  readonly string: number;
  /** Seconds after `start` (before, if negative) at which it sounds: a stroke takes its time at any tempo. */
  readonly late?: number;
}

/** A stroke on a drum. */
export interface HitEvent {
  readonly kind: 'hit';
  readonly start: Ticks;
  readonly drum: DrumName;
  readonly force: number;
  readonly late?: number;
}

export type PartEvent = NoteEvent | HitEvent;

/** What is played, part by part, each in order of time. */
export interface Performance {
  readonly bars: readonly PlayedBar[];
  readonly length: Ticks;
  readonly parts: Readonly<Record<PartName, readonly PartEvent[]>>;
}

export const NO_PARTS: Performance['parts'] = {
  line: [],
  comp: [],
  bass: [],
  drums: [],
  click: [],
  count: [],
};

/** An event and whose it is. */
export interface Owned {
  readonly part: PartName;
  readonly event: PartEvent;
}

const sortedEvents = (parts: Performance['parts']): readonly Owned[] =>
  PARTS.flatMap((part) => parts[part].map((event) => ({ part, event }))).sort(
    (a, b) => a.event.start - b.event.start,
  );

const known = new WeakMap<Performance['parts'], readonly Owned[]>();

/** All events in order of time, put in order once for each performance. */
export function eventsOf({ parts }: Performance): readonly Owned[] {
  const sorted = known.get(parts) ?? sortedEvents(parts);
  known.set(parts, sorted);
  return sorted;
}

/** The most that any event sounds before its tick, seconds. */
export const LEAD_SECONDS = 0.08;

const RAKED_STRINGS = 3;
const RAKE_SECONDS = 0.022;

/** The muted strings that are raked on the way to a note, from the lower side. */
function rakeOf(note: LineNote, instrument: Instrument): readonly NoteEvent[] {
  if (!note.rake) return [];
  const lower = Array.from({ length: RAKED_STRINGS }, (_, i) => note.string + RAKED_STRINGS - i);
  return lower.flatMap((string, i) => {
    const place = { string: stringNumber(string), fret: note.fret };
    const midi = midiAtPlace(instrument, place);
    if (midi === undefined) return [];
    return [
      {
        kind: 'note' as const,
        start: note.start,
        length: note.length,
        string,
        midi,
        force: 0.6 * note.force,
        attack: 'pick' as const,
        dead: true,
        late: -RAKE_SECONDS * (RAKED_STRINGS - i),
      },
    ];
  });
}

/** The note that follows on the same string, if it is reached by a slide from this one. */
function slideOnTo(note: LineNote, notes: readonly LineNote[]): number | undefined {
  const next = notes.find((other) => other.string === note.string && other.start > note.start);
  const joins = next?.attack === 'slide' && next.start <= note.start + note.length;
  return joins ? next.fret - note.fret : undefined;
}

/** Seconds from string to string when several notes of a line begin together. */
const LINE_SPREAD = 0.014;

function lateOf(note: LineNote, together: readonly LineNote[]): number {
  const strings = together.map(({ string }) => string).sort((a, b) => b - a);
  return Math.max(0, strings.indexOf(note.string)) * LINE_SPREAD;
}

function lineEvent(note: LineNote, notes: readonly LineNote[], midi: number): NoteEvent {
  const slideOn = slideOnTo(note, notes);
  const late = lateOf(
    note,
    notes.filter(({ start }) => start === note.start),
  );
  const { string, fret: _fret, finger: _finger, rake: _rake, ...playing } = note;
  return {
    kind: 'note',
    ...playing,
    string,
    midi,
    ...(late === 0 ? {} : { late }),
    ...(slideOn === undefined ? {} : { slideOn }),
  };
}

/** A line's notes as events: what they sound on the instrument, strums spread, rakes and slides joined. */
export function lineEvents(
  notes: readonly LineNote[],
  instrument: Instrument,
): readonly NoteEvent[] {
  const inOrder = [...notes].sort((a, b) => a.start - b.start);
  return inOrder.flatMap((note, i) => {
    const midi = midiAtPlace(instrument, note);
    if (midi === undefined) return [];
    // Notes that begin together stand together; nothing further away matters.
    const near = inOrder.slice(Math.max(0, i - NEAR), i + NEAR);
    return [...rakeOf(note, instrument), lineEvent(note, near, midi)];
  });
}

const NEAR = 12;

/** An event that is later by so many ticks. */
export const delayed = <Event extends PartEvent>(event: Event, by: number): Event => ({
  ...event,
  start: ticks(event.start + by),
});
