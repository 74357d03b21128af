/** The study lenses are no part of the first load: they come at the first sign of life, or a little after the page stands. */
import { useEffect, useState, useSyncExternalStore } from 'react';
import { lensesComeBy, useStudy } from '../store/index.ts';

type Parts = typeof import('./parts.ts');

/** `failed`: it could not be fetched; the next call asks again. */
type Loading = Parts | 'failed' | undefined;

let loading: Loading;
let asked = false;
const watchers = new Set<() => void>();

function settle(next: Loading): void {
  loading = next;
  for (const watcher of watchers) watcher();
}

function arrive(parts: Parts): void {
  parts.installParts();
  settle(parts);
}

function fetchParts(): void {
  if (asked) return;
  asked = true;
  import('./parts.ts').then(arrive, () => {
    asked = false;
    settle('failed');
  });
}

function watch(watcher: () => void): () => void {
  watchers.add(watcher);
  return () => watchers.delete(watcher);
}

const now = (): Loading => loading;

/** The lenses once they are there. */
export function useParts(): Parts | undefined {
  const parts = useSyncExternalStore(watch, now);
  return parts === 'failed' ? undefined : parts;
}

/** What is drawn over, laid over and shown below the neck by the lens that is on; its pens. */
export function useNeckLayers() {
  const parts = useParts();
  const {
    Overlay: overlay,
    FingerBoard: board,
    UnderNeck: below,
    FormMap: map,
    DrawnAhead: ahead,
    PENS: pens,
  } = parts ?? {};
  return { overlay, board, below, map, ahead, pens };
}

/** Keeps the room of the row until it is there. */
const ROOM = { minHeight: '3.25rem' };

const FIRST_SIGNS = ['pointermove', 'pointerdown', 'keydown', 'focusin'] as const;

/** Milliseconds after which they are fetched unasked: long after the first view stands. */
const UNASKED = 1500;

/** Fetches at the first sign of life, or when the page has been at rest for a while. */
function fetchLater(): () => void {
  const stop = (): void => {
    clearTimeout(timer);
    for (const sign of FIRST_SIGNS) window.removeEventListener(sign, fetchNow);
  };
  const fetchNow = (): void => {
    stop();
    fetchParts();
  };
  const timer = setTimeout(fetchNow, UNASKED);
  for (const sign of FIRST_SIGNS) window.addEventListener(sign, fetchNow, { passive: true });
  lensesComeBy(fetchNow);
  return stop;
}

/** The row of lenses and what each of them opens. */
export function Lenses() {
  const parts = useSyncExternalStore(watch, now);
  const lens = useStudy(({ workspace }) => workspace.lens);
  const [kept] = useState(lens);
  useEffect(fetchLater, []);
  if (parts === 'failed') {
    return (
      <p className="lenses-failed" role="alert">
        “Study” could not be fetched.{' '}
        <button type="button" onClick={fetchParts}>
          Try again
        </button>
      </p>
    );
  }
  return parts === undefined ? (
    <div className="lenses" style={ROOM} />
  ) : (
    <parts.LensSection kept={kept} />
  );
}
