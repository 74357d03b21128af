/** Plans long routes slice by slice, so that the page stays awake. */
import { laterIntents } from './intents-later.ts';
import type { Page } from './page.ts';
import type { AppState } from './types.ts';
import type { Cell } from './zustand.ts';

/**
 * Takes the plan in the state further, one slice at a time, until it is made or given up. A plan that
 * the state no longer has is dropped with it. Returns the way to stop.
 */
export function startPlanning(cell: Cell<AppState>, page: Page): () => void {
  let callOff: (() => void) | undefined;
  const slice = (): void => {
    callOff = undefined;
    cell.update((state) => laterIntents()?.route.planOn(state) ?? state);
  };
  const look = (): void => {
    if (callOff || !cell.get().study.route?.plan) return;
    callOff = page.later(slice, 0);
  };
  const unwatch = cell.watch(look);
  look();
  return () => {
    unwatch();
    callOff?.();
  };
}
