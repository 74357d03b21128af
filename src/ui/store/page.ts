/** What the store needs of the page it runs in, so that tests can do without one. */
import type { StorageLike } from '#lesson';

export type PageEvent = 'hashchange' | 'pagehide' | 'visibilitychange';

export interface Page {
  /** The address, whole and its part from `#` on. */
  readonly href: () => string;
  readonly hash: () => string;
  /** Puts another part behind `#` without a step in the browser's history. May throw. */
  readonly replaceHash: (hash: string) => void;
  /** May throw where the browser forbids it. */
  readonly openStorage: () => StorageLike;
  readonly copy: (text: string) => Promise<void>;
  readonly listen: (event: PageEvent, listener: () => void) => () => void;
  /** Runs `work` once after `ms` milliseconds unless it is called off by what it returns. */
  readonly later: (work: () => void, ms: number) => () => void;
  /** As `later`, for what nobody waits for. */
  readonly idly: (work: () => void, ms: number) => () => void;
}

/** The page of a browser window. */
export function pageOf(window: Window): Page {
  const { location, document } = window;
  const later: Page['later'] = (work, ms) => {
    const timer = window.setTimeout(work, ms);
    return () => window.clearTimeout(timer);
  };
  return {
    href: () => location.href,
    hash: () => location.hash,
    replaceHash: (hash) => window.history.replaceState(window.history.state, '', hash),
    openStorage: () => window.localStorage,
    copy: (text) => window.navigator.clipboard.writeText(text),
    listen: (event, listener) => {
      const target = event === 'visibilitychange' ? document : window;
      target.addEventListener(event, listener);
      return () => target.removeEventListener(event, listener);
    },
    later,
    idly: later,
  };
}

const nothing = (): void => undefined;

/** No page at all: nothing is found, nothing is kept, nothing can be copied. */
export const NO_PAGE: Page = {
  href: () => '',
  hash: () => '',
  replaceHash: nothing,
  openStorage: () => ({ getItem: () => null, setItem: nothing }),
  copy: () => Promise.reject(new Error('there is no page to copy from')),
  listen: () => nothing,
  later: () => nothing,
  idly: () => nothing,
};
