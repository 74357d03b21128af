import { useEffect, useState } from 'react';

/** Milliseconds after which a value counts as resting: longer than a held key takes to repeat. */
const REST = 120;

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
