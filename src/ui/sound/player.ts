/** Plays what the workspace shows, and lets cursor and neck follow what is heard. */
import { type Stretch, slotAt } from '#line';
import type { Place } from '#neck';
import {
  gainOfPart,
  type Struck,
  struckAt,
  type Taps,
  type TransportSettings,
  tappedTempo,
  tempoIn,
  voicingOf,
  withTap,
} from '#sound';
import type { Engine, Heard } from '#sound/browser';
import {
  type AppState,
  type Cell,
  chordOf,
  patched,
  type Study,
  type StudyStore,
} from '../store/index.ts';
import { comingAt, timeThrough } from './coming.ts';
import { groupsInTurn, struckInTurn } from './in-turn.ts';
import {
  type Later,
  type Marking,
  makeMarking,
  NOTHING,
  type StruckGroup,
  soundedAt,
} from './marking.ts';
import {
  loopSpan,
  makePiece,
  type Piece,
  type Source,
  settingsFor,
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
  /** Where playing began: the cursor goes back there when the music is over. */
  origin: number;
  taps: Taps;
  /** The chart was typed after the cursor was last moved by hand. */
  typed: boolean;
  callOff: (() => void) | undefined;
}

const sourceIn = ({ store }: Inside): Source => sourceOf(store.cell.get());

const studyIn = ({ store }: Inside): Study => store.cell.get().study;

const settingsIn = (inside: Inside): TransportSettings =>
  settingsFor(pieceIn(inside), sourceIn(inside).sound.transport);

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

function followMusic(inside: Inside, { tick, round }: Heard): Partial<Sounding> {
  const piece = pieceIn(inside);
  const slot = slotAt(piece.played, tick);
  const settings = settingsIn(inside);
  const { next, soon } = comingAt(piece, studyIn(inside), settings, { tick, round });
  if (slot) takeAlong(inside, piece.cellOf[slot.index] ?? 0, next);
  markHeard(inside, tick);
  return { soon, time: timeThrough(piece, tick) };
}

function followHeard(inside: Inside, heard: Heard): void {
  const { counting, round } = heard;
  const beats = heard.bar?.metre.beats ?? 0;
  const tempo = tempoIn(settingsIn(inside), Math.max(0, round));
  const known = { counting, round, beat: Math.floor(heard.beat), beats, tempo };
  const music = counting ? { soon: false } : followMusic(inside, heard);
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
  const at = { tick: startOf(inside, cell), round: 0 };
  const { next } = comingAt(pieceIn(inside), studyIn(inside), settingsIn(inside), at);
  inside.cell = cell;
  inside.store.intents.follow(cell, next);
}

function play(inside: Inside): void {
  const cell = beginning(inside);
  inside.typed = false;
  inside.origin = cell;
  getReady(inside, cell);
  playFrom(inside, cell);
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
  if (isPlaying(inside)) {
    inside.origin = first;
    playFrom(inside, first);
  } else inside.store.intents.moveCursorTo(first);
}

/** What is tapped is what is heard, slowed down or not. */
function tap(inside: Inside): void {
  inside.taps = withTap(inside.taps, inside.stage.now());
  const tapped = tappedTempo(inside.taps);
  if (tapped === undefined) return;
  show(inside, { tapped });
  inside.store.intents.setTempoHeard(tapped, inside.sounding.get().round);
}

/** The grip under the cursor, or where an accompanist would hold the chord. */
function heldAt(study: Study) {
  const cell = study.cells[study.cursor];
  const chord = cell && chordOf(cell.slot);
  const grip = study.turned ? study.reading?.chosen?.grip : cell?.form?.grip;
  if (grip) return grip.tones;
  return chord ? voicingOf(chord, study.of.instrument, study.position) : [];
}

function strike(
  { engine, marking }: Inside,
  notes: readonly Struck[],
  groups: readonly StruckGroup[],
): void {
  engine.strike(notes).then(
    (sounds) => sounds && marking.strike(groups),
    () => undefined,
  );
}

function hearChord(inside: Inside): void {
  const { study, sound } = sourceIn(inside);
  const places = heldAt(study);
  const notes = struckAt(places, study.of.instrument, sound.transport.semitones);
  strike(inside, notes, [{ places, after: 0 }]);
}

function hearTones(inside: Inside): void {
  const { study, sound } = sourceIn(inside);
  const { instrument } = study.of;
  const places = heldAt(study);
  const notes = struckInTurn(places, instrument, sound.transport.semitones);
  strike(inside, notes, groupsInTurn(places, instrument));
}

/** The music is over, or has been stopped. */
function rest(inside: Inside): void {
  inside.callOff?.();
  inside.callOff = undefined;
  const { origin } = inside;
  inside.cell = -1;
  inside.origin = -1;
  inside.store.intents.unfollow();
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
  if (now.sound.transport !== before.sound.transport) engine.setSettings(settingsIn(inside));
  if (!jumped(inside, now.study, before.study)) return;
  inside.origin = now.study.cursor;
  playFrom(inside, now.study.cursor, false);
}

/** Typing takes the cursor to the end of what is typed; that is not where one wants to begin. */
function noteTyping(inside: Inside, { study }: AppState, before: AppState): void {
  if (study.chart !== before.study.chart) inside.typed = true;
  else if (study.cursor !== before.study.cursor) inside.typed = false;
}

function workChanged(inside: Inside, now: AppState, before: AppState): void {
  noteTyping(inside, now, before);
  if (now.study === before.study && now.workspace.sound === before.workspace.sound) return;
  inside.engine.setMix(now.workspace.sound.mix);
  inside.engine.setInstrument(now.workspace.instrument);
  if (isPlaying(inside)) changedWhilePlaying(inside, sourceOf(now), sourceOf(before));
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
  origin: -1,
  taps: [],
  typed: false,
  callOff: undefined,
});

/** A player for a store, on an engine. `close` lets go of both. */
export function startPlayer(store: StudyStore, engine: Engine, stage: Stage): Player {
  const inside = begun(store, engine, stage);
  const unwatch = store.cell.watch((now, before) => workChanged(inside, now, before));
  const unsubscribe = engine.subscribe(() => phaseChanged(inside));
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
      engine.close();
    },
  };
}
