/** Keeping work in the browser. The only impure file of the room; what it writes to is handed in. */
import { err, ok, type Result } from '#theory';
import type { Workspace } from './types.ts';
import { makeWorkspace, parseWorkspace } from './workspace-json.ts';

/** What `localStorage` offers, as far as it is needed. Any of it may throw. */
export interface StorageLike {
  readonly getItem: (key: string) => string | null;
  readonly setItem: (key: string, value: string) => void;
}

export const WORK_KEY = 'handspan.work';
/** Work that an opened link took the place of, the latest last. */
export const ASIDE_KEY = 'handspan.aside';
/** Kept work that could not be read, as it was. */
export const UNREAD_KEY = 'handspan.unread';
export const MOST_ASIDE = 5;

/** `full`: no room left. `forbidden`: the browser does not let the page keep anything. */
export interface StorageError {
  readonly code: 'full' | 'forbidden';
}

/** What was found. `unread` names what of it made no sense; it is copied to a key of its own. */
export interface Kept {
  readonly workspace?: Workspace;
  readonly aside: readonly Workspace[];
  readonly unread: readonly string[];
  /** Why that copy failed: nothing must be written over what was found. */
  readonly uncopied?: StorageError;
}

const nameOf = (error: unknown): unknown =>
  typeof error === 'object' && error !== null && 'name' in error ? error.name : undefined;

function attempt<T>(work: () => T): Result<T, StorageError> {
  try {
    return ok(work());
  } catch (error) {
    return err({ code: nameOf(error) === 'QuotaExceededError' ? 'full' : 'forbidden' });
  }
}

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const NOTHING: Kept = { aside: [], unread: [] };

function readWork(text: string): Kept {
  const read = parseWorkspace(fromJson(text));
  if (!read.ok) return { aside: [], unread: ['everything'] };
  return { workspace: read.value.workspace, aside: [], unread: read.value.refused };
}

function readAside(text: string | null): readonly Workspace[] {
  const list = text === null ? [] : fromJson(text);
  if (!Array.isArray(list)) return [];
  return list.flatMap((item) => {
    const read = parseWorkspace(item);
    return read.ok ? [read.value.workspace] : [];
  });
}

/** Copies the first free of nine places is enough: the same text is not kept twice. */
function keepUnread(storage: StorageLike, text: string): void {
  const keys = Array.from({ length: 9 }, (_, i) =>
    i === 0 ? UNREAD_KEY : `${UNREAD_KEY}.${i + 1}`,
  );
  if (keys.some((key) => storage.getItem(key) === text)) return;
  const free = keys.find((key) => storage.getItem(key) === null) ?? UNREAD_KEY;
  storage.setItem(free, text);
}

function withCopy(storage: StorageLike, text: string, read: Kept): Kept {
  if (read.unread.length === 0) return read;
  const copied = attempt(() => keepUnread(storage, text));
  return copied.ok ? read : { ...read, uncopied: copied.error };
}

/**
 * Reads what was kept. Text of which something made no sense is copied to a key of its own before
 * anything is written over it. `open` gives the storage and may itself throw.
 */
export function loadKept(open: () => StorageLike): Result<Kept, StorageError> {
  return attempt(() => {
    const storage = open();
    const text = storage.getItem(WORK_KEY);
    const read = text === null ? NOTHING : withCopy(storage, text, readWork(text));
    return { ...read, aside: readAside(storage.getItem(ASIDE_KEY)) };
  });
}

/** Keeps the present work. */
export const saveWork = (
  open: () => StorageLike,
  workspace: Workspace,
): Result<void, StorageError> =>
  attempt(() => open().setItem(WORK_KEY, JSON.stringify(makeWorkspace(workspace))));

/** Keeps work that a link took the place of; the oldest of more than `MOST_ASIDE` goes. */
export const saveAside = (
  open: () => StorageLike,
  aside: readonly Workspace[],
): Result<void, StorageError> =>
  attempt(() => {
    const kept = aside.slice(-MOST_ASIDE).map(makeWorkspace);
    open().setItem(ASIDE_KEY, JSON.stringify(kept));
  });
