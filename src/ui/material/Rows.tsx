import { type ReactNode, type RefObject, useEffect, useRef } from 'react';
import { hold, point } from './emphasis.ts';

const keyOf = (target: EventTarget | null): string | undefined =>
  target instanceof Element ? target.closest<HTMLElement>('[data-row]')?.dataset['row'] : undefined;

const STEPS: Readonly<Record<string, 1 | -1>> = { ArrowDown: 1, ArrowUp: -1 };

/** Arrow up and down walk along the rows; all other keys stay what they are everywhere. */
function walk(list: HTMLElement, event: KeyboardEvent): void {
  const step = STEPS[event.key];
  if (step === undefined || event.shiftKey) return;
  const rows = [...list.querySelectorAll<HTMLElement>('[data-row]')];
  const here = rows.findIndex((row) => row.contains(document.activeElement));
  event.preventDefault();
  event.stopPropagation();
  rows[here + step]?.focus();
}

function holdAt({ target }: Event): void {
  const key = keyOf(target);
  if (key !== undefined) hold(key);
}

/** One set of listeners for all rows: there are many, and they come and go with every chord. */
function useRowEvents(ref: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const list = ref.current;
    if (list === null) return undefined;
    const stop = new AbortController();
    const { signal } = stop;
    const pointAt = ({ target }: Event): void => point(keyOf(target));
    // A row that is scrolled under a pointer at rest is not pointed at.
    const movedAt = (event: PointerEvent): void => {
      if (event.movementX !== 0 || event.movementY !== 0) pointAt(event);
    };
    const pointAway = (): void => point(undefined);
    list.addEventListener('pointermove', movedAt, { signal });
    list.addEventListener('pointerleave', pointAway, { signal });
    list.addEventListener('focusin', pointAt, { signal });
    list.addEventListener('focusout', pointAway, { signal });
    list.addEventListener('click', holdAt, { signal });
    list.addEventListener('keydown', (event) => walk(list, event), { signal });
    return () => {
      stop.abort();
      pointAway();
    };
  }, [ref]);
}

/** A list whose rows are shown on the neck: the one pointed at, focused or tapped. */
export function Rows(props: {
  readonly label: string;
  readonly className: string;
  readonly children: ReactNode;
}) {
  const ref = useRef<HTMLOListElement>(null);
  useRowEvents(ref);
  return (
    <ol ref={ref} className={props.className} aria-label={props.label}>
      {props.children}
    </ol>
  );
}
