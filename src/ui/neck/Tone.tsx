import { memo } from 'react';
import { isQuiet, outlinePath, type ToneMark } from './marks.ts';

/** Height of the digits and capitals of the label as a share of its type. */
const CAPITALS = 0.67;

/**
 * One tone on the neck. It renders again only if its mark is another object. There are some fifty of
 * them in every move of the cursor, so each is as few elements as will do.
 */
export const Tone = memo(function Tone({ mark }: { readonly mark: ToneMark }) {
  const { x, y, outline, reach, radius, type, label } = mark;
  return (
    <g
      className="tone"
      data-tone=""
      data-string={mark.string}
      data-fret={mark.fret}
      data-pitch={mark.pitch}
      data-degree={mark.degree}
      data-kind={mark.kind}
      data-reach={reach}
    >
      {!isQuiet(mark) && <path d={outlinePath(outline, radius, mark)} />}
      {reach === 'stretch' && (
        <path className="tone-far" d={outlinePath(outline, radius * 1.24, mark)} />
      )}
      {label !== '' && (
        <text x={x} y={y + (type * CAPITALS) / 2} fontSize={type}>
          {label}
        </text>
      )}
    </g>
  );
});
