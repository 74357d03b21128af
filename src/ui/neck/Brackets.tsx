import { memo } from 'react';
import { formName } from '../form-text.ts';
import { at, type Extent, fretRange, type NeckLayout, type Point } from './layout.ts';
import type { Bracket } from './places.ts';

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
}

const middleOfRow = (layout: NeckLayout, bracket: Bracket): number => {
  const row = bracketRow(layout, bracket);
  return (row.from + row.to) / 2;
};

const pathOf = (layout: NeckLayout, bracket: Bracket): string =>
  bracketPath(layout, bracketExtent(layout, bracket), middleOfRow(layout, bracket));

interface LetterProps extends BracketsProps {
  readonly bracket: Bracket;
}

function Letter({ layout, bracket, chosen }: LetterProps) {
  const along = bracketExtent(layout, bracket);
  const { x, y } = at(layout, (along.from + along.to) / 2, middleOfRow(layout, bracket));
  const className = bracket.key === chosen ? 'bracket-letter chosen' : 'bracket-letter';
  return (
    <text className={className} x={x} y={y} dy="0.35em">
      {formName(bracket)}
    </text>
  );
}

/** The brackets as they are drawn; FormMap lays the buttons over them. */
export const Brackets = memo(function Brackets(props: BracketsProps) {
  const { layout, brackets, chosen } = props;
  const others = brackets.filter(({ key }) => key !== chosen);
  const own = brackets.filter(({ key }) => key === chosen);
  return (
    <g>
      <path className="bracket-line" d={others.map((b) => pathOf(layout, b)).join('')} />
      <path className="bracket-line chosen" d={own.map((b) => pathOf(layout, b)).join('')} />
      {brackets.map((bracket) => (
        <Letter key={bracket.order} {...props} bracket={bracket} />
      ))}
    </g>
  );
});
