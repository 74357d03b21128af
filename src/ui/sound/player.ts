/** Plays what the workspace shows, and lets cursor and neck follow what is heard. */
import { type Stretch, slotAt } from '#line';
import type { Place } from '#neck';
import {
  gainOfPart,
  type Struck,
  type Taps,
  type TransportSettings,
  tappedTempo,
  tempoIn,
  withTap,
} from '#sound';
import type { Engine, Heard } from '#sound/browser';
import { type AppState, type Cell, patched, type Study, type StudyStore } from '../store/index.ts';
import { hearChord, hearTones, strike } from './by-hand.ts';
import { type Coming, comingAt, timeThrough } from './coming.ts';
import { loopOrder } from './loop-order.ts';
import {
  type Later,
  type Marking,
  makeMarking,
  NOTHING,
  type StruckGroup,
  soundedAt,
} from './marking.ts';
import {
  loopOf,
  loopSpan,
  makePiece,
  type Piece,
  type Source,
  sameBars,
  settingsOf,
  soundsAlike,
  sourceOf,
  startWithin,
} from './piece.ts';
import { makeSounding, SILENT, type Sounding } from './sounding.ts';

/** What the player needs of the page; times in seconds. */
export interface Stage {
  /** Calls `work` before the next picture; gives what calls it off. */
  readonly frame: (work: () => void) => () => void;
  readonly now: () => number;
  readonly later: Later;
  /** Whether somebody is typing: the cursor then follows the caret, and the music does not. */
  readonly typing: () => boolean;
}

export interface Player {
  readonly sounding: Cell<Sounding>;
  /** Places of the neck that sound, one by one as they do. */
  readonly marked: Cell<readonly Place[]>;
  readonly engine: Engine;
  /** Strikes notes by hand, and marks where they are once they sound. */
  readonly strike: (notes: readonly Struck[], groups: readonly StruckGroup[]) => void;
  readonly play: () => void;
  readonly stop: () => void;
  readonly toggle: () => void;
  readonly fromStart: () => void;
  readonly tap: () => void;
  readonly hearChord: () => void;
  readonly hearTones: () => void;
  /** What would be played now. */
  readonly piece: () => Piece;
  readonly close: () => void;
}

/** Everything that changes while it plays. */
interface Inside {
  readonly store: StudyStore;
  readonly engine: Engine;
  readonly stage: Stage;
  readonly sounding: Cell<Sounding>;
  readonly marking: Marking;
  piece: { readonly of: Source; readonly piece: Piece } | undefined;
  /** The cell that the music last took the cursor to; -1 = none. */
  cell: number;
  next: number | undefined;
  /** Where the music begins that is counted in. */
  ready: { readonly cell: number; readonly next: number | undefined; readonly time: number };
  /** Where playing began: the cursor goes back there when the music is over. */
  origin: number;
  taps: Taps;
  /** The chart was typed after the cursor was last moved by hand. */
  typed: boolean;
  callOff: (() => void) | undefined;
  /** Calls off that what was tapped is no longer shown. */
  tapOff: (() => void) | undefined;
}

const sourceIn = ({ store }: Inside): Source => sourceOf(store.cell.get());

const studyIn = ({ store }: Inside): Study => store.cell.get().study;

const settingsIn = (inside: Inside): TransportSettings => settingsOf(sourceIn(inside));

function pieceIn(inside: Inside): Piece {
  const source = sourceIn(inside);
  if (inside.piece && soundsAlike(inside.piece.of, source)) return inside.piece.piece;
  const piece = makePiece(source);
  inside.piece = { of: source, piece };
  return piece;
}

const show = ({ sounding }: Inside, patch: Partial<Sounding>): void =>
  sounding.update((before) => patched(before, patch));

const isPlaying = ({ engine }: Inside): boolean => engine.state().phase === 'playing';

/** The stretch that is played: the loop, or the whole chart. */
function spanIn(inside: Inside): Stretch {
  const piece = pieceIn(inside);
  return loopSpan(piece, settingsIn(inside)) ?? { from: 0, to: piece.played.length };
}

/** Takes the cursor where the music is; a cursor that a person moved meanwhile is left alone. */
function takeAlong(inside: Inside, cell: number, next: number | undefined): void {
  if (cell === inside.cell && next === inside.next) return;
  inside.cell = cell;
  inside.next = next;
  inside.store.intents.follow(cell, next);
}

/** What of the studied line is heard now, if that is heard at all. */
function markHeard(inside: Inside, tick: number): void {
  const heard = gainOfPart(sourceIn(inside).sound.mix, 'line') > 0;
  inside.marking.play(heard ? soundedAt(pieceIn(inside).sounded, tick) : NOTHING);
}

