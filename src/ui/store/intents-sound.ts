/** Intents for what is heard. A refused value leaves the last good one. */
import { DEFAULT_SOUND, type Pedal, type SoundSetup } from '#lesson';
import type { StudyName } from '#line';
import {
  type FeelName,
  type GuitarSound,
  type LoopBars,
  makeLoop,
  type PartMix,
  type PartName,
  parseLoop,
  parseTempo,
  type Rise,
  type TransportSettings,
  withLoop,
  withMaster,
  withOnce,
  withPart,
  withRise,
  withSetting,
  withTempoHeard,
} from '#sound';
import { barsOf, type TextError } from '#theory';
import { moveCursorTo } from './intents-cursor.ts';
import { nextOf } from './lane.ts';
import { loopNow, loopOffered } from './looped.ts';
import { accept, glance, patched, refuse, step, without } from './state.ts';
import { withNextOf } from './study.ts';
import type { AppState, FieldName } from './types.ts';

const inWords = ({ found, expected }: TextError<string>): string =>
  `${found.trim() === '' ? 'Nothing is typed' : `“${found}”`}: expected ${expected.join(' or ')}`;

/** What was refused, and what goes on being played. */
const still = (refused: string, before: string): string => `${refused}; still ${before}`;

/** One run of undo for each thing that is set: a fader that is dragged is one step. */
function heard(state: AppState, patch: Partial<SoundSetup>, run: string): AppState {
  const sound = patched(state.workspace.sound, patch);
  return step(state, patched(state.workspace, { sound }), `sound.${run}`);
}

const transported = (
  state: AppState,
  change: (settings: TransportSettings) => TransportSettings,
  run: string,
): AppState => heard(state, { transport: change(state.workspace.sound.transport) }, run);

function taken(state: AppState, field: FieldName, change: () => AppState): AppState {
  const changed = change();
  return changed === state ? accept(state, field) : accept(changed, field);
}

/** Sets the tempo as typed, quarter notes a minute. */
export function setTempo(state: AppState, text: string): AppState {
  const tempo = parseTempo(text);
  const { tempo: before } = state.workspace.sound.transport;
  if (!tempo.ok) return refuse(state, 'tempo', still(inWords(tempo.error), `${before}`));
  const set = (): AppState =>
    transported(state, (settings) => withSetting(settings, 'tempo', tempo.value), 'tempo');
  return taken(state, 'tempo', set);
}

/** Sets how fast it is heard in a round (from 0), quarter notes a minute: what is tapped. */
export const setTempoHeard = (state: AppState, heard: number, round: number): AppState =>
  taken(state, 'tempo', () =>
    transported(state, (settings) => withTempoHeard(settings, heard, round), 'tempo'),
  );

/** Sets whether it is played once, or round and round. */
export const setOnce = (state: AppState, once: boolean): AppState =>
  transported(state, (settings) => withOnce(settings, once), 'once');

/** Sets the share of the tempo at which it is played, 0.25 to 1; beyond that it stays at the end. */
export function setShare(state: AppState, share: number): AppState {
  const whole = Math.round(Math.min(1, Math.max(0.25, share)) * 100) / 100;
  return transported(state, (settings) => withSetting(settings, 'share', whole), 'share');
}

const looped = (state: AppState, loop: LoopBars | undefined): AppState =>
  transported(state, (settings) => withLoop(settings, loop), 'loop');

/** Sets the bars to play over and over, as typed: `5-8`, nothing for none. */
export function setLoop(state: AppState, text: string): AppState {
  const loop = parseLoop(text, barsOf(state.study.chart).length);
  const before = makeLoop(loopNow(state));
  if (!loop.ok) return refuse(state, 'loop', still(inWords(loop.error), before || 'all bars'));
  const byHand = without(state, 'letGo');
  return taken(byHand, 'loop', () => looped(byHand, loop.value));
}

/**
 * Loops the section under the cursor, or what this let go before; a loop that is there is let go, and
 * remembered.
 */
export function loopSection(state: AppState): AppState {
  const loop = loopNow(state);
  if (loop === undefined) return taken(state, 'loop', () => looped(state, loopOffered(state)));
  const free = taken(state, 'loop', () => looped(state, undefined));
  return { ...free, letGo: { loop, chart: state.study.chart } };
}

