import { type RefObject, useEffect } from 'react';
import { fretUnder, type NeckLayout } from './layout.ts';

/** What the pointer does to the hand. */
interface DragSpec {
  readonly layout: NeckLayout | undefined;
  readonly position: number;
  readonly onPosition: (position: number) => void;
}

const HAND_FRETS = 4;

/** Where the hand goes when it was taken at `grabbed` frets from the index and the pointer is over `fret`. */
export const draggedTo = (fret: number, grabbed: number, frets: number): number =>
  Math.min(frets, Math.max(1, fret - grabbed));

const isButton = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest('button') !== null;

function fretAt(sheet: HTMLElement, event: PointerEvent | MouseEvent, layout: NeckLayout): number {
  const { left, top } = sheet.getBoundingClientRect();
  return fretUnder(layout, { x: event.clientX - left, y: event.clientY - top });
}

const holds = (position: number, fret: number): boolean =>
  fret >= position && fret < position + HAND_FRETS;

/** Follows the pointer until it is let go. */
function follow(sheet: HTMLElement, move: (event: PointerEvent) => void): void {
  const stop = new AbortController();
  const { signal } = stop;
  sheet.addEventListener('pointermove', move, { signal });
  for (const end of ['pointerup', 'pointercancel'] as const) {
    sheet.addEventListener(end, () => stop.abort(), { signal });
  }
}

/**
 * A press on the sheet leaves the focus where it is, so that the keys go on meaning what they meant;
 * only a field that was typed into lets go of it.
 */
function keepFocus(event: MouseEvent): void {
  event.preventDefault();
  const { activeElement } = document;
  if (activeElement instanceof HTMLElement && activeElement.matches('input, textarea'))
    activeElement.blur();
}

/** Lets the pointer drag the hand along the sheet, or set it with a click on any other fret. */
export function useHandDrag(ref: RefObject<HTMLElement | null>, spec: DragSpec): void {
  const { layout, position, onPosition } = spec;
  useEffect(() => {
    const sheet = ref.current;
    if (sheet === null || layout === undefined) return undefined;
    const grab = (event: PointerEvent) => {
      const fret = fretAt(sheet, event, layout);
      if (event.button !== 0 || isButton(event.target) || !holds(position, fret)) return;
      sheet.setPointerCapture(event.pointerId);
      follow(sheet, (moved) =>
        onPosition(draggedTo(fretAt(sheet, moved, layout), fret - position, layout.spec.frets)),
      );
    };
    const set = (event: MouseEvent) => {
      // A click that a tone has taken is not for the hand.
      if (event.defaultPrevented || isButton(event.target)) return;
      const fret = fretAt(sheet, event, layout);
      if (!holds(position, fret)) onPosition(fret);
    };
    sheet.addEventListener('pointerdown', grab);
    sheet.addEventListener('click', set);
    sheet.addEventListener('mousedown', keepFocus);
    return () => {
      sheet.removeEventListener('pointerdown', grab);
      sheet.removeEventListener('click', set);
      sheet.removeEventListener('mousedown', keepFocus);
    };
  }, [ref, layout, position, onPosition]);
}
