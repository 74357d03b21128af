/** Intents that change the progression and its key. */
import type { Moment, Workspace } from '#lesson';
import { type Key, parseKey, sameKey } from '#theory';
import { cellAtOffset, momentOf } from './lane.ts';
import { accept, patched, refuse, step, without } from './state.ts';
import { studyOf } from './study.ts';
import type { AppState } from './types.ts';
import { typingRun } from './typing.ts';

const sameMoment = (a: Moment, b: Moment): boolean => a.bar === b.bar && a.beat === b.beat;

/** The workspace with the cursor at a moment; the same one if it is there. */
export function lookingAt(workspace: Workspace, moment: Moment | undefined): Workspace {
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
