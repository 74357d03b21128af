import { memo, useMemo } from 'react';
import {
  baseline,
  LABEL_LOOKS,
  LOOKS,
  labelLook,
  labelling,
  outlinePaths,
  type Pens,
} from './looks.ts';
import type { ToneMark } from './marks.ts';
import { Tone } from './Tone.tsx';

interface LookProps {
  readonly className: string;
  readonly d: string | undefined;
}

const LookPath = memo(function LookPath({ className, d = '' }: LookProps) {
  return <path className={className} d={d} />;
});

function SetLabel({ mark }: { readonly mark: ToneMark }) {
  const look = labelLook(mark);
  return (
    <text
      className={mark.bass ? `${look} bass` : look}
      x={mark.x}
      y={baseline(mark)}
      fontSize={mark.type}
    >
      {mark.label}
    </text>
  );
}

interface TonesProps {
  readonly marks: readonly ToneMark[];
  /** What writes the labels; until it is there they are set as type. */
  readonly pens: Pens | undefined;
}

/** Every tone, the outlines that all share, and the labels in them. */
export const Tones = memo(function Tones({ marks, pens }: TonesProps) {
  const outlines = useMemo(() => outlinePaths(marks), [marks]);
  const labels = useMemo(() => labelling(marks, pens), [marks, pens]);
  return (
    <g className="tones">
      {LOOKS.map((look) => (
        <LookPath key={look} className={look} d={outlines[look]} />
      ))}
      {LABEL_LOOKS.map((look) => (
        <LookPath key={look} className={look} d={labels.paths[look]} />
      ))}
      {labels.rest.map((mark) => (
        <SetLabel key={mark.slot} mark={mark} />
      ))}
      {marks.map((mark) => (
        <Tone key={mark.slot} mark={mark} />
      ))}
    </g>
  );
});
