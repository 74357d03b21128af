import { useIntents, useStudy } from '../store/index.ts';
import { NumberField } from './Field.tsx';

const INDEX = { min: 1, max: 12 };
const LITTLE = { min: 4, max: 19 };

/** How far this player's hand reaches, told by two frets instead of a ruler. */
export function HandSettings() {
  const { index, little } = useStudy(({ workspace }) => workspace.span);
  const { setSpan } = useIntents();
  return (
    <section className="settings-part" aria-labelledby="settings-hand">
      <h3 id="settings-hand">Hand</h3>
      <p>Without force: how far apart do index and little finger hold the thickest string down?</p>
      <NumberField
        name="span"
        label="Index at fret"
        whole={INDEX}
        expected={`a fret from ${INDEX.min} to ${INDEX.max}`}
        value={index}
        onCommit={(fret) => setSpan(fret, little)}
      />
      <NumberField
        name="span"
        label="My little finger holds fret"
        whole={LITTLE}
        expected="a fret above the index finger’s"
        value={little}
        onCommit={(fret) => setSpan(index, fret)}
      />
      <p className="caution">
        Warm up before you stretch, and stop at pain or numbness. If it comes back, ask a doctor or
        a teacher who knows playing injuries.
      </p>
    </section>
  );
}
