/** Intents that move the cursor. Never a step of undo. */
import { cellAtOffset, momentOf } from './lane.ts';
import { glance, patched } from './state.ts';
import type { AppState } from './types.ts';

const lastIndex = (state: AppState): number => state.study.cells.length - 1;

/** Puts the cursor on the chord with an index in the lane; beyond the ends it stays at the end. */
export function moveCursorTo(state: AppState, index: number): AppState {
  const within = Math.max(0, Math.min(lastIndex(state), Math.round(index) || 0));
  const cell = state.study.cells[within];
  if (!cell || within === state.study.cursor) return state;
  return glance(state, patched(state.workspace, { at: momentOf(cell) }));
}

/** One chord on or back, or to the first or last. At an end it stays. */
export function moveCursor(state: AppState, by: 1 | -1 | 'start' | 'end'): AppState {
  if (by === 'start') return moveCursorTo(state, 0);
  if (by === 'end') return moveCursorTo(state, lastIndex(state));
  return moveCursorTo(state, state.study.cursor + by);
}

/** Puts the cursor on the chord at a caret in the typed text (UTF-16 units from 0). */
export function moveCursorToOffset(state: AppState, caret: number): AppState {
  const { cells, cursor } = state.study;
  const index = cellAtOffset(cells, caret);
  // The cells of a bar that repeats one share its `%`: the caret there does not take the cursor away.
  const here = cells[cursor]?.slot.span;
  const there = cells[index]?.slot.span;
  return here && here.at === there?.at ? state : moveCursorTo(state, index);
}
