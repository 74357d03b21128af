import { memo } from 'react';
import { BEND_LIMIT_NAMES, BEND_LIMIT_RANGES, type BendLimitName, bendLimit } from '#lesson';
import { BEND_MODELS, type BendModel } from '#neck';
import { Choice } from '../controls/Choice.tsx';
import { NumberField } from '../settings/Field.tsx';
import { useIntents, useStudy } from '../store/index.ts';

const MODEL_WORDS: Readonly<Record<BendModel, string>> = {
  whole: 'the whole string stretches',
  sounding: 'only the sounding part bends',
};

const MODELS = BEND_MODELS.map((model) => [model, MODEL_WORDS[model]] as const);

const LIMIT_WORDS: Readonly<Record<BendLimitName, readonly [label: string, unit: string]>> = {
  comfortableForce: ['Comfortable up to a push of', 'N'],
  comfortableTravel: ['and a way of', 'mm'],
  hardForce: ['Hard up to a push of', 'N'],
  hardTravel: ['and a way of at most', 'mm'],
  woundFactor: ['A wound string feels', 'times as stiff'],
  unsupportedFactor: ['The index finger alone feels', 'times the push'],
};

function LimitField({ name }: { readonly name: BendLimitName }) {
  const value = useStudy(({ workspace }) => bendLimit(workspace.bendLimits, name));
  const { setBendLimit } = useIntents();
  const { min, max } = BEND_LIMIT_RANGES[name];
  const [label, unit] = LIMIT_WORDS[name];
  return (
    <NumberField
      name={`bend.${name}`}
      label={label}
      unit={unit}
      value={value}
      expected={`a number from ${min} to ${max}`}
      onCommit={(limit) => setBendLimit(name, limit)}
    />
  );
}

/** What this player calls comfortable and hard, the model behind it, and the caution. */
export const BendLimits = memo(function BendLimits() {
  const model = useStudy(({ workspace }) => workspace.bendLimits.model);
  const { setBendModel, resetBendLimits } = useIntents();
  return (
    <div className="panel-side">
      <details className="panel-settings">
        <summary>What is comfortable, what is hard</summary>
        {BEND_LIMIT_NAMES.map((name) => (
          <LimitField key={name} name={name} />
        ))}
        <Choice label="Model" options={MODELS} value={model} onChange={setBendModel} />
        <button type="button" onClick={resetBendLimits}>
          As it was at first
        </button>
      </details>
      <p className="footnote">
        Millimetres and newtons by the model “{MODEL_WORDS[model]}”; fingers and real strings differ
        a little. Source: D. R. Grimes, String Theory – The Physics of String-Bending, PLoS ONE 9(7)
        e102088, 2014. A wound string is counted by its core.
      </p>
      <p className="caution">
        Warm up before you bend, and stop at pain or numbness. If it comes back, ask a doctor or a
        teacher who knows playing injuries.
      </p>
    </div>
  );
});
