/** What the music comes to next, and when it is time to look at it. */
import { barAt, type PlayedSlot, type Stretch, slotAt } from '#line';
import { type TransportSettings, tempoIn } from '#sound';
import { beatTicks, TICKS_PER_QUARTER } from '#theory';
import { chordOf, type LaneCell, type Study, sameChord } from '../store/index.ts';
import type { Piece } from './piece.ts';

/** Seconds before a change from which on the next form is shown: time for a hand to get there. */
const NOTICE_SECONDS = 1.6;
/** At a slow tempo the change is prepared in beats. */
const NOTICE_BEATS = 2;
/** Of a chord that is over sooner no more than this share is spent looking at the next one, or those beats. */
const NOTICE_SHARE = 0.75;

/** What is played, as far as it matters what follows what. */
export type InOrder = Pick<Piece, 'played' | 'cellOf'>;

export interface Coming {
  /** Cell of the next other chord; absent where none is played any more. */
  readonly next: number | undefined;
  readonly soon: boolean;
}

/** A slot, and the tick at which it comes, counted on beyond the end of a round. */
interface Ahead {
  readonly slot: PlayedSlot;
  readonly at: number;
}

/** What follows a tick in a stretch: to its end, and once more from its beginning where it goes round. */
function slotsAfter(
  { slots }: InOrder['played'],
  tick: number,
  { from, to }: Stretch,
  round: boolean,
): readonly Ahead[] {
  const after = slots.filter(({ start }) => start > tick && start < to);
  const again = round ? slots.filter(({ start }) => start >= from && start < to) : [];
  return [
    ...after.map((slot) => ({ slot, at: slot.start })),
    ...again.map((slot) => ({ slot, at: slot.start + to - from })),
  ];
}

const cellFor = ({ cellOf }: InOrder, { cells }: Study, { index }: PlayedSlot) =>
  cells[cellOf[index] ?? -1];

function isOther(cell: LaneCell | undefined, here: LaneCell | undefined): boolean {
  const chord = cell && chordOf(cell.slot);
  const before = here && chordOf(here.slot);
  return chord !== undefined && !(before && sameChord(chord, before));
}

/** The next other chord in playing order; N.C. and what cannot be read are passed over. */
function nextChord(
  piece: InOrder,
  study: Study,
  { span, round, tick }: { readonly span: Stretch; readonly round: boolean; readonly tick: number },
): Ahead | undefined {
  const now = slotAt(piece.played, tick);
  const here = now && cellFor(piece, study, now);
  return slotsAfter(piece.played, tick, span, round).find(({ slot }) =>
    isOther(cellFor(piece, study, slot), here),
  );
}

/** Something else sounds, or something where there is silence. */
function isElse(cell: LaneCell | undefined, here: LaneCell | undefined): boolean {
  const [chord, now] = [cell && chordOf(cell.slot), here && chordOf(here.slot)];
  return chord && now ? !sameChord(chord, now) : chord !== now;
}

/** The tick from which on a stretch sounds as it does now. */
function beganAt(piece: InOrder, study: Study, tick: number, { from }: Stretch): number {
  const now = slotAt(piece.played, tick);
  const here = now && cellFor(piece, study, now);
  const before = piece.played.slots.findLast(
    (slot) => slot.start >= from && slot.start <= tick && isElse(cellFor(piece, study, slot), here),
  );
  return before === undefined ? from : before.start + before.length;
}

/** Ticks before a change from which on it is shown what comes, for a chord that lasts so many. */
function noticeAt({ played }: InOrder, tick: number, lasts: number, tempo: number): number {
  const metre = barAt(played, tick)?.metre;
  const beat = Math.max(TICKS_PER_QUARTER, metre === undefined ? 0 : beatTicks(metre));
  const beats = NOTICE_BEATS * beat;
  const notice = Math.max((NOTICE_SECONDS * tempo * TICKS_PER_QUARTER) / 60, beats);
  const most = Math.max(NOTICE_SHARE * lasts, lasts >= beats ? beats : 0);
  return Math.min(notice, most);
}

/** Where the music is, and the stretch that is played: the loop, or all there is. */
interface Playing {
  readonly tick: number;
  readonly span: Stretch;
  /** From 0: the tempo may rise from round to round. */
  readonly round?: number;
}

/** Which other chord comes next at a tick, and whether it is time to look at it. */
export function comingAt(
  piece: InOrder,
  study: Study,
  settings: TransportSettings,
  { tick, span, round = 0 }: Playing,
): Coming {
  const ahead = nextChord(piece, study, { span, round: settings.once !== true, tick });
  if (ahead === undefined) return { next: undefined, soon: false };
  const cell = cellFor(piece, study, ahead.slot);
  const lasts = ahead.at - beganAt(piece, study, tick, span);
  const near = ahead.at - tick <= noticeAt(piece, tick, lasts, tempoIn(settings, round));
  return { next: cell?.index, soon: cell?.form !== undefined && near };
}

/**
 * Which time in a round a written bar is played at a tick, from 1; 0 for one that the stretch of the
 * round has only once.
 */
export function timeThrough({ played }: Piece, tick: number, { from, to }: Stretch): number {
  const bar = barAt(played, tick);
  const times = played.bars.filter(
    ({ written, start }) => written === bar?.written && start >= from && start < to,
  );
  return bar === undefined || times.length < 2 ? 0 : times.indexOf(bar) + 1;
}