function coming(inside: Inside, tick: number, round = 0): Coming {
  const at = { tick, span: spanIn(inside), round };
  return comingAt(pieceIn(inside), studyIn(inside), settingsIn(inside), at);
}

function followMusic(inside: Inside, { tick, round }: Heard): Partial<Sounding> {
  const piece = pieceIn(inside);
  const slot = slotAt(piece.played, tick);
  const { next, soon } = coming(inside, tick, round);
  if (slot) takeAlong(inside, piece.cellOf[slot.index] ?? 0, next);
  markHeard(inside, tick);
  return { soon, time: timeThrough(piece, tick, spanIn(inside)) };
}

/** While it is counted in, everything shows the bar that is about to begin. */
function followCount(inside: Inside): Partial<Sounding> {
  const { cell, next, time } = inside.ready;
  takeAlong(inside, cell, next);
  inside.marking.play(NOTHING);
  return { soon: false, time };
}

function followHeard(inside: Inside, heard: Heard): void {
  const { counting, round } = heard;
  const beats = heard.bar?.metre.beats ?? 0;
  const tempo = tempoIn(settingsIn(inside), Math.max(0, round));
  const known = { counting, round, beat: Math.floor(heard.beat), beats, tempo };
  const music = counting ? followCount(inside) : followMusic(inside, heard);
  show(inside, { ...known, ...music });
}

function follow(inside: Inside): void {
  inside.callOff = undefined;
  const heard = inside.engine.heard();
  if (heard) followHeard(inside, heard);
  if (isPlaying(inside)) inside.callOff = inside.stage.frame(() => follow(inside));
}

/** The tick at which playing begins for a cell. */
function startOf(inside: Inside, cell: number): number {
  const piece = pieceIn(inside);
  return startWithin(piece, cell, spanIn(inside)) ?? piece.startOf[cell] ?? 0;
}

/** Plays from a cell on. */
function playFrom(inside: Inside, cell: number, countIn = true): void {
  const { performance } = pieceIn(inside);
  const settings = settingsIn(inside);
  inside.cell = -1;
  inside.next = undefined;
  inside.engine.play({
    performance,
    settings: countIn ? settings : { ...settings, countInBars: 0 },
    from: startOf(inside, cell),
  });
}

/**
 * Where Play begins: at the cursor; at the first bar of a loop that it stands outside of, and of a
 * chart that has just been typed to its end.
 */
function beginning(inside: Inside): number {
  const { cursor, cells } = studyIn(inside);
  const typed = inside.typed && cursor === cells.length - 1;
  const outside = startWithin(pieceIn(inside), cursor, spanIn(inside)) === undefined;
  return typed || outside ? firstCell(inside) : cursor;
}

/** Takes the cursor where the music will begin: the hand gets ready while it is counted in. */
function getReady(inside: Inside, cell: number): void {
  const tick = startOf(inside, cell);
  const { next } = coming(inside, tick);
  inside.ready = { cell, next, time: timeThrough(pieceIn(inside), tick, spanIn(inside)) };
  takeAlong(inside, cell, next);
}

/** Begins at a cell, counted in. */
function beginAt(inside: Inside, cell: number): void {
  inside.origin = cell;
  getReady(inside, cell);
  playFrom(inside, cell);
}

function play(inside: Inside): void {
  const cell = beginning(inside);
  inside.typed = false;
  beginAt(inside, cell);
}

function stop(inside: Inside): void {
  inside.origin = -1;
  inside.engine.stop();
}

/** The first cell of what is played: of the loop, or of the chart. */
function firstCell(inside: Inside): number {
  const piece = pieceIn(inside);
  const slot = slotAt(piece.played, spanIn(inside).from);
  return slot === undefined ? 0 : (piece.cellOf[slot.index] ?? 0);
}

function fromStart(inside: Inside): void {
  const first = firstCell(inside);
  if (isPlaying(inside)) beginAt(inside, first);
  else inside.store.intents.moveCursorTo(first);
}

/** Seconds for which it is shown what was tapped. */
const TAP_SECONDS = 4;

/** What is tapped is what is heard, slowed down or not. */
function tap(inside: Inside): void {
  inside.taps = withTap(inside.taps, inside.stage.now());
  const tapped = tappedTempo(inside.taps);
  if (tapped === undefined) return;
  inside.store.intents.setTempoHeard(tapped, inside.sounding.get().round);
  // Last: a change of the tempo takes away what is shown of a tap before it.
  show(inside, { tapped });
  inside.tapOff?.();
  inside.tapOff = inside.stage.later(TAP_SECONDS, () => show(inside, { tapped: 0 }));
}

