import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Width of an element, the size of its type and the height of the window, in CSS pixels. */
export interface Size {
  readonly width: number;
  readonly em: number;
  readonly sight: number;
}

/** Pixels; what browsers take when nothing else is said. */
const USUAL_TYPE = 16;

const sizeOf = (element: HTMLElement): Size => ({
  width: Math.floor(element.clientWidth),
  em: Number.parseFloat(getComputedStyle(element).fontSize) || USUAL_TYPE,
  sight: window.innerHeight,
});

const sameSize = (a: Size | undefined, b: Size): boolean =>
  a?.width === b.width && a.em === b.em && a.sight === b.sight;

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
    window.addEventListener('resize', measure);
    return () => {
      observer.disconnect();
      window.removeEventListener('resize', measure);
    };
  }, []);
  return [ref, size];
}
