import { memo } from 'react';
import { roman } from '../roman.ts';
import {
  at,
  box,
  type Extent,
  fretRange,
  middleOf,
  type NeckLayout,
  type Point,
} from './layout.ts';

/** What the hand is over, in frets. */
export interface HandReach {
  readonly position: number;
  /** Lowest and highest fret it can stretch to. */
  readonly low: number;
  readonly high: number;
}

const line = (a: Point, b: Point) => ({ x1: a.x, y1: a.y, x2: b.x, y2: b.y });

const HAND_FRETS = 4;

const underHand = (layout: NeckLayout, { position }: HandReach): Extent =>
  fretRange(layout, position, position + HAND_FRETS - 1);

/** The tint behind the frets under the hand. It lies below strings and tones. */
export const HandWash = memo(function HandWash(props: {
  readonly layout: NeckLayout;
  readonly hand: HandReach;
}) {
  const { layout, hand } = props;
  const over = layout.gap * 0.5;
  const top = (layout.lines[0] ?? 0) - over;
  const end = (layout.lines[layout.lines.length - 1] ?? 0) + over;
  return (
    <rect className="hand-wash" {...box(layout, underHand(layout, hand), { from: top, to: end })} />
  );
});

function Extension({ layout, along }: { readonly layout: NeckLayout; readonly along: number }) {
  const top = (layout.lines[0] ?? 0) - layout.gap * 0.5;
  const foot = layout.dimension + layout.em * 0.5;
  return <line className="extension" {...line(at(layout, along, top), at(layout, along, foot))} />;
}

/** The slanted tick that ends a dimension line. */
function Tick({ layout, along }: { readonly layout: NeckLayout; readonly along: number }) {
  const { x, y } = at(layout, along, layout.dimension);
  const r = layout.em * 0.36;
  return <line className="dimension-tick" x1={x - r} y1={y + r} x2={x + r} y2={y - r} />;
}

function Fingers({ layout, hand }: { readonly layout: NeckLayout; readonly hand: HandReach }) {
  return [0, 1, 2, 3].flatMap((step) => {
    const fret = hand.position + step;
    if (fret > layout.spec.frets) return [];
    const { x, y } = at(layout, middleOf(layout, fret), layout.fingers);
    return [
      <text key={step} className="finger" x={x} y={y} dy="0.35em">
        {step + 1}
      </text>,
    ];
  });
}

/** Letters of a numeral that have room beside an upright neck; longer ones lie along it. */
const STANDING = 2;

interface NumeralProps {
  readonly layout: NeckLayout;
  readonly along: number;
  readonly children: string;
}

function Numeral({ layout, along, children }: NumeralProps) {
  const { x, y } = at(layout, along, layout.numeral);
  const { upright } = layout.spec;
  // Half of the widest one: at the end of a lying neck the hand reaches beyond what is drawn.
  const half = upright ? 0 : layout.em * 1.75;
  const lies = upright && children.length > STANDING;
  return (
    <text
      className={upright ? 'numeral upright' : 'numeral'}
      dy="0.35em"
      x={Math.max(half, Math.min(x, layout.width - half))}
      y={y}
      transform={lies ? `rotate(-90 ${x} ${y})` : undefined}
    >
      {children}
    </text>
  );
}

/** The hand as a dimension: where it lies, which finger rests on which fret, how far it stretches. */
export const Hand = memo(function Hand(props: {
  readonly layout: NeckLayout;
  readonly hand: HandReach;
  /** Whether a finger is written under every fret; not where the fingers of a grip are shown. */
  readonly numbered: boolean;
}) {
  const { layout, hand, numbered } = props;
  const { from, to } = underHand(layout, hand);
  const far = fretRange(layout, Math.max(1, hand.low), hand.high);
  const on = (along: number) => at(layout, along, layout.dimension);
  return (
    <g className="hand">
      <Extension layout={layout} along={from} />
      <Extension layout={layout} along={to} />
      {far.from < from && <line className="stretch-line" {...line(on(from), on(far.from))} />}
      {far.to > to && <line className="stretch-line" {...line(on(to), on(far.to))} />}
      <line className="dimension-line" {...line(on(from), on(to))} />
      <Tick layout={layout} along={from} />
      <Tick layout={layout} along={to} />
      {numbered && <Fingers layout={layout} hand={hand} />}
      <Numeral layout={layout} along={(from + to) / 2}>
        {roman(hand.position)}
      </Numeral>
    </g>
  );
});
