import { useId } from 'react';

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly options: readonly (readonly [value: T, name: string])[];
  readonly value: T;
  readonly onChange: (value: T) => void;
}

/** One of a few, all in sight: radio buttons set as words in a row. */
export function Choice<T extends string>({ label, options, value, onChange }: ChoiceProps<T>) {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend className="label">{label}</legend>
      <div className="choice-options">
        {options.map(([option, text]) => (
          <label key={option}>
            <input
              type="radio"
              name={name}
              value={option}
              checked={option === value}
              onChange={() => onChange(option)}
            />
            <span>{text}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
