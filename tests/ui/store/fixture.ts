import { DEFAULT_WORKSPACE, type StorageLike, type Workspace } from '#lesson';
import { type Degree, parseDegree } from '#theory';
import {
  createStudyStore,
  type Intents,
  type Page,
  type PageEvent,
} from '../../../src/ui/store/index.ts';
import { stateOf } from '../../../src/ui/store/state.ts';
import type { AppState } from '../../../src/ui/store/types.ts';

/** The first visit with another progression and whatever else a test needs. */
export const workspace = (progression: string, more: Partial<Workspace> = {}): Workspace => ({
  ...DEFAULT_WORKSPACE,
  progression,
  ...more,
});

export const stateWith = (...given: Parameters<typeof workspace>): AppState =>
  stateOf(workspace(...given));

export function degree(text: string): Degree {
  const read = parseDegree(text);
  if (!read.ok) throw new Error(`not a degree: ${text}`);
  return read.value;
}

/** A page in memory: an address, a storage, a clock that stands still until it is told to go on. */
export function fakePage(hash = '', first: Readonly<Record<string, string>> = {}) {
  const kept = new Map(Object.entries(first));
  const listeners = new Map<PageEvent, () => void>();
  const waiting = new Map<() => void, number>();
  const idle = new Map<() => void, number>();
  const made = { hash, refusal: '', copied: '', copies: true, writes: 0 };
  const storage: StorageLike = {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => {
      if (made.refusal) throw new DOMException('no', made.refusal);
      made.writes += 1;
      kept.set(key, text);
    },
  };
  const page: Page = {
    href: () => `https://teacher.example/handspan/${made.hash}`,
    hash: () => made.hash,
    replaceHash: (text) => {
      made.hash = text;
    },
    openStorage: () => storage,
    copy: (text) => {
      made.copied = text;
      return made.copies ? Promise.resolve() : Promise.reject(new Error('no'));
    },
    listen: (event, listener) => {
      listeners.set(event, listener);
      return () => listeners.delete(event);
    },
    later: (work, ms) => {
      waiting.set(work, ms);
      return () => waiting.delete(work);
    },
    idly: (work, ms) => {
      idle.set(work, ms);
      return () => idle.delete(work);
    },
  };
  const run = (works: Map<() => void, number>): void => {
    const due = [...works.keys()];
    works.clear();
    for (const work of due) work();
  };
  const pass = (): void => run(waiting);
  const rest = (): void => run(idle);
  const fire = (event: PageEvent): void => listeners.get(event)?.();
  return { page, kept, made, listeners, waiting, idle, pass, rest, fire };
}

export type Act = (intents: Intents) => void;

function undoAll(store: ReturnType<typeof createStudyStore>): number {
  let steps = 0;
  for (; store.cell.get().canUndo; steps += 1) store.intents.undo();
  return steps;
}

/** What a person did, from a progression on; `undone` is how many steps it takes to take it back. */
export function acted(start: Workspace | string, ...acts: readonly Act[]) {
  const store = createStudyStore(typeof start === 'string' ? workspace(start) : start);
  const before = store.cell.get();
  for (const act of acts) act(store.intents);
  const state = store.cell.get();
  return { ...state, before, state, undone: undoAll(store) };
}
