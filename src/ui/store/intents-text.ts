/** Intents that change the progression and its key. */
import {
  BEGINNING,
  EXAMPLES,
  type Moment,
  type PinnedForm,
  type Workspace,
  withoutText,
} from '#lesson';
import { type Key, parseKey, pitchClassOf, sameKey, stepKey, transposeText } from '#theory';
import { cellAtOffset, momentOf } from './lane.ts';
import { accept, patched, refuse, step, without } from './state.ts';
import { studyOf } from './study.ts';
import type { AppState } from './types.ts';
import { typingRun } from './typing.ts';

const sameMoment = (a: Moment, b: Moment): boolean => a.bar === b.bar && a.beat === b.beat;

function lookingAt(workspace: Workspace, moment: Moment | undefined): Workspace {
  return !moment || sameMoment(workspace.at, moment) ? workspace : { ...workspace, at: moment };
}

/** Takes over what was typed; the cursor goes to the chord at the caret (UTF-16 units from 0). */
export function setProgression(state: AppState, progression: string, caret?: number): AppState {
  const { workspace } = state;
  const typed = patched(workspace, { progression });
  if (typed === workspace) return state;
  const study = studyOf(typed, state.study);
  const cell = caret === undefined ? undefined : study.cells[cellAtOffset(study.cells, caret)];
  const run = typingRun(workspace.progression, progression);
  // The last good chord is that of the study before, not one that the old cursor now points at.
  const via = cell?.problem ? state.study : study;
  return step(state, lookingAt(typed, cell && momentOf(cell)), run, via);
}

/** Puts one of our examples on the neck. An index that does not exist changes nothing. */
export function loadExample(state: AppState, index: number): AppState {
  const example = EXAMPLES[index];
  if (!example) return state;
  const { progression, position } = example;
  const free = without(without(withoutText(state.workspace), 'form'), 'key');
  return step(state, lookingAt(patched(free, { progression, position }), BEGINNING));
}

/** Sets the key by hand; `undefined` goes back to the estimate. */
export function setKey(state: AppState, key: Key | undefined): AppState {
  const { workspace } = state;
  const before = workspace.key;
  const stays = key === before || (key && before && sameKey(key, before));
  if (stays) return accept(state, 'key');
  const next = key ? patched(workspace, { key }) : without(workspace, 'key');
  return step(accept(state, 'key'), next);
}

/** Sets the key from what was typed (`F# minor`, `Eb`); nothing typed goes back to the estimate. */
export function setKeyText(state: AppState, text: string): AppState {
  if (text.trim() === '') return setKey(state, undefined);
  const key = parseKey(text.trim());
  if (key.ok) return setKey(state, key.value);
  return refuse(state, 'key', `“${text}”: expected ${key.error.expected.join(' or ')}`);
}

/** Pinned forms go the same way as their chords, or an octave further where the neck ends. */
function movedPins({ pins, instrument }: Workspace, semitones: number): readonly PinnedForm[] {
  const { capo, frets } = instrument;
  return pins.map((pin) => {
    const anchors = [0, 12, -12].map((octave) => pin.anchor + semitones + octave);
    const anchor = anchors.find((a) => a >= capo && a <= frets - 3) ?? pin.anchor;
    return { ...pin, anchor };
  });
}

/** Half steps from one key to another, the shorter way: -6 to 5. */
const distance = (from: Key, to: Key): number =>
  ((pitchClassOf(to.tonic) - pitchClassOf(from.tonic) + 18) % 12) - 6;

/** Transposes the whole progression to a key, spelled as that key has it. The hand stays. */
export function transposeTo(state: AppState, to: Key): AppState {
  const { workspace, study } = state;
  if (!study.key) return state;
  const progression = transposeText(workspace.progression, study.key, to);
  if (progression === workspace.progression) return state;
  const pins = movedPins(workspace, distance(study.key, to));
  const moved = patched(workspace, { progression, ...(pins.length > 0 && { pins }) });
  return step(state, workspace.key ? patched(moved, { key: to }) : moved);
}

/** Transposes the whole progression by semitones, to the key with the fewest accidentals. */
export function transposeBy(state: AppState, semitones: number): AppState {
  const { key } = state.study;
  return key && semitones !== 0 ? transposeTo(state, stepKey(key, semitones)) : state;
}
