/** What a page begins with: kept work, and the address if it says something. */
import {
  DEFAULT_WORKSPACE,
  type Kept,
  loadKept,
  parseAddress,
  type ReadAddress,
  type StorageError,
  sameWork,
  type Workspace,
} from '#lesson';
import type { Result } from '#theory';
import type { Page } from './page.ts';
import { glance, notify, stateOf, step } from './state.ts';
import type { AppState, Notice } from './types.ts';

const NOTHING: Kept = { aside: [], unread: [] };

const CANNOT_KEEP = {
  full: 'There is no room left to keep your work in this browser',
  forbidden: 'This browser does not let the page keep your work',
} as const;

/** Says that work cannot be kept; the link still carries most of it. */
export const storageNotice = ({ code }: StorageError): Notice => ({
  id: 'storage',
  tone: 'error',
  text: `${CANNOT_KEEP[code]}. Everything goes on; copy the link to have it again later.`,
});

const linkNotice = (leftOut: readonly string[]): Notice => ({
  id: 'link',
  tone: 'error',
  text: `Left out of the link: ${leftOut.join('; ')}.`,
});

const UNDO_NOTICE: Notice = {
  id: 'aside',
  tone: 'info',
  text: 'This is the work of the link. Undo brings back your own.',
};

const unreadNotice = (unread: readonly string[]): Notice => ({
  id: 'unread',
  tone: 'error',
  text: `Of your kept work this could not be read and is as at first: ${unread.join(', ')}.`,
});

function withLinkNotices(state: AppState, read: ReadAddress, isOther: boolean): AppState {
  const told = read.leftOut.length > 0 ? notify(state, linkNotice(read.leftOut)) : state;
  return isOther ? notify(told, UNDO_NOTICE) : told;
}

function withKeptNotices(state: AppState, kept: Result<Kept, StorageError>): AppState {
  const failure = failureOf(kept);
  const told = failure ? notify(state, storageNotice(failure)) : state;
  const unread = kept.ok ? kept.value.unread : [];
  return unread.length > 0 ? notify(told, unreadNotice(unread)) : told;
}

const failureOf = (kept: Result<Kept, StorageError>): StorageError | undefined =>
  kept.ok ? kept.value.uncopied : kept.error;

/** What the page begins with, and the work that is set aside for it. */
export interface Opening {
  readonly state: AppState;
  readonly aside: readonly Workspace[];
  /** Whether work can be kept without writing over something that could not be read. */
  readonly keeps: boolean;
}

const saysNothing = (hash: string): boolean => hash === '' || hash === '#';

/**
 * Reads what was kept, then the address. Where an address asks for other work than was kept, it is
 * shown, and the kept work is one undo away, now and after the next opening.
 */
export function openingOf(page: Page): Opening {
  const kept = loadKept(page.openStorage);
  const { workspace: saved, aside } = kept.ok ? kept.value : NOTHING;
  const base = saved ?? DEFAULT_WORKSPACE;
  const hash = page.hash();
  const read = saysNothing(hash) ? { workspace: base, leftOut: [] } : parseAddress(hash, base);
  const isOther = saved !== undefined && !sameWork(read.workspace, saved);
  const left = isOther ? [...aside, saved] : aside;
  const past = left.filter((work) => !sameWork(work, read.workspace));
  const state = withKeptNotices(stateOf(read.workspace, past), kept);
  return { state: withLinkNotices(state, read, isOther), aside: past, keeps: !failureOf(kept) };
}

const sameMoment = (a: Workspace, b: Workspace): boolean =>
  a.at.bar === b.at.bar && a.at.beat === b.at.beat;

/**
 * Takes over an address that came while the page is open: edited by hand, or a link that was pasted.
 * Undo leads back.
 */
export function openAddress(state: AppState, hash: string): AppState {
  if (saysNothing(hash)) return state;
  const read = parseAddress(hash, state.workspace);
  const isOther = !sameWork(read.workspace, state.workspace);
  if (isOther) return withLinkNotices(step(state, read.workspace), read, true);
  const moved = sameMoment(read.workspace, state.workspace) ? state : glance(state, read.workspace);
  return withLinkNotices(moved, read, false);
}
