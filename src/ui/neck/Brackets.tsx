import { memo } from 'react';
import { formName } from '../form-text.ts';
import type { Pen } from '../type/pen.ts';
import { at, type Extent, fretRange, type NeckLayout, type Point } from './layout.ts';
import type { Bracket } from './places.ts';
import { remembered } from './remembered.ts';

/** Ems between the first string and the lowest row of brackets. */
const AIR = 0.95;

/** Along: where a bracket begins and ends; an open form reaches over the column of open strings. */
export function bracketExtent(layout: NeckLayout, { first, last }: Bracket): Extent {
  const { from, to } = fretRange(layout, Math.max(1, first), last);
  return { from: (first === 0 ? layout.open - layout.em * 0.8 : from) + 1, to: to - 1 };
}

/** Across: the row of a bracket. */
export function bracketRow(layout: NeckLayout, { level }: Bracket): Extent {
  const near = (layout.lines[0] ?? 0) - AIR * layout.em - level * layout.level;
  return { from: near - layout.level, to: near };
}

const to = ({ x, y }: Point): string => `L${x} ${y}`;
const from = ({ x, y }: Point): string => `M${x} ${y}`;

/** Path data: two ticks and the line between them, open in the middle for the letter. */
function bracketPath(layout: NeckLayout, along: Extent, middle: number): string {
  const tick = layout.em * 0.32;
  const gap = Math.min(layout.em * 0.75, (along.to - along.from) * 0.3);
  const half = (along.from + along.to) / 2;
  const on = (place: number, off = 0): Point => at(layout, place, middle + off);
  return [
    from(on(along.from, -tick)) + to(on(along.from, tick)),
    from(on(along.from)) + to(on(half - gap)),
    from(on(half + gap)) + to(on(along.to)),
    from(on(along.to, -tick)) + to(on(along.to, tick)),
  ].join('');
}

interface BracketsProps {
  readonly layout: NeckLayout;
  readonly brackets: readonly Bracket[];
  readonly chosen: string | undefined;
  /** What writes the names; until it is there they are set as type. */
  readonly pens: BracketPens | undefined;
}

const middleOfRow = (layout: NeckLayout, bracket: Bracket): number => {
  const row = bracketRow(layout, bracket);
  return (row.from + row.to) / 2;
};

const pathsOf = (layout: NeckLayout, brackets: readonly Bracket[]): string =>
  brackets
    .map((one) => bracketPath(layout, bracketExtent(layout, one), middleOfRow(layout, one)))
    .join('');

/** Writes the names of forms; the chosen one is written with a bolder pen. */
export interface BracketPens {
  readonly bracket: Pen;
  readonly chosen: Pen;
}

/** Ems: the type of a name, and how far its baseline lies under the line of the bracket. */
const NAME = { size: 1, baseline: 0.35 };

const tenth = (value: number): number => Math.round(value * 10) / 10;

/** Where a bracket's name stands: its middle along the line, its baseline below it. */
function nameSpot(layout: NeckLayout, bracket: Bracket) {
  const along = bracketExtent(layout, bracket);
  const { x, y } = at(layout, (along.from + along.to) / 2, middleOfRow(layout, bracket));
  return { x, y: tenth(y + NAME.baseline * layout.em), size: NAME.size * layout.em };
}

interface Name {
  readonly key: number;
  readonly name: string;
  readonly spot: { readonly x: number; readonly y: number };
}

/** The names of some brackets: what could be written as one path, and what has to be set as type. */
interface Names {
  readonly path: string;
  readonly rest: readonly Name[];
}

function namesOf(layout: NeckLayout, some: readonly Bracket[], pen: Pen | undefined): Names {
  const rest: Name[] = [];
  const paths = some.map((bracket) => {
    const [name, spot] = [formName(bracket), nameSpot(layout, bracket)];
    const path = pen?.(name, spot);
    if (path === undefined) rest.push({ key: bracket.order, name, spot });
    return path;
  });
  return { path: paths.join(''), rest };
}

/** Everything that brackets are drawn with. */
export const drawnBrackets = remembered(
  (
    all: readonly Bracket[],
    layout: NeckLayout,
    chosen: string | undefined,
    pens: BracketPens | undefined,
  ) => {
    const others = all.filter(({ key }) => key !== chosen);
    const own = all.filter(({ key }) => key === chosen);
    const lines = (some: readonly Bracket[], playable: boolean) =>
      pathsOf(
        layout,
        some.filter((one) => one.playable === playable),
      );
    return {
      held: lines(others, true),
      empty: lines(others, false),
      own: pathsOf(layout, own),
      ownLook: own.every(({ playable }) => playable) ? 'chosen' : 'chosen no-grip',
      names: namesOf(layout, others, pens?.bracket),
      ownName: namesOf(layout, own, pens?.chosen),
    };
  },
);

function NamePaths({ names, className }: { readonly names: Names; readonly className: string }) {
  return (
    <>
      <path className={className} d={names.path} />
      {names.rest.map(({ key, name, spot }) => (
        <text key={key} className={className} x={spot.x} y={spot.y}>
          {name}
        </text>
      ))}
    </>
  );
}

/** The brackets as they are drawn; FormMap lays the buttons over them. */
export const Brackets = memo(function Brackets({ layout, brackets, chosen, pens }: BracketsProps) {
  const drawn = drawnBrackets(brackets, layout, chosen, pens);
  return (
    <g>
      <path className="bracket-line" d={drawn.held} />
      <path className="bracket-line no-grip" d={drawn.empty} />
      <path className={`bracket-line ${drawn.ownLook}`} d={drawn.own} />
      <NamePaths names={drawn.names} className="bracket-letter" />
      <NamePaths names={drawn.ownName} className="bracket-letter chosen" />
    </g>
  );
});
