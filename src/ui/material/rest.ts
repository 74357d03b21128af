import { useEffect, useState } from 'react';
import { type AppState, useStudyStore } from '../store/index.ts';

/** Milliseconds after which a value counts as resting: longer than a held key takes to repeat. */
const REST = 120;
/** For what nobody sees: longer than it takes to press a key again. */
const REST_UNSEEN = 400;

/**
 * A value that follows when the given one has rested, so that what changes with every move of the
 * cursor costs nothing while a key is held down.
 */
export function useRested<T>(value: T, delay: number = REST): T {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRested(() => value), delay);
    return () => clearTimeout(timer);
  }, [value, delay]);
  return rested;
}

/**
 * What `select` takes out of the state when that has rested. Unlike a rested value it does not even
 * render what shows it before. Where it is not `seen` it takes its time.
 */
export function useStudyAtRest<T>(select: (state: AppState) => T, seen: boolean): T {
  const { cell } = useStudyStore();
  const [rested, setRested] = useState(() => select(cell.get()));
  useEffect(() => {
    const rest = seen ? REST : REST_UNSEEN;
    const follow = (): void => setRested(() => select(cell.get()));
    let timer: ReturnType<typeof setTimeout> | undefined;
    follow();
    const unwatch = cell.watch(() => {
      clearTimeout(timer);
      timer = setTimeout(follow, rest);
    });
    return () => {
      unwatch();
      clearTimeout(timer);
    };
  }, [cell, select, seen]);
  return rested;
}
