/** How components get at the store. */
import { createContext, use } from 'react';
import type { StudyStore } from './app.ts';
import type { Intents } from './intents.ts';
import type { AppState } from './types.ts';

/** The store of the page; `<StudyStoreContext value={store}>` around everything. */
export const StudyStoreContext = createContext<StudyStore | undefined>(undefined);

/** The store itself, for handlers that read the state when they run. Throws outside the context. */
export function useStudyStore(): StudyStore {
  const store = use(StudyStoreContext);
  if (!store) throw new Error('no StudyStoreContext around this component');
  return store;
}

/**
 * What a component needs from the state; it renders again only when that changes by reference, so
 * `select` must pick and not build.
 */
export const useStudy = <T>(select: (state: AppState) => T): T =>
  useStudyStore().cell.useSelected(select);

/** What a person can do; stable for the life of the store. */
export const useIntents = (): Intents => useStudyStore().intents;
