/** What a reading sounds like: grips and tones as notes in time. */
import { type Connection, type Grip, type Instrument, midiAtPlace, type Place } from '#neck';
import { TICKS_PER_QUARTER, type Ticks, ticks } from '#theory';
import { harmoniesOf, type Played, type PlayedSlot } from './played.ts';
import type { LineNote, StudyName } from './types.ts';

/** What is planned for a chord: the grip under the hand, and the way from it into the next chord. */
export interface Planned {
  readonly grip?: Grip;
  readonly connection?: Connection;
}

/**
 * What is planned for a written slot, by its index in `slotsOf`. `next` is the slot that is played
 * after it: at a repeat that changes from round to round.
 */
export type Plan = (index: number, next: number | undefined) => Planned | undefined;

const FORCE = 0.7;
const EIGHTH = TICKS_PER_QUARTER / 2;

const note = (place: Place, start: number, length: number, more?: Partial<LineNote>): LineNote => ({
  string: place.string,
  fret: place.fret,
  start: ticks(start),
  length: ticks(length),
  force: FORCE,
  attack: 'pick',
  ...more,
});

/** The finger that holds a tone, where one does. */
const fingered = ({ finger }: { readonly finger?: number }): Partial<LineNote> =>
  finger === undefined ? {} : { finger };

/** All tones of a grip at once, the lowest string first. */
export const strumOf = (grip: Grip, start: Ticks, length: Ticks): readonly LineNote[] =>
  [...grip.tones]
    .sort((a, b) => b.string - a.string)
    .map((tone) => note(tone, start, length, fingered(tone)));

const byPitch =
  (instrument: Instrument) =>
  (a: Place, b: Place): number =>
    (midiAtPlace(instrument, a) ?? 0) - (midiAtPlace(instrument, b) ?? 0);

/** The tones of a grip up and down again, over and over, one to `step` ticks, until `length` is filled. */
export function singlesOf(
  grip: Grip,
  instrument: Instrument,
  start: Ticks,
  length: Ticks,
  step: Ticks = ticks(EIGHTH),
): readonly LineNote[] {
  const up = [...grip.tones].sort(byPitch(instrument));
  const round = [...up, ...up.slice(1, -1).reverse()];
  const count = Math.ceil(length / step);
  return Array.from({ length: count }, (_, i) => i * step).flatMap((at, i) => {
    const tone = round[i % round.length];
    if (tone === undefined) return [];
    return [note(tone, start + at, Math.min(step, length - at), fingered(tone))];
  });
}

/** A bend begins to rise so long before the change at which it arrives. */
const BEND_TICKS = TICKS_PER_QUARTER / 4;

/** One note that is bent so that it arrives at the change. */
function bentInto(connection: Connection, change: number, before: number, after: number): LineNote {
  const length = before + after;
  const rises = Math.max(0, before - BEND_TICKS) / length;
  const bend = [
    { at: 0, semitones: 0 },
    { at: rises, semitones: 0 },
    { at: before / length, semitones: connection.semitones },
    { at: 1, semitones: connection.semitones },
  ];
  return note(connection.from, change - before, length, { bend });
}

/** On one string the finger slides on; otherwise the new string is picked. */
function attackInto({ from, to, semitones }: Connection): LineNote['attack'] {
  const slides = from.string === to.string && semitones !== 0 && from.fret > 0 && to.fret > 0;
  return slides ? 'slide' : 'pick';
}

/** A way from one chord to the next: its tone for `before` ticks up to the change, then where it leads. */
export function connectionNotes(
  connection: Connection,
  change: Ticks,
  before: Ticks,
  after: Ticks,
): readonly LineNote[] {
  if (connection.bend !== undefined) return [bentInto(connection, change, before, after)];
  return [
    note(connection.from, change - before, before),
    note(connection.to, change, after, { attack: attackInto(connection) }),
  ];
}

const LONGEST = 2 * TICKS_PER_QUARTER;

const share = (length: number): Ticks =>
  ticks(Math.max(1, Math.min(LONGEST, Math.floor(length / 2))));

/** Each connection takes the end of its chord and the beginning of the next, a half note at most. */
function connected(harmonies: readonly PlayedSlot[], plan: Plan): readonly LineNote[] {
  return harmonies.flatMap((slot, i) => {
    const next = harmonies[i + 1];
    const connection = plan(slot.index, next?.index)?.connection;
    if (next?.harmony.kind !== 'chord' || connection === undefined) return [];
    return connectionNotes(connection, next.start, share(slot.length), share(next.length));
  });
}

const overGrips = (
  harmonies: readonly PlayedSlot[],
  plan: Plan,
  make: (grip: Grip, slot: PlayedSlot) => readonly LineNote[],
): readonly LineNote[] =>
  harmonies.flatMap((slot, i) => {
    const next = harmonies[i + 1]?.index;
    const grip = slot.harmony.kind === 'chord' ? plan(slot.index, next)?.grip : undefined;
    return grip === undefined ? [] : make(grip, slot);
  });

/** The reading as notes over the whole chart as it is played. Chords without a plan stay silent. */
export function studyNotes(
  study: StudyName,
  played: Played,
  plan: Plan,
  instrument: Instrument,
): readonly LineNote[] {
  const harmonies = harmoniesOf(played);
  switch (study) {
    case 'none':
      return [];
    case 'strum':
      return overGrips(harmonies, plan, (grip, { start, length }) => strumOf(grip, start, length));
    case 'singles':
      return overGrips(harmonies, plan, (grip, { start, length }) =>
        singlesOf(grip, instrument, start, length),
      );
    case 'connect':
      return connected(harmonies, plan);
  }
}
