/** In a low window the neck is brought into sight when the music begins: it is what one plays by. */
import { useEffect } from 'react';
import { useSounding } from './players.ts';

/** Windows that cannot hold the sheet down to the neck, as in the styles. */
const LOW = '(max-height: 30em)';
const STILL = '(prefers-reduced-motion: reduce)';

const isInSight = ({ top, bottom }: DOMRect): boolean => top >= 0 && bottom <= window.innerHeight;

/** Scrolls to chord and neck if the neck is out of sight. */
function lookAtNeck(): void {
  const neck = document.querySelector('[data-neck]')?.getBoundingClientRect();
  if (neck === undefined || !window.matchMedia(LOW).matches || isInSight(neck)) return;
  const behavior = window.matchMedia(STILL).matches ? 'instant' : 'smooth';
  document.querySelector('.head-slot')?.scrollIntoView({ block: 'start', behavior });
}

export function useNeckInSight(): void {
  const playing = useSounding(({ phase }) => phase === 'playing');
  useEffect(() => {
    if (playing) lookAtNeck();
  }, [playing]);
}