/** The music is over, or has been stopped. */
function rest(inside: Inside): void {
  inside.callOff?.();
  inside.callOff = undefined;
  const { origin } = inside;
  inside.cell = -1;
  inside.origin = -1;
  inside.store.intents.unfollow(loopOrder(sourceIn(inside)));
  if (origin >= 0) inside.store.intents.moveCursorTo(origin);
  inside.marking.play(NOTHING);
  const { tapped } = inside.sounding.get();
  show(inside, { ...SILENT, tapped, phase: inside.engine.state().phase });
}

/** The sound has failed: the cursor stays where the music was, so that Play goes on from there. */
function lost(inside: Inside): void {
  inside.origin = -1;
  rest(inside);
}

function phaseChanged(inside: Inside): void {
  const { phase, message } = inside.engine.state();
  const was = inside.sounding.get().phase;
  inside.sounding.update(({ message: _before, ...sounding }) => ({
    ...sounding,
    phase,
    ...(message !== undefined && { message }),
  }));
  inside.store.intents.setPlaying(phase === 'playing');
  if (phase === 'playing') inside.callOff ??= inside.stage.frame(() => follow(inside));
  else if (was === 'playing' && phase === 'ready') rest(inside);
  else if (phase === 'lost') lost(inside);
}

/** A person moved the cursor while it plays: the music goes there too. */
function jumped(inside: Inside, study: Study, before: Study): boolean {
  const moved = study.cursor !== before.cursor && study.cursor !== inside.cell;
  return moved && study.chart === before.chart && !inside.stage.typing();
}

function changedWhilePlaying(inside: Inside, now: Source, before: Source): void {
  const { engine } = inside;
  if (!soundsAlike(now, before)) engine.setPerformance(pieceIn(inside).performance);
  // With another chart other bars of the loop may be there.
  const loopStays = now.study.chart === before.study.chart || sameBars(loopOf(now), loopOf(before));
  if (now.sound.transport !== before.sound.transport || !loopStays)
    engine.setSettings(settingsIn(inside));
  if (!jumped(inside, now.study, before.study)) return;
  inside.origin = now.study.cursor;
  playFrom(inside, now.study.cursor, false);
}

/** Typing takes the cursor to the end of what is typed; that is not where one wants to begin. */
function noteTyping(inside: Inside, { study }: AppState, before: AppState): void {
  if (study.chart !== before.study.chart) inside.typed = true;
  else if (study.cursor !== before.study.cursor) inside.typed = false;
}

/** Of a loop it is known also while nothing plays what would follow what. */
function orderChanged(inside: Inside, now: Source, before: Source): void {
  const [{ transport }, { transport: old }] = [now.sound, before.sound];
  const looped = transport.loop !== undefined || old.loop !== undefined;
  if (looped && (now.study.chart !== before.study.chart || transport !== old))
    inside.store.intents.unfollow(loopOrder(now));
}

function workChanged(inside: Inside, now: AppState, before: AppState): void {
  noteTyping(inside, now, before);
  if (now.study === before.study && now.workspace.sound === before.workspace.sound) return;
  inside.engine.setMix(now.workspace.sound.mix);
  inside.engine.setInstrument(now.workspace.instrument);
  const [source, old] = [sourceOf(now), sourceOf(before)];
  if (source.sound.transport !== old.sound.transport) show(inside, { tapped: 0 });
  if (isPlaying(inside)) changedWhilePlaying(inside, source, old);
  else orderChanged(inside, source, old);
}

const begun = (store: StudyStore, engine: Engine, stage: Stage): Inside => ({
  store,
  engine,
  stage,
  sounding: makeSounding(),
  marking: makeMarking(stage.later),
  piece: undefined,
  cell: -1,
  next: undefined,
  ready: { cell: -1, next: undefined, time: 0 },
  origin: -1,
  taps: [],
  typed: false,
  callOff: undefined,
  tapOff: undefined,
});

/** A player for a store, on an engine. `close` lets go of both. */
export function startPlayer(store: StudyStore, engine: Engine, stage: Stage): Player {
  const inside = begun(store, engine, stage);
  const unwatch = store.cell.watch((now, before) => workChanged(inside, now, before));
  const unsubscribe = engine.subscribe(() => phaseChanged(inside));
  // Not at once: a player is made while the page is drawn.
  const order = stage.later(0, () => store.intents.unfollow(loopOrder(sourceIn(inside))));
  return {
    sounding: inside.sounding,
    marked: inside.marking.places,
    engine,
    strike: (notes, groups) => strike(inside, notes, groups),
    play: () => play(inside),
    stop: () => stop(inside),
    toggle: () => (isPlaying(inside) ? stop(inside) : play(inside)),
    fromStart: () => fromStart(inside),
    tap: () => tap(inside),
    hearChord: () => hearChord(inside),
    hearTones: () => hearTones(inside),
    piece: () => pieceIn(inside),
    close: () => {
      unwatch();
      unsubscribe();
      inside.callOff?.();
      inside.tapOff?.();
      order();
      engine.close();
    },
  };
}
