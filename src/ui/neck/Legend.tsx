import { memo } from 'react';
import type { Reach, ToneKind } from '#neck';
import { type Outline, outlinePath } from './marks.ts';

interface Entry {
  readonly kind: ToneKind;
  readonly reach: Reach;
  readonly outline: Outline;
  readonly words: string;
}

const ENTRIES: readonly Entry[] = [
  { kind: 'shape', reach: 'hand', outline: 'disc', words: 'in the form’s grip' },
  { kind: 'chord', reach: 'hand', outline: 'disc', words: 'another chord tone' },
  { kind: 'colour', reach: 'hand', outline: 'lozenge', words: 'a colour tone' },
  { kind: 'shape', reach: 'hand', outline: 'square', words: 'the root' },
  { kind: 'chord', reach: 'stretch', outline: 'disc', words: 'a stretch away' },
  { kind: 'chord', reach: 'open', outline: 'disc', words: 'open string' },
  { kind: 'chord', reach: 'out', outline: 'disc', words: 'out of reach' },
];

const RADIUS = 9;
const MIDDLE = { x: 0, y: 0 };

function Sample({ kind, reach, outline }: Entry) {
  const r = reach === 'out' ? RADIUS * 0.62 : RADIUS;
  return (
    <svg className="legend-mark" viewBox="-13 -13 26 26" aria-hidden="true">
      <g className="tone" data-kind={kind} data-reach={reach}>
        <path d={outlinePath(outline, reach === 'stretch' ? r * 0.86 : r, MIDDLE)} />
        {reach === 'stretch' && (
          <path className="tone-far" d={outlinePath(outline, r * 1.1, MIDDLE)} />
        )}
      </g>
    </svg>
  );
}

/** What the marks on the neck mean. */
export const Legend = memo(function Legend() {
  return (
    <ul className="legend" aria-label="What the marks mean">
      {ENTRIES.map((entry) => (
        <li key={entry.words}>
          <Sample {...entry} />
          {entry.words}
        </li>
      ))}
    </ul>
  );
});
