import { type CSSProperties, useEffect, useState } from 'react';
import { HEARING } from '#sound';
import type { NeckLayout } from '../neck/layout.ts';
import { useIntents, useStudy } from '../store/index.ts';
import { besideHand } from './beside-hand.ts';
import { useSounding } from './players.ts';

/** Whether it is time for it: with the first sound, or where one will practise, and then never again. */
function useOnce(): readonly [shown: boolean, dismiss: () => void] {
  const playing = useSounding(({ phase }) => phase === 'playing');
  const practising = useStudy((state) => state.practising);
  const known = useStudy(({ workspace }) => workspace.cautioned);
  const { setCautioned } = useIntents();
  const [shown, setShown] = useState(false);
  useEffect(() => {
    if (known || !(playing || practising)) return;
    setShown(true);
    setCautioned();
  }, [known, playing, practising, setCautioned]);
  return [shown, () => setShown(false)];
}

interface CautionProps {
  readonly layout: NeckLayout;
}

/** Under a lying neck there is room beside the hand; an upright one leaves it to the styles. */
function usePlace(layout: NeckLayout): CSSProperties | undefined {
  const position = useStudy(({ study }) => study.position);
  if (layout.spec.upright) return undefined;
  const { x, y, width } = besideHand(layout, position);
  return { marginInlineStart: x, marginTop: y - layout.height, width };
}

function Note({ layout, dismiss }: CautionProps & { readonly dismiss: () => void }) {
  const place = usePlace(layout);
  const [first] = HEARING;
  return (
    <div
      className={place ? 'hearing' : 'hearing upright'}
      style={place}
      role="note"
      aria-label="Hearing"
    >
      <p>
        {first?.text} <cite>{first?.source}</cite>
      </p>
      <button type="button" onClick={dismiss}>
        Dismiss
      </button>
    </div>
  );
}

/**
 * What is said once about listening; it stays until it is dismissed, and covers nothing that one plays
 * by. “Levels and speed” keeps it.
 */
export function Caution({ layout }: CautionProps) {
  const [shown, dismiss] = useOnce();
  return shown && <Note layout={layout} dismiss={dismiss} />;
}
