import { memo, type RefObject, useLayoutEffect, useRef } from 'react';
import { baseline, LABEL_LOOKS, LOOKS, labelLook, labelling, type Pens } from './looks.ts';
import type { ToneMark } from './marks.ts';
import { type ToneLayer, toneLayer } from './tone-layer.ts';

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
  /** A key is held down: what the tones say of themselves waits until it is let go. */
  readonly held: boolean;
}

/** A path for every look: rendered once, for what they show is the layer's. */
const Looks = memo(function Looks({ group }: { readonly group: RefObject<SVGGElement | null> }) {
  return (
    <g ref={group}>
      {[...LOOKS, ...LABEL_LOOKS].map((look) => (
        <path key={look} className={look} />
      ))}
    </g>
  );
});

/** Every tone, the outlines that all share, and the labels in them. */
export const Tones = memo(function Tones({ marks, pens, held }: TonesProps) {
  const paths = useRef<SVGGElement>(null);
  const places = useRef<SVGGElement>(null);
  const layer = useRef<ToneLayer>(undefined);
  const labels = labelling(marks, pens);
  useLayoutEffect(() => {
    if (paths.current === null || places.current === null) return;
    if (layer.current?.group !== paths.current)
      layer.current = toneLayer(paths.current, places.current);
    layer.current.draw(marks, labels);
    if (!held) layer.current.tell(marks);
  }, [marks, labels, held]);
  return (
    <g className="tones">
      <Looks group={paths} />
      {labels.rest.map((mark) => (
        <SetLabel key={mark.key} mark={mark} />
      ))}
      <g ref={places} className="places" />
    </g>
  );
});
