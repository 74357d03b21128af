import { memo } from 'react';
import type { ToneMark } from './marks.ts';

/** Two corners of the square around a mark. */
const corners = ({ x, y, radius }: ToneMark): string =>
  `${x - radius},${y - radius} ${x + radius},${y + radius}`;

/**
 * One tone on the neck: where it is and what it means. It renders again only if its mark is another
 * object. What is seen of it is part of the paths that all tones share; there are some fifty tones
 * in every move of the cursor, and `points` is no property of style, so that none is styled anew.
 */
export const Tone = memo(function Tone({ mark }: { readonly mark: ToneMark }) {
  return (
    <polygon
      data-tone=""
      data-string={mark.string}
      data-fret={mark.fret}
      data-pitch={mark.pitch}
      data-degree={mark.degree}
      data-kind={mark.kind}
      data-reach={mark.reach}
      data-label={mark.label}
      points={corners(mark)}
    />
  );
});
