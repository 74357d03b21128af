/** Keeps the address and the browser's storage in step with the workspace. */
import {
  makeAddress,
  type StorageError,
  sameWork,
  saveAside,
  saveWork,
  type Workspace,
} from '#lesson';
import type { Result } from '#theory';
import { openAddress, openingOf, storageNotice } from './opening.ts';
import type { Page } from './page.ts';
import { dismissNotice, notify } from './state.ts';
import type { AppState } from './types.ts';
import type { Cell } from './zustand.ts';

/** Milliseconds without a change before it is written: a held key is one write. */
export const PATIENCE = 250;

/** What is written where, and what has been said about it. */
interface Keeper {
  readonly page: Page;
  readonly cell: Cell<AppState>;
  /** False if storage failed at the start: nothing is written to it then. */
  readonly keeps: boolean;
  aside: readonly Workspace[];
  written: Workspace | undefined;
  failed: boolean;
  callOff: (() => void) | undefined;
}

/** Said once; taken back when keeping works again. */
function report(keeper: Keeper, result: Result<void, StorageError>): void {
  if (result.ok === !keeper.failed) return;
  keeper.failed = !result.ok;
  keeper.cell.update((state) =>
    result.ok ? dismissNotice(state, 'storage') : notify(state, storageNotice(result.error)),
  );
}

/** Some browsers allow only so many changes of the address in a while; the next one makes up for it. */
function writeAddress(page: Page, workspace: Workspace): void {
  try {
    page.replaceHash(`#${makeAddress(workspace)}`);
  } catch {
    return;
  }
}

/** Work that was set aside and is on the neck again is not aside any more. */
function keepAside(keeper: Keeper, workspace: Workspace): Result<void, StorageError> {
  const aside = keeper.aside.filter((work) => !sameWork(work, workspace));
  if (aside.length === keeper.aside.length) return { ok: true, value: undefined };
  keeper.aside = aside;
  return saveAside(keeper.page.openStorage, aside);
}

function write(keeper: Keeper): void {
  keeper.callOff?.();
  keeper.callOff = undefined;
  const { workspace } = keeper.cell.get();
  if (workspace === keeper.written) return;
  keeper.written = workspace;
  writeAddress(keeper.page, workspace);
  if (!keeper.keeps) return;
  const aside = keepAside(keeper, workspace);
  report(keeper, aside.ok ? saveWork(keeper.page.openStorage, workspace) : aside);
}

function writeSoon(keeper: Keeper): void {
  keeper.callOff?.();
  keeper.callOff = keeper.page.later(() => write(keeper), PATIENCE);
}

/** Sets the work aside that an address takes the place of. */
function setAside(keeper: Keeper, before: Workspace): void {
  if (!keeper.keeps || sameWork(before, keeper.cell.get().workspace)) return;
  keeper.aside = [...keeper.aside, before];
  report(keeper, saveAside(keeper.page.openStorage, keeper.aside));
}

/** Another address came: what is not written yet must not be written over it. */
function readAddress(keeper: Keeper): void {
  keeper.callOff?.();
  const { workspace } = keeper.cell.get();
  keeper.cell.update((state) => openAddress(state, keeper.page.hash()));
  setAside(keeper, workspace);
  writeSoon(keeper);
}

/**
 * Puts kept work and the address into a store, and from then on keeps both up to date: a moment
 * after every change, and at once when the page is left. Returns the way to stop.
 */
export function startKeeping(cell: Cell<AppState>, page: Page): () => void {
  const { state, aside, keeps } = openingOf(page);
  cell.update(() => state);
  const unwritten = { written: undefined, failed: false, callOff: undefined };
  const keeper: Keeper = { page, cell, keeps, aside, ...unwritten };
  if (keeps && aside.length > 0) report(keeper, saveAside(page.openStorage, aside));
  const flush = () => write(keeper);
  const stops = [
    cell.watch((now, before) => {
      if (now.workspace !== before.workspace) writeSoon(keeper);
    }),
    page.listen('hashchange', () => readAddress(keeper)),
    page.listen('pagehide', flush),
    page.listen('visibilitychange', flush),
    () => keeper.callOff?.(),
  ];
  writeSoon(keeper);
  return () => {
    for (const stop of stops) stop();
  };
}
