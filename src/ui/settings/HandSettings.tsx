import { useCallback } from 'react';
import { useIntents, useStudy } from '../store/index.ts';
import { Field } from './Field.tsx';
import { numberOf } from './number.ts';

/** How far this player's hand reaches, told by two frets instead of a ruler. */
export function HandSettings() {
  const { index, little } = useStudy(({ workspace }) => workspace.span);
  const { setSpan } = useIntents();
  const setIndex = useCallback(
    (text: string) => setSpan(numberOf(text), little),
    [setSpan, little],
  );
  const setLittle = useCallback((text: string) => setSpan(index, numberOf(text)), [setSpan, index]);
  return (
    <section className="settings-part" aria-labelledby="settings-hand">
      <h3 id="settings-hand">Hand</h3>
      <p>Without force: how far apart do index and little finger hold the thickest string down?</p>
      <Field
        name="span"
        label="Index at fret"
        type="number"
        min={1}
        max={12}
        value={String(index)}
        onCommit={setIndex}
      />
      <Field
        name="span"
        label="My little finger holds fret"
        type="number"
        min={4}
        max={19}
        value={String(little)}
        onCommit={setLittle}
      />
      <p className="caution">
        Warm up before you stretch, and stop at pain or numbness. If it comes back, ask a doctor or
        a teacher who knows playing injuries.
      </p>
    </section>
  );
}
