import { memo } from 'react';
import { at, box, middleOf, type NeckLayout, type Point } from './layout.ts';

/** Single and double inlays as on most necks (common practice). */
const INLAYS = [3, 5, 7, 9, 15, 17, 19, 21, 27];
const DOUBLE_INLAYS = [12, 24];

const line = (a: Point, b: Point) => ({ x1: a.x, y1: a.y, x2: b.x, y2: b.y });

const first = (layout: NeckLayout): number => layout.lines[0] ?? 0;
const last = (layout: NeckLayout): number => layout.lines[layout.lines.length - 1] ?? 0;

function Inlays({ layout }: { readonly layout: NeckLayout }) {
  const middle = (first(layout) + last(layout)) / 2;
  const dots = [
    ...INLAYS.map((fret) => [fret, 0]),
    ...DOUBLE_INLAYS.flatMap((fret) => [
      [fret, -layout.gap],
      [fret, layout.gap],
    ]),
  ];
  return dots.flatMap(([fret = 0, off = 0]) => {
    if (fret > layout.spec.frets) return [];
    const { x, y } = at(layout, middleOf(layout, fret), middle + off);
    return [<circle key={`${fret}${off}`} className="inlay" cx={x} cy={y} r={layout.em * 0.22} />];
  });
}

function Wires({ layout }: { readonly layout: NeckLayout }) {
  return layout.wires.map((along, fret) => (
    <line
      key={along}
      className={fret === 0 ? 'nut' : 'wire'}
      {...line(at(layout, along, first(layout)), at(layout, along, last(layout)))}
    />
  ));
}

/** Thicker lines for thicker strings, from 1 to about 2.6 px. */
const thickness = (gauge: number, em: number): number =>
  Math.min(2.8, 0.7 + gauge / 28) * (em / 16);

interface BoardProps {
  readonly layout: NeckLayout;
  /** Name and gauge (thousandths of an inch) of every open string, string 1 first. */
  readonly strings: readonly { readonly name: string; readonly gauge: number }[];
  readonly capo: number;
}

function Strings({ layout, strings }: BoardProps) {
  const end = layout.wires[layout.wires.length - 1] ?? 0;
  return strings.map(({ name, gauge }, i) => {
    const across = layout.lines[i] ?? 0;
    const label = at(layout, layout.names, across);
    return (
      <g key={across}>
        <line
          className="string"
          strokeWidth={thickness(gauge, layout.em)}
          {...line(at(layout, layout.open, across), at(layout, end, across))}
        />
        <text className="string-name" x={label.x} y={label.y} dy="0.35em">
          {name}
        </text>
      </g>
    );
  });
}

function Capo({ layout, capo }: BoardProps) {
  if (capo === 0) return null;
  const along = middleOf(layout, capo);
  const half = layout.em * 0.3;
  const room = layout.gap * 0.4;
  const bar = box(
    layout,
    { from: along - half, to: along + half },
    { from: first(layout) - room, to: last(layout) + room },
  );
  return <rect className="capo" rx={half} {...bar} />;
}

/** What does not change while one plays: wires, strings, inlays, capo, names of the open strings. */
export const Board = memo(function Board(props: BoardProps) {
  return (
    <g className="board">
      <Inlays layout={props.layout} />
      <Wires layout={props.layout} />
      <Strings {...props} />
      <Capo {...props} />
    </g>
  );
});