/** Sets how the tempo rises, or that it does not. */
export function setRise(state: AppState, rise: Rise | undefined): AppState {
  const { transport } = state.workspace.sound;
  const next = withRise(transport, rise);
  const same = rise === undefined || JSON.stringify(transport.rise) === JSON.stringify(rise);
  if (next === transport && !same) {
    const expected = 'a rise from 1 to 50, after 1 to 99 rounds, up to a tempo from 20 to 300';
    return refuse(state, 'rise', `Expected ${expected}`);
  }
  return taken(state, 'rise', () => heard(state, { transport: next }, 'rise'));
}

/** Sets how many half steps higher everything sounds, −12 to 12. */
export const setSemitones = (state: AppState, semitones: number): AppState =>
  transported(state, (settings) => withSetting(settings, 'semitones', semitones), 'semitones');

/** Sets how many bars are counted in, 0 to 4. */
export const setCountIn = (state: AppState, bars: number): AppState =>
  transported(state, (settings) => withSetting(settings, 'countInBars', bars), 'countIn');

/** Sets how the reading is played over its backing. */
export const setStudy = (state: AppState, study: StudyName): AppState =>
  heard(state, { study }, 'study');

export const setFeel = (state: AppState, feel: FeelName): AppState =>
  heard(state, { feel }, 'feel');

/** Sets whether what is touched sounds. */
export const setTouch = (state: AppState, touch: boolean): AppState =>
  heard(state, { touch }, 'touch');

export const setPedal = (state: AppState, pedal: Pedal): AppState =>
  heard(state, { pedal }, 'pedal');

/** Changes a part at the mixing desk; a level outside 0 to 1 changes nothing. */
export const setPart = (state: AppState, name: PartName, change: Partial<PartMix>): AppState =>
  heard(state, { mix: withPart(state.workspace.sound.mix, name, change) }, `part.${name}`);

/** Sets the level of the whole, 0 to 1. */
export const setMaster = (state: AppState, level: number): AppState =>
  heard(state, { mix: withMaster(state.workspace.sound.mix, level) }, 'master');

/** Sets the amplifier of the studied line. */
export const setGuitar = (state: AppState, sound: GuitarSound): AppState =>
  heard(state, { mix: patched(state.workspace.sound.mix, { sound }) }, 'guitar');

/** Every setting of the sound as on a first visit. */
export const resetSound = (state: AppState): AppState =>
  step(state, patched(state.workspace, { sound: DEFAULT_SOUND }));

/** Says that the caution about listening has been shown. No step of undo. */
export const setCautioned = (state: AppState): AppState =>
  glance(state, patched(state.workspace, { cautioned: true }));

/** Opens the practice screen, or leaves it. No step of undo. */
export function setPractising(state: AppState, practising: boolean): AppState {
  const open = patched(state, { practising });
  const { panel, ...rest } = open;
  return practising && panel !== undefined ? rest : open;
}

/** Says that music plays, or no longer does. No step of undo. */
export const setPlaying = (state: AppState, playing: boolean): AppState =>
  patched(state, { playing });

const replaced = (list: readonly number[], index: number, value: number): readonly number[] =>
  list[index] === value ? list : list.map((one, i) => (i === index ? value : one));

/** The cursor goes where the music is; `next` is the cell that is played after it, if one is. */
export function follow(state: AppState, cell: number, next: number | undefined): AppState {
  const { study } = state;
  const order = next === undefined ? study.nextOf : replaced(study.nextOf, cell, next);
  if (order === study.nextOf) return moveCursorTo(state, cell);
  if (cell === study.cursor) return { ...state, study: withNextOf(study, order) };
  return moveCursorTo({ ...state, study: { ...study, nextOf: order } }, cell);
}

/** What follows what is as written again, but within a loop as that is played. */
export function unfollow(state: AppState, looped: ReadonlyMap<number, number>): AppState {
  const { study } = state;
  const order = nextOf(study.chart, study.cells).map((next, i) => looped.get(i) ?? next);
  const same = order.every((next, i) => next === study.nextOf[i]);
  return same ? state : { ...state, study: withNextOf(study, order) };
}
