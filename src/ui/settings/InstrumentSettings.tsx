import { useId } from 'react';
import { type InstrumentSpec, LIMITS, specOf, TUNINGS } from '#neck';
import { useIntents, useStudy } from '../store/index.ts';
import { Field, NumberField, TextField } from './Field.tsx';
import { gaugesText, readGauges } from './number.ts';

const OWN = '';

function NamedTuning({ tuning }: { readonly tuning: string }) {
  const id = useId();
  const { setTuning } = useIntents();
  const known = TUNINGS.some((named) => named.text === tuning);
  return (
    <div className="setting">
      <label htmlFor={id}>Tuning</label>
      <select
        id={id}
        value={known ? tuning : OWN}
        onChange={({ currentTarget }) => {
          if (currentTarget.value !== OWN) setTuning(currentTarget.value);
        }}
      >
        <option value={OWN}>as typed below</option>
        {TUNINGS.map(({ name, text }) => (
          <option key={name} value={text}>
            {name}
          </option>
        ))}
      </select>
    </div>
  );
}

interface Spec {
  readonly spec: Required<InstrumentSpec>;
}

const { gauge: GAUGE, scale: SCALE } = LIMITS;

const gaugesExpected = (strings: number): string =>
  `${strings} gauges from ${GAUGE.min} to ${GAUGE.max} thousandths of an inch`;

function Strings({ spec }: Spec) {
  const { setTuning, setGauges } = useIntents();
  const count = spec.gauges.length;
  return (
    <>
      <NamedTuning tuning={spec.tuning} />
      <TextField
        name="tuning"
        label="Open strings, thickest string first"
        wide
        value={spec.tuning}
        onCommit={setTuning}
      />
      <Field
        name="gauges"
        label="Gauges, thickest string first"
        unit="⁄1000 in"
        wide
        value={gaugesText(spec.gauges)}
        read={(text) => readGauges(text, count, gaugesExpected(count))}
        onCommit={setGauges}
      />
    </>
  );
}

const wholeIn = ({ min, max }: { readonly min: number; readonly max: number }): string =>
  `a whole number from ${min} to ${max}`;

function Lengths({ spec }: Spec) {
  const { setFrets, setCapo, setScale } = useIntents();
  return (
    <>
      <NumberField
        name="frets"
        label="Frets"
        whole={LIMITS.frets}
        expected={wholeIn(LIMITS.frets)}
        value={spec.frets}
        onCommit={setFrets}
      />
      <NumberField
        name="capo"
        label="Capo at fret"
        whole={LIMITS.capo}
        expected={wholeIn(LIMITS.capo)}
        value={spec.capo}
        onCommit={setCapo}
      >
        <span className="unit">Chords are what sounds; forms are counted from the nut.</span>
      </NumberField>
      <NumberField
        name="scale"
        label="Scale length"
        unit="mm"
        expected={`millimetres from ${SCALE.min} to ${SCALE.max}`}
        value={spec.scale}
        onCommit={setScale}
      />
    </>
  );
}

/** Strings, tuning, frets and scale length. */
export function InstrumentSettings() {
  const instrument = useStudy(({ workspace }) => workspace.instrument);
  const { setLeftHanded, resetInstrument } = useIntents();
  const spec = specOf(instrument);
  return (
    <section className="settings-part" aria-labelledby="settings-instrument">
      <h3 id="settings-instrument">Instrument</h3>
      <Strings spec={spec} />
      <Lengths spec={spec} />
      <label className="tick">
        <input
          type="checkbox"
          checked={instrument.leftHanded}
          onChange={({ currentTarget }) => setLeftHanded(currentTarget.checked)}
        />
        Left-handed
      </label>
      <button type="button" className="link" onClick={resetInstrument}>
        Standard guitar
      </button>
    </section>
  );
}
