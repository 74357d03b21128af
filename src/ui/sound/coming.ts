/** What the music comes to next, and when it is time to look at it. */
import { barAt, type PlayedSlot, type Stretch, slotAt } from '#line';
import { type TransportSettings, tempoIn } from '#sound';
import { beatTicks, TICKS_PER_QUARTER } from '#theory';
import { chordOf, type LaneCell, type Study, sameChord } from '../store/index.ts';
import { loopSpan, type Piece } from './piece.ts';

/** Seconds before a change from which on the next form is shown: time for a hand to get there. */
const NOTICE_SECONDS = 1.6;
/** At a slow tempo the change is prepared in beats. */
const NOTICE_BEATS = 2;
/** Of a short chord no more than this share is spent looking at the next one. */
const NOTICE_SHARE = 0.75;

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
  { slots }: Piece['played'],
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

const cellFor = ({ cellOf }: Piece, { cells }: Study, { index }: PlayedSlot) =>
  cells[cellOf[index] ?? -1];

function isOther(cell: LaneCell | undefined, here: LaneCell | undefined): boolean {
  const chord = cell && chordOf(cell.slot);
  const before = here && chordOf(here.slot);
  return chord !== undefined && !(before && sameChord(chord, before));
}

/** The next other chord in playing order; N.C. and what cannot be read are passed over. */
function nextChord(
  piece: Piece,
  study: Study,
  settings: TransportSettings,
  tick: number,
): Ahead | undefined {
  const now = slotAt(piece.played, tick);
  const here = now && cellFor(piece, study, now);
  const span = loopSpan(piece, settings) ?? { from: 0, to: piece.played.length };
  return slotsAfter(piece.played, tick, span, settings.once !== true).find(({ slot }) =>
    isOther(cellFor(piece, study, slot), here),
  );
}

/** Ticks before a change from which on it is shown what comes. */
function noticeAt(piece: Piece, settings: TransportSettings, tick: number, round: number): number {
  const metre = barAt(piece.played, tick)?.metre;
  const beat = Math.max(TICKS_PER_QUARTER, metre === undefined ? 0 : beatTicks(metre));
  const perTick = 60 / (tempoIn(settings, round) * TICKS_PER_QUARTER);
  const length = slotAt(piece.played, tick)?.length ?? 0;
  return Math.min(Math.max(NOTICE_SECONDS / perTick, NOTICE_BEATS * beat), NOTICE_SHARE * length);
}

/** Which other chord comes next at a tick of a round, and whether it is time to look at it. */
export function comingAt(
  piece: Piece,
  study: Study,
  settings: TransportSettings,
  { tick, round }: { readonly tick: number; readonly round: number },
): Coming {
  const ahead = nextChord(piece, study, settings, tick);
  if (ahead === undefined) return { next: undefined, soon: false };
  const cell = cellFor(piece, study, ahead.slot);
  const near = ahead.at - tick <= noticeAt(piece, settings, tick, round);
  return { next: cell?.index, soon: cell?.form !== undefined && near };
}

/** Which time a written bar is played at a tick, from 1; 0 for one that is played only once. */
export function timeThrough({ played }: Piece, tick: number): number {
  const bar = barAt(played, tick);
  const times = played.bars.filter(
    ({ written, start }) => written === bar?.written && start < played.length,
  );
  return bar === undefined || times.length < 2 || bar.start >= played.length
    ? 0
    : times.indexOf(bar) + 1;
}
