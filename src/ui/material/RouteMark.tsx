import { memo } from 'react';
import { at, fretRange, type NeckLayout } from '../neck/layout.ts';
import { roman } from '../roman.ts';
import { useStudy } from '../store/index.ts';
import { arrowHead } from './overlay-marks.ts';

const FRETS_UNDER_HAND = 4;

function middle(layout: NeckLayout, position: number): number {
  const { from, to } = fretRange(layout, position, position + FRETS_UNDER_HAND - 1);
  return (from + to) / 2;
}

/** Where the hand goes from here: an arrow along its dimension line to the next position. */
export const RouteMark = memo(function RouteMark({ layout }: { readonly layout: NeckLayout }) {
  const here = useStudy(({ study }) => study.position);
  const next = useStudy(({ study }) => study.cells[study.nextOf[study.cursor] ?? -1]?.position);
  const isOn = useStudy(({ study }) => study.route !== undefined);
  if (!isOn || next === undefined || next === here) return null;
  const across = layout.numeral;
  const way = next > here ? 1 : -1;
  const from = at(layout, middle(layout, here) + way * layout.em * 1.6, across);
  const tip = at(layout, middle(layout, next) - way * layout.em * 0.2, across);
  const label = at(layout, middle(layout, next) + way * layout.em * 1.1, across);
  return (
    <g className="route-mark">
      <path d={`M${from.x} ${from.y}L${tip.x} ${tip.y}${arrowHead(from, tip, 8)}`} />
      <text x={label.x} y={label.y} dy="0.35em">
        {roman(next)}
      </text>
    </g>
  );
});
