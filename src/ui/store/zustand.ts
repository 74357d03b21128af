/** The one place that knows the store library. */
import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';

/** A value that can be watched. `update` notifies only if `change` gives another reference. */
export interface Cell<T> {
  readonly get: () => T;
  readonly update: (change: (value: T) => T) => void;
  /** Calls back after every change; returns the way to stop. */
  readonly watch: (listener: (value: T, before: T) => void) => () => void;
  /** React: what `select` takes out of the value, rendering again when that changes. */
  readonly useSelected: <U>(select: (value: T) => U) => U;
}

export function createCell<T>(initial: T): Cell<T> {
  const store = createStore<T>()(() => initial);
  return {
    get: store.getState,
    update: (change) => store.setState(change, true),
    watch: store.subscribe,
    useSelected: (select) => useStore(store, select),
  };
}
