import { WEIGHT_NAMES, WEIGHT_RANGES, type WeightName } from '#lesson';
import { NumberField } from '../settings/Field.tsx';
import { useIntents, useStudy } from '../store/index.ts';
import { WEIGHT_WORDS } from './material-words.ts';

/** Steps of a slider from one end to the other. */
const SLIDER_STEPS = 100;

function WeightField({ name }: { readonly name: WeightName }) {
  const value = useStudy(({ workspace }) => workspace.weights[name]);
  const { setWeight } = useIntents();
  const { min, max } = WEIGHT_RANGES[name];
  const [label, unit] = WEIGHT_WORDS[name];
  return (
    <NumberField
      name={`weight.${name}`}
      label={label}
      unit={unit}
      value={value}
      expected={`a number from ${min} to ${max}`}
      onCommit={(weight) => setWeight(name, weight)}
    >
      <input
        type="range"
        min={min}
        max={max}
        step={(max - min) / SLIDER_STEPS}
        value={value}
        aria-label={`${label}, slider`}
        onChange={({ currentTarget }) => setWeight(name, Number(currentTarget.value))}
      />
    </NumberField>
  );
}

/** What a player would rather avoid, each in millimetres of hand movement that it is worth. */
export function RouteWeights() {
  const { resetWeights } = useIntents();
  return (
    <details className="panel-settings">
      <summary>What the hand would rather avoid</summary>
      <p className="footnote">
        Everything is counted as movement of the hand. A barre at 5 is as bad as moving 5 mm.
      </p>
      {WEIGHT_NAMES.map((name) => (
        <WeightField key={name} name={name} />
      ))}
      <button type="button" onClick={resetWeights}>
        As it was at first
      </button>
    </details>
  );
}
