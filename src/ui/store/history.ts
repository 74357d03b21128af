/** Undo and redo over whole workspaces, as plain data. */
import type { Workspace } from '#lesson';
import type { History } from './types.ts';

/** Steps that are remembered; a workspace shares almost everything with its neighbours. */
export const MOST_STEPS = 500;

export const NO_HISTORY: History = { past: [], future: [] };

/** What one step back or forward gives. */
export interface Step {
  readonly history: History;
  readonly workspace: Workspace;
}

/** Closes the current run: the next step is a step of its own. Same reference if none is open. */
export function endRun(history: History): History {
  return history.run === undefined ? history : { past: history.past, future: history.future };
}

/**
 * Remembers `before` as the state that undo returns to. A step of the same `run` as the last one
 * joins it. Whatever was undone is forgotten.
 */
export function record(history: History, before: Workspace, run?: string): History {
  const joins = run !== undefined && run === history.run && history.past.length > 0;
  const past = joins ? history.past : [...history.past, before].slice(-MOST_STEPS);
  return run === undefined ? { past, future: [] } : { past, future: [], run };
}

/** One step back, or `undefined` at the beginning. */
export function undoStep(history: History, present: Workspace): Step | undefined {
  const workspace = history.past.at(-1);
  if (!workspace) return undefined;
  const past = history.past.slice(0, -1);
  return { history: { past, future: [...history.future, present] }, workspace };
}

/** One step forward again, or `undefined` when nothing was undone. */
export function redoStep(history: History, present: Workspace): Step | undefined {
  const workspace = history.future.at(-1);
  if (!workspace) return undefined;
  const future = history.future.slice(0, -1);
  return { history: { past: [...history.past, present], future }, workspace };
}
