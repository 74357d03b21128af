/** Plays what the workspace shows, and lets cursor and neck follow what is heard. */
import { nextHarmony, slotAt } from '#line';
import {
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
import { struckInTurn } from './in-turn.ts';
import {
  loopSpan,
  makePiece,
  type Piece,
  type Source,
  settingsFor,
  soundsAlike,
  sourceOf,
} from './piece.ts';
import { makeSounding, SILENT, type Sounding } from './sounding.ts';

/** What the player needs of the page; times in seconds. */
export interface Stage {
  /** Calls `work` before the next picture; gives what calls it off. */
  readonly frame: (work: () => void) => () => void;
  readonly now: () => number;
  /** Whether somebody is typing: the cursor then follows the caret, and the music does not. */
  readonly typing: () => boolean;
}

export interface Player {
  readonly sounding: Cell<Sounding>;
  readonly engine: Engine;
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
  piece: { readonly of: Source; readonly piece: Piece } | undefined;
  /** The cell that the music last took the cursor to; -1 = none. */
  cell: number;
  next: number | undefined;
  /** Where playing began: the cursor goes back there when the music is over. */
  origin: number;
  taps: Taps;
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

/** Seconds before a change from which on the next form is shown: time for a hand to get there. */
const NOTICE_SECONDS = 1.6;
/** Of a short chord no more than this share is spent looking at the next one. */
const NOTICE_SHARE = 0.75;

interface Ahead {
  readonly next: number | undefined;
  readonly soon: boolean;
}

/** Which cell comes next, and whether it is time to look at it. */
function aheadOf(inside: Inside, { tick, round }: Heard): Ahead {
  const piece = pieceIn(inside);
  const settings = settingsIn(inside);
  const slot = slotAt(piece.played, tick);
  const span = loopSpan(piece, settings);
  const next = nextHarmony(piece.played, tick, span);
  if (slot === undefined || next === undefined) return { next: undefined, soon: false };
  const change = next.start > tick ? next.start : (span?.to ?? tick);
  const perTick = 60 / (tempoIn(settings, round) * 960);
  const notice = Math.min(NOTICE_SECONDS / perTick, NOTICE_SHARE * slot.length);
  const chord = studyIn(inside).cells[piece.cellOf[next.index] ?? -1];
  return { next: chord?.index, soon: chord?.form !== undefined && change - tick <= notice };
}

/** Takes the cursor where the music is; a cursor that a person moved meanwhile is left alone. */
function takeAlong(inside: Inside, cell: number, next: number | undefined): void {
  if (cell === inside.cell && next === inside.next) return;
  inside.cell = cell;
  inside.next = next;
  inside.store.intents.follow(cell, next);
}

function followHeard(inside: Inside, heard: Heard): void {
  const settings = settingsIn(inside);
  const { counting, round } = heard;
  const beats = heard.bar?.metre.beats ?? 0;
  const known = { counting, round, beat: Math.floor(heard.beat), beats };
  const tempo = tempoIn(settings, Math.max(0, round));
  if (counting) {
    show(inside, { ...known, tempo, soon: false });
    return;
  }
  const piece = pieceIn(inside);
  const slot = slotAt(piece.played, heard.tick);
  const { next, soon } = aheadOf(inside, heard);
  if (slot) takeAlong(inside, piece.cellOf[slot.index] ?? 0, next);
  show(inside, { ...known, tempo, soon });
}

function follow(inside: Inside): void {
  inside.callOff = undefined;
  const heard = inside.engine.heard();
  if (heard) followHeard(inside, heard);
  if (isPlaying(inside)) inside.callOff = inside.stage.frame(() => follow(inside));
}

/** Plays from a cell on. */
function playFrom(inside: Inside, cell: number, countIn = true): void {
  const { performance, startOf } = pieceIn(inside);
  const settings = settingsIn(inside);
  inside.cell = -1;
  inside.next = undefined;
  inside.engine.play({
    performance,
    settings: countIn ? settings : { ...settings, countInBars: 0 },
    from: startOf[cell] ?? 0,
  });
}

function play(inside: Inside): void {
  const { cursor } = studyIn(inside);
  inside.origin = cursor;
  playFrom(inside, cursor);
}

function stop(inside: Inside): void {
  inside.origin = -1;
  inside.engine.stop();
}

/** The first cell of what is played: of the loop, or of the chart. */
function firstCell(inside: Inside): number {
  const piece = pieceIn(inside);
  const span = loopSpan(piece, settingsIn(inside));
  const slot = slotAt(piece.played, span?.from ?? 0);
  return slot === undefined ? 0 : (piece.cellOf[slot.index] ?? 0);
}

function fromStart(inside: Inside): void {
  const first = firstCell(inside);
  if (isPlaying(inside)) {
    inside.origin = first;
    playFrom(inside, first);
  } else inside.store.intents.moveCursorTo(first);
}

function tap(inside: Inside): void {
  inside.taps = withTap(inside.taps, inside.stage.now());
  const tempo = tappedTempo(inside.taps);
  if (tempo !== undefined) inside.store.intents.setTempo(String(tempo));
}

/** The grip under the cursor, or where an accompanist would hold the chord. */
function heldAt(study: Study) {
  const cell = study.cells[study.cursor];
  const chord = cell && chordOf(cell.slot);
  const grip = study.turned ? study.reading?.chosen?.grip : cell?.form?.grip;
  if (grip) return grip.tones;
  return chord ? voicingOf(chord, study.of.instrument, study.position) : [];
}

function hear(inside: Inside, how: typeof struckInTurn): void {
  const { study, sound } = sourceIn(inside);
  const { instrument } = study.of;
  inside.engine.strike(how(heldAt(study), instrument, sound.transport.semitones));
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
  show(inside, { ...SILENT, phase: inside.engine.state().phase });
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

function workChanged(inside: Inside, now: AppState, before: AppState): void {
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
  piece: undefined,
  cell: -1,
  next: undefined,
  origin: -1,
  taps: [],
  callOff: undefined,
});

/** A player for a store, on an engine. `close` lets go of both. */
export function startPlayer(store: StudyStore, engine: Engine, stage: Stage): Player {
  const inside = begun(store, engine, stage);
  const unwatch = store.cell.watch((now, before) => workChanged(inside, now, before));
  const unsubscribe = engine.subscribe(() => phaseChanged(inside));
  return {
    sounding: inside.sounding,
    engine,
    play: () => play(inside),
    stop: () => stop(inside),
    toggle: () => (isPlaying(inside) ? stop(inside) : play(inside)),
    fromStart: () => fromStart(inside),
    tap: () => tap(inside),
    hearChord: () => hear(inside, struckAt),
    hearTones: () => hear(inside, struckInTurn),
    piece: () => pieceIn(inside),
    close: () => {
      unwatch();
      unsubscribe();
      inside.callOff?.();
      engine.close();
    },
  };
}
