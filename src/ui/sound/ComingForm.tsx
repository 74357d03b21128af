import { memo } from 'react';
import type { Labels } from '#lesson';
import type { Tone } from '#neck';
import { toneLabel } from '../material/labelled.ts';
import { placeRadius } from '../material/overlay-marks.ts';
import { box, fretRange, type NeckLayout, placeAt } from '../neck/layout.ts';
import { useStudy } from '../store/index.ts';
import { useSounding } from './players.ts';

interface LayerProps {
  readonly layout: NeckLayout;
}

const HAND_FRETS = 4;

/** Where the hand will be, if it has to move. */
function ComingHand({ layout, position }: LayerProps & { readonly position: number }) {
  const over = layout.gap * 0.5;
  const across = {
    from: (layout.lines[0] ?? 0) - over,
    to: (layout.lines[layout.lines.length - 1] ?? 0) + over,
  };
  const frets = fretRange(layout, position, position + HAND_FRETS - 1);
  return <rect className="coming-hand" {...box(layout, frets, across)} />;
}

interface ToneProps extends LayerProps {
  readonly tone: Tone;
  readonly labels: Labels;
}

function ComingTone({ layout, tone, labels }: ToneProps) {
  const { x, y } = placeAt(layout, tone.string, tone.fret);
  const r = placeRadius(layout, tone.fret);
  return (
    <g>
      <circle cx={x} cy={y} r={r * 1.15} />
      <text x={x + r * 1.25} y={y - r * 0.95} dy="0.35em">
        {toneLabel(tone, labels)}
      </text>
    </g>
  );
}

const FormRings = memo(function FormRings({ layout }: LayerProps) {
  const next = useStudy(({ study }) => study.nextReading);
  const position = useStudy(({ study }) => study.position);
  const labels = useStudy(({ workspace }) => workspace.labels);
  const tones = next?.tones.filter(({ kind }) => kind === 'shape') ?? [];
  return (
    <g className="coming" data-coming="">
      {next && next.position !== position && (
        <ComingHand layout={layout} position={next.position} />
      )}
      {tones.map((tone) => (
        <ComingTone
          key={`${tone.string}:${tone.fret}`}
          layout={layout}
          tone={tone}
          labels={labels}
        />
      ))}
    </g>
  );
});

/** While it plays: the form of the next chord as rings, early enough to get there. */
export const ComingForm = memo(function ComingForm({ layout }: LayerProps) {
  const soon = useSounding((sounding) => sounding.soon);
  return soon ? <FormRings layout={layout} /> : null;
});
