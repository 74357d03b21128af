import { useCallback, useId } from 'react';
import { type InstrumentSpec, LIMITS, specOf, TUNINGS } from '#neck';
import { useIntents, useStudy } from '../store/index.ts';
import { Field } from './Field.tsx';
import { numberOf } from './number.ts';

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

const NUMBERS = /[\s,]+/;

const gaugesIn = (text: string): readonly number[] => text.trim().split(NUMBERS).map(numberOf);

interface Spec {
  readonly spec: Required<InstrumentSpec>;
}

function Strings({ spec }: Spec) {
  const { setTuning, setGauges } = useIntents();
  const gauges = useCallback((text: string) => setGauges(gaugesIn(text)), [setGauges]);
  return (
    <>
      <NamedTuning tuning={spec.tuning} />
      <Field
        name="tuning"
        label="Open strings, thickest first"
        wide
        value={spec.tuning}
        onCommit={setTuning}
      />
      <Field
        name="gauges"
        label="Gauges, string 1 first"
        unit="⁄1000 in"
        wide
        value={spec.gauges.join(' ')}
        onCommit={gauges}
      />
    </>
  );
}

function Lengths({ spec }: Spec) {
  const { setFrets, setCapo, setScale } = useIntents();
  const frets = useCallback((text: string) => setFrets(numberOf(text)), [setFrets]);
  const capo = useCallback((text: string) => setCapo(numberOf(text)), [setCapo]);
  const scale = useCallback((text: string) => setScale(numberOf(text)), [setScale]);
  const counted = { type: 'number' } as const;
  return (
    <>
      <Field
        {...counted}
        {...LIMITS.frets}
        name="frets"
        label="Frets"
        value={String(spec.frets)}
        onCommit={frets}
      />
      <Field
        {...counted}
        {...LIMITS.capo}
        name="capo"
        label="Capo at fret"
        value={String(spec.capo)}
        onCommit={capo}
      />
      <Field
        name="scale"
        label="Scale length"
        unit="mm"
        value={String(spec.scale)}
        onCommit={scale}
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
