interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly options: readonly (readonly [value: T, name: string])[];
  readonly value: T;
  readonly onChange: (value: T) => void;
}

/**
 * One of a few, all in sight, set as words in a row. They are buttons and not radio buttons: those
 * would take the arrow keys, which belong to the cursor, for themselves after a click.
 */
export function Choice<T extends string>({ label, options, value, onChange }: ChoiceProps<T>) {
  return (
    <fieldset className="choice">
      <legend className="label">{label}</legend>
      <div className="choice-options">
        {options.map(([option, text]) => (
          <button
            key={option}
            type="button"
            aria-pressed={option === value}
            onClick={() => onChange(option)}
          >
            {text}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
