/** What of a route hangs on the progression it was asked for. */
import type { RouteGoal, Workspace } from './types.ts';

/** Below this fret a route that travels goes up, from it on it goes down, unless it is told where. */
const MIDDLE = 8;
const UP = 12;
const DOWN = 3;

/** Where a route travels that was not told: to the other half of the neck by the last bar. */
export function usualGoal({ position, instrument }: Workspace, bars: number): RouteGoal {
  const far = position < MIDDLE ? UP : DOWN;
  return { position: Math.min(far, instrument.frets), bar: Math.max(1, bars) };
}

/** The workspace without what only makes sense with its present progression. */
export function withoutText(workspace: Workspace): Workspace {
  const { routeTo: _goal, turn: _turn, compare: _compare, ...rest } = workspace;
  return { ...rest, pins: workspace.pins.length === 0 ? workspace.pins : [] };
}
