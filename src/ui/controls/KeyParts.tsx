import { useId } from 'react';
import { useIntents, useStudy } from '../store/index.ts';
import { CommandButton } from './CommandButton.tsx';
import { KEYS, keyId, keyName } from './keys.ts';

const ESTIMATED = '';

function KeyOptions() {
  return KEYS.map(({ id, name }) => (
    <option key={id} value={id}>
      {name}
    </option>
  ));
}

const keyOf = (id: string) => KEYS.find((option) => option.id === id)?.key;

function SetKey() {
  const id = useId();
  const byHand = useStudy(({ workspace }) => workspace.key);
  const runnerUp = useStudy(({ study }) => study.runnerUp);
  const { setKey } = useIntents();
  return (
    <div className="field">
      <label htmlFor={id}>Read the chords in</label>
      <select
        id={id}
        value={byHand === undefined ? ESTIMATED : keyId(byHand)}
        onChange={({ currentTarget }) => setKey(keyOf(currentTarget.value))}
      >
        <option value={ESTIMATED}>the key they seem to be in</option>
        <KeyOptions />
      </select>
      {runnerUp && byHand === undefined && (
        <button type="button" className="link" onClick={() => setKey(runnerUp)}>
          or is it {keyName(runnerUp)}?
        </button>
      )}
    </div>
  );
}

function Transpose() {
  const id = useId();
  const key = useStudy(({ study }) => study.key);
  const { transposeTo } = useIntents();
  return (
    <div className="field">
      <label htmlFor={id}>Move everything to</label>
      <select
        id={id}
        value={key === undefined ? '' : keyId(key)}
        onChange={({ currentTarget }) => {
          const target = keyOf(currentTarget.value);
          if (target !== undefined) transposeTo(target);
        }}
      >
        <KeyOptions />
      </select>
      <div className="pair">
        <CommandButton name="transpose-down" />
        <CommandButton name="transpose-up" />
      </div>
    </div>
  );
}

/** Which key the chords are read in, and moving them to another. */
export function KeyParts() {
  return (
    <>
      <SetKey />
      <Transpose />
    </>
  );
}
