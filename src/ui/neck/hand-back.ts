/** A neck that was scrolled away from the hand comes back to it with the next chord. */
import { useEffect } from 'react';
import { useStudyStore } from '../store/index.ts';
import { centreHand } from './in-view.ts';

/** Pixels: what rounding makes of an edge. */
const ROUNDING = 1;

function bringBack(pane: HTMLElement): void {
  const hand = pane.querySelector('.hand-wash')?.getBoundingClientRect();
  if (hand === undefined) return;
  const { top, bottom } = pane.getBoundingClientRect();
  const inView = hand.top >= top - ROUNDING && hand.bottom <= bottom + ROUNDING;
  if (!inView) centreHand(pane);
}

/** Whether the pane may have been scrolled since it was last asked; not while a finger lies on it. */
function watchScrolling(pane: HTMLElement, signal: AbortSignal): () => boolean {
  const options = { signal, passive: true };
  let scrolled = true;
  let touched = false;
  pane.addEventListener('scroll', () => (scrolled = true), options);
  pane.addEventListener('touchstart', () => (touched = true), options);
  for (const end of ['touchend', 'touchcancel'] as const)
    window.addEventListener(end, () => (touched = false), options);
  return () => {
    const asked = scrolled && !touched;
    if (asked) scrolled = false;
    return asked;
  };
}

/** Measures only after the pane was scrolled, and then at the end of the frame: a move stays as cheap. */
export function useHandBack(): void {
  const { cell } = useStudyStore();
  useEffect(() => {
    const pane = document.querySelector<HTMLElement>('.neck-pane');
    if (pane === null) return undefined;
    const stop = new AbortController();
    const mayBeAway = watchScrolling(pane, stop.signal);
    const unwatch = cell.watch(({ study }, before) => {
      if (study.cursor !== before.study.cursor && mayBeAway())
        requestAnimationFrame(() => bringBack(pane));
    });
    return () => {
      stop.abort();
      unwatch();
    };
  }, [cell]);
}
