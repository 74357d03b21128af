import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Width of an element and the size of its type, in CSS pixels. */
export interface Size {
  readonly width: number;
  readonly em: number;
}

/** Pixels; what browsers take when nothing else is said. */
const USUAL_TYPE = 16;

const sizeOf = (element: HTMLElement): Size => ({
  width: Math.floor(element.clientWidth),
  em: Number.parseFloat(getComputedStyle(element).fontSize) || USUAL_TYPE,
});

const sameSize = (a: Size | undefined, b: Size): boolean => a?.width === b.width && a.em === b.em;

/** Measures an element before the first paint and whenever it changes. */
export function useSize<T extends HTMLElement>(): readonly [RefObject<T | null>, Size | undefined] {
  const ref = useRef<T>(null);
  const [size, setSize] = useState<Size>();
  useLayoutEffect(() => {
    const element = ref.current;
    if (element === null) return undefined;
    const measure = () => {
      const now = sizeOf(element);
      setSize((before) => (sameSize(before, now) ? before : now));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
