/** The store: the state, and the intents that change it. */
import { DEFAULT_WORKSPACE, type Workspace } from '#lesson';
import { type Intents, intentsOn } from './intents.ts';
import { startKeeping } from './keeping.ts';
import { lensEngine, whenLenses } from './lenses.ts';
import { NO_PAGE, type Page } from './page.ts';
import { refreshed, stateOf } from './state.ts';
import type { AppState } from './types.ts';
import { type Cell, createCell } from './zustand.ts';

export interface StudyStore {
  readonly cell: Cell<AppState>;
  readonly intents: Intents;
}

/** Whether the workspace shows something that only the study lenses can compute. */
const asksForLenses = ({ route, lens, turn, compare, fingering }: Workspace): boolean =>
  route !== undefined ||
  lens !== 'none' ||
  turn !== undefined ||
  compare !== undefined ||
  fingering !== '';

/**
 * The study is made anew when the lenses arrive, and the work in the background begins; they are sent
 * for if they are wanted already. Returns the way to stop.
 */
function awaitLenses(cell: Cell<AppState>, page: Page): () => void {
  let stop: (() => void) | undefined;
  let over = false;
  whenLenses(() => {
    if (over) return;
    cell.update(refreshed);
    stop = lensEngine()?.startBackground(cell, page);
  }, asksForLenses(cell.get().workspace));
  return () => {
    over = true;
    stop?.();
  };
}

/** A store that begins with a workspace and keeps nothing. */
export function createStudyStore(
  workspace: Workspace = DEFAULT_WORKSPACE,
  page: Page = NO_PAGE,
): StudyStore {
  const cell = createCell(stateOf(workspace));
  awaitLenses(cell, page);
  return { cell, intents: intentsOn(cell, page) };
}

/** A store that begins with what was kept and with the address, and keeps both until `close`. */
export function openStudyStore(page: Page): StudyStore & { readonly close: () => void } {
  const cell = createCell(stateOf(DEFAULT_WORKSPACE));
  const stops = [startKeeping(cell, page), awaitLenses(cell, page)];
  const close = (): void => {
    for (const stop of stops) stop();
  };
  return { cell, intents: intentsOn(cell, page), close };
}
