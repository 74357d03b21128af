import { useId } from 'react';
import { fieldError, useIntents, useStudy } from '../store/index.ts';
import { useRested } from './rest.ts';

/** Milliseconds after which what is typed counts as finished enough to be criticised. */
const PATIENCE = 500;

/** A fingering as it is typed, from the lowest string. Typing into it shows what it is called. */
export function FingeringField() {
  const id = useId();
  const text = useStudy(({ workspace }) => workspace.fingering);
  const found = useStudy(({ study }) => study.fingered?.error);
  const refused = useStudy((state) => fieldError(state, 'fingering'));
  const now = refused ?? found;
  const error = useRested(now, PATIENCE);
  const told = now === undefined ? undefined : error;
  const { setFingering } = useIntents();
  return (
    <div className="fingering-field">
      <label className="label" htmlFor={id}>
        Fingering
      </label>
      <input
        id={id}
        type="text"
        value={text}
        placeholder="x7678x"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        aria-invalid={told !== undefined}
        aria-describedby={told === undefined ? undefined : `${id}-error`}
        onChange={({ currentTarget }) => setFingering(currentTarget.value)}
      />
      {told !== undefined && (
        <p className="field-error" id={`${id}-error`}>
          {told}
        </p>
      )}
    </div>
  );
}
