import { memo, type PointerEvent, useMemo } from 'react';
import type { NeckLayout } from '../neck/layout.ts';
import { roman } from '../roman.ts';
import { type RouteStudy, useIntents, useStudy } from '../store/index.ts';
import { type Ladder, ladderOf, ladderRoom, namedRungs, type Rung, stepAtDepth } from './ladder.ts';

interface LadderProps {
  readonly layout: NeckLayout;
}

const TICK = 3;

/** A dimension line: the four frets of one position with a tick at either end. */
const rungPath = ({ from, to, y }: Rung): string =>
  `M${from} ${y}H${to}M${from} ${y - TICK}v${2 * TICK}M${to} ${y - TICK}v${2 * TICK}`;

interface RungsProps {
  readonly ladder: Ladder;
  readonly em: number;
}

/** Every form where there is room, else each position where the hand comes to it. */
const Rungs = memo(function Rungs({ ladder, em }: RungsProps) {
  const named = ladder.lettered ? ladder.rungs : namedRungs(ladder, em);
  return (
    <>
      <path className="way" d={ladder.path} />
      <path className="rung" d={ladder.rungs.map(rungPath).join('')} />
      {named.map(({ step, to, y, form, position }) => (
        <text key={step} x={to} y={y} dx="0.5em" dy="0.35em">
          {ladder.lettered ? form : roman(position)}
        </text>
      ))}
    </>
  );
});

function CurrentRung({ ladder, step }: { readonly ladder: Ladder; readonly step: number }) {
  const rung = ladder.rungs.find((one) => one.step === step);
  return rung ? <path className="rung current" d={rungPath(rung)} /> : null;
}

interface DrawnProps extends LadderProps {
  readonly route: RouteStudy;
}

function DrawnLadder({ layout, route }: DrawnProps) {
  const cursor = useStudy(({ study }) => study.cursor);
  const { moveCursorTo } = useIntents();
  const width = layout.width;
  const stops = route.routes[route.chosen]?.stops;
  const ladder = useMemo(() => ladderOf(stops ?? [], layout, width), [stops, layout, width]);
  const scrub = (event: PointerEvent<SVGSVGElement>): void => {
    const y = event.clientY - event.currentTarget.getBoundingClientRect().top;
    const step = route.steps[stepAtDepth(ladder, y, route.steps.length)];
    if (step) moveCursorTo(step.cell);
  };
  return (
    <svg
      className="route-ladder"
      width={width}
      height={ladder.height}
      viewBox={`0 0 ${width} ${ladder.height}`}
      role="img"
      aria-label={`The way of the hand: ${ladder.rungs.length} positions, one line for each chord from the first down`}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        scrub(event);
      }}
      onPointerMove={(event) => event.buttons > 0 && scrub(event)}
    >
      <Rungs ladder={ladder} em={layout.em} />
      <CurrentRung ladder={ladder} step={route.stepOf[cursor] ?? -1} />
    </svg>
  );
}

/** The way through the whole progression under the neck, fret for fret; it can be dragged along. */
export const RouteLadder = memo(function RouteLadder({ layout }: LadderProps) {
  const lens = useStudy(({ workspace }) => workspace.lens);
  const route = useStudy(({ study }) => study.route);
  if (lens !== 'route') return null;
  if (!route?.routes[route.chosen]) {
    // An upright neck has a pane of its own, whose height stays.
    const height = layout.spec.upright ? 0 : Math.ceil(ladderRoom(layout));
    return <div className="route-ladder" style={{ height }} />;
  }
  return <DrawnLadder layout={layout} route={route} />;
});
