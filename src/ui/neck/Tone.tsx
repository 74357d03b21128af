import { memo } from 'react';
import { isQuiet, outlinePath, type ToneMark } from './marks.ts';

/** Height of the digits and capitals of the label as a share of its type. */
const CAPITALS = 0.67;

const tenth = (value: number): number => Math.round(value * 10) / 10;

function labelClass({ kind, reach, bass }: ToneMark): string {
  const under = bass ? ' bass' : '';
  if (reach === 'out') return `tone-label out${under}`;
  return kind === 'shape' ? `tone-label shape${under}` : `tone-label${under}`;
}

/**
 * One tone on the neck. It renders again only if its mark is another object. There are some fifty of
 * them in every move of the cursor, so each is as few elements as will do, and what styles them is
 * a class of their own: a selector that looked at the group's attributes would cost as much again.
 */
export const Tone = memo(function Tone({ mark }: { readonly mark: ToneMark }) {
  const { x, y, kind, outline, reach, radius, type, label } = mark;
  return (
    <g
      data-tone=""
      data-string={mark.string}
      data-fret={mark.fret}
      data-pitch={mark.pitch}
      data-degree={mark.degree}
      data-kind={kind}
      data-reach={reach}
    >
      {!isQuiet(mark) && (
        <path
          className={mark.away ? `mark ${kind} open away` : `mark ${kind} ${reach}`}
          d={outlinePath(outline, radius, mark) + mark.bar}
        />
      )}
      {reach === 'stretch' && (
        <path className={`mark ${kind} far`} d={outlinePath(outline, radius * 1.24, mark)} />
      )}
      {label !== '' && (
        <text
          className={labelClass(mark)}
          x={x}
          y={tenth(y + (type * CAPITALS) / 2)}
          fontSize={type}
        >
          {label}
        </text>
      )}
    </g>
  );
});
