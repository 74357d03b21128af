import { memo, useEffect, useRef } from 'react';
import type { Place } from '#neck';
import { placeRadius } from '../material/overlay-marks.ts';
import { type NeckLayout, placeAt } from '../neck/layout.ts';
import { outlinePath } from '../neck/marks.ts';
import { usePlayer } from './players.ts';

/** Radius of the ring around a tone, in radii of a tone. */
const RING = 1.32;

const ringsOf = (layout: NeckLayout, places: readonly Place[]): string =>
  places
    .map(({ string, fret }) =>
      outlinePath('disc', RING * placeRadius(layout, fret), placeAt(layout, string, fret)),
    )
    .join('');

/** A ring around every tone that sounds: one path, drawn anew with every note without React. */
export const SoundMarks = memo(function SoundMarks({ layout }: { readonly layout: NeckLayout }) {
  const path = useRef<SVGPathElement>(null);
  const marked = usePlayer()?.marked;
  useEffect(() => {
    const draw = (): void => {
      const rings = marked === undefined ? '' : ringsOf(layout, marked.get());
      path.current?.setAttribute('d', rings);
    };
    draw();
    return marked?.watch(draw);
  }, [layout, marked]);
  return <path ref={path} className="sounding" data-sounding="" />;
});
