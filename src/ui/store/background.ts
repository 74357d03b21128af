/** What the program does between what people do. */
import type { Page } from './page.ts';
import { startPlanning } from './planning.ts';
import { makeReady } from './ready.ts';
import type { AppState } from './types.ts';
import type { Cell } from './zustand.ts';

/** Milliseconds without a change after which there seems to be nothing else to do. */
export const REST = 100;

/** Makes studies ready, one at a time, while nothing changes. Returns the way to stop. */
export function startReadying(cell: Cell<AppState>, page: Page): () => void {
  let callOff: (() => void) | undefined;
  let seen: AppState | undefined;
  const work = (): void => {
    const state = cell.get();
    const rests = state === seen;
    seen = state;
    const more = !rests || makeReady(state);
    callOff = more ? page.idly(work, rests ? 0 : REST) : undefined;
  };
  // A timer for every move of a held key would cost more than it is worth: one looks again when it is over.
  const wake = (): void => {
    callOff ??= page.idly(work, REST);
  };
  const unwatch = cell.watch(wake);
  wake();
  return () => {
    unwatch();
    callOff?.();
  };
}

/** Begins all of it for a store. Returns the way to stop. */
export function startBackground(cell: Cell<AppState>, page: Page): () => void {
  const stops = [startPlanning(cell, page), startReadying(cell, page)];
  return () => {
    for (const stop of stops) stop();
  };
}
