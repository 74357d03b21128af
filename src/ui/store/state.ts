/** How the state of the workspace goes from one to the next. Pure; nothing changed = same reference. */
import { returnedTo, type Workspace } from '#lesson';
import { endRun, NO_HISTORY, record, redoStep, type Step, undoStep } from './history.ts';
import { lensEngine } from './lenses.ts';
import { renewed, studyOf } from './study.ts';
import type { AppState, FieldName, History, Notice, Study } from './types.ts';

/** A state to start from; `past` is work that undo leads back to, the last first. */
export function stateOf(workspace: Workspace, past: readonly Workspace[] = []): AppState {
  return {
    workspace,
    study: studyOf(workspace),
    notices: [],
    history: { ...NO_HISTORY, past },
    canUndo: past.length > 0,
    canRedo: false,
    practising: false,
    playing: false,
  };
}

/** While a key is held down, what need not follow it shows what was there before. */
export function holding(state: AppState, on: boolean): AppState {
  if (on === (state.held !== undefined)) return state;
  return on ? { ...state, held: state.study } : (without(state, 'held') as AppState);
}

/** The state with its study made anew: what it is computed by has arrived. */
export const refreshed = (state: AppState): AppState => ({
  ...state,
  study: renewed(state.study),
});

function withHistory(state: AppState, history: History): AppState {
  if (history === state.history) return state;
  const canUndo = history.past.length > 0;
  return { ...state, history, canUndo, canRedo: history.future.length > 0 };
}

/** `before` with some values replaced, or `before` itself if they are all the same. */
export function patched<T extends object>(before: T, patch: Partial<T>): T {
  const keys = Object.keys(patch) as (keyof T)[];
  return keys.every((key) => Object.is(before[key], patch[key])) ? before : { ...before, ...patch };
}

/** `before` without one optional value, or `before` itself if it has none. */
export function without<T extends object, K extends keyof T>(before: T, key: K): Omit<T, K> | T {
  if (before[key] === undefined) return before;
  const { [key]: _dropped, ...rest } = before;
  return rest;
}

const show = (state: AppState, workspace: Workspace, study = state.study): AppState => ({
  ...state,
  workspace,
  study: (lensEngine()?.readyStudy ?? studyOf)(workspace, study),
});

/**
 * A step that undo goes back over. Steps in a row with the same `run` are one. `study` may be one
 * that was computed on the way.
 */
export function step(state: AppState, workspace: Workspace, run?: string, study?: Study): AppState {
  if (workspace === state.workspace) return state;
  return withHistory(show(state, workspace, study), record(state.history, state.workspace, run));
}

/** A change that undo does not see: the cursor. It ends a run. */
export function glance(state: AppState, workspace: Workspace): AppState {
  if (workspace === state.workspace) return state;
  return withHistory(show(state, workspace), endRun(state.history));
}

/** What one looks at stays, and the cursor too unless the text under it changes. */
function returnTo(state: AppState, taken: Step | undefined): AppState {
  if (!taken) return state;
  const { workspace, history } = taken;
  const sameText = workspace.progression === state.workspace.progression;
  const seen = returnedTo(workspace, state.workspace);
  const target = sameText ? seen : patched(seen, { at: workspace.at });
  return withHistory(show(state, target), history);
}

/** One step back; the same state when there is none. */
export const undo = (state: AppState): AppState =>
  returnTo(state, undoStep(state.history, state.workspace));

/** One step forward again; the same state when there is none. */
export const redo = (state: AppState): AppState =>
  returnTo(state, redoStep(state.history, state.workspace));

/** Shows a message; one with the same id is replaced. */
export function notify(state: AppState, notice: Notice): AppState {
  const before = state.notices.find((n) => n.id === notice.id);
  if (before && before.text === notice.text && before.tone === notice.tone) return state;
  const others = state.notices.filter((n) => n !== before);
  return { ...state, notices: [...others, notice] };
}

/** Takes a message away. */
export function dismissNotice(state: AppState, id: string): AppState {
  const notices = state.notices.filter((n) => n.id !== id);
  return notices.length === state.notices.length ? state : { ...state, notices };
}

export const fieldNoticeId = (field: FieldName): string => `field.${field}`;

/** A value that a field refused; the last good one stays. */
export const refuse = (state: AppState, field: FieldName, text: string): AppState =>
  notify(state, { id: fieldNoticeId(field), tone: 'error', text });

/** A value that a field took: whatever it refused before is no longer of interest. */
export const accept = (state: AppState, field: FieldName): AppState =>
  dismissNotice(state, fieldNoticeId(field));

/** The message at a field, if what was last typed there was refused. */
export const fieldError = (state: AppState, field: FieldName): string | undefined =>
  state.notices.find((n) => n.id === fieldNoticeId(field))?.text;
