import { useEffect, useState } from 'react';
import { HEARING } from '#sound';
import { useIntents, useStudy } from '../store/index.ts';
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

/** What is said once about listening; it stays until it is dismissed. “Levels and speed” keeps it. */
export function Caution() {
  const [shown, dismiss] = useOnce();
  const [first] = HEARING;
  if (!shown || first === undefined) return null;
  return (
    <div className="hearing" role="note" aria-label="Hearing">
      <p>
        {first.text} <cite>{first.source}</cite>
      </p>
      <button type="button" onClick={dismiss}>
        Dismiss
      </button>
    </div>
  );
}
