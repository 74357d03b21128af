import { useState } from 'react';
import type { OwnForm } from '#lesson';
import { useIntents, useStudy } from '../store/index.ts';
import { ChordSymbol } from '../type/Symbol.tsx';

interface RenameProps {
  readonly form: OwnForm;
  readonly onDone: () => void;
}

function Rename({ form, onDone }: RenameProps) {
  const [name, setName] = useState(form.name);
  const { renameOwnForm } = useIntents();
  return (
    <form
      className="rename-form"
      onSubmit={(event) => {
        event.preventDefault();
        renameOwnForm(form.name, name);
        if (name.trim() === form.name) onDone();
      }}
    >
      <input
        type="text"
        value={name}
        autoComplete="off"
        aria-label={`New name of ${form.name}`}
        onChange={({ currentTarget }) => setName(currentTarget.value)}
      />
      <button type="submit">Rename</button>
    </form>
  );
}

/** One form that a player put down: what it is, and renaming and deleting it. */
export function OwnFormRow({ form }: { readonly form: OwnForm }) {
  const [renaming, setRenaming] = useState(false);
  const isAsked = useStudy(({ workspace }) => workspace.form === form.name);
  const { deleteOwnForm, pickForm } = useIntents();
  return (
    <li>
      <button
        type="button"
        aria-pressed={isAsked}
        aria-label={`Show ${form.name} for the chord under the cursor`}
        onClick={() => pickForm(isAsked ? undefined : form.name)}
      >
        {form.name}
      </button>{' '}
      <span className="own-form-about">
        {form.fingering} as <ChordSymbol text={form.symbol} />
      </span>{' '}
      {renaming ? (
        <Rename form={form} onDone={() => setRenaming(false)} />
      ) : (
        <button
          type="button"
          className="link"
          aria-label={`Rename ${form.name}`}
          onClick={() => setRenaming(true)}
        >
          rename
        </button>
      )}{' '}
      <button
        type="button"
        className="link"
        aria-label={`Delete ${form.name}`}
        onClick={() => deleteOwnForm(form.name)}
      >
        delete
      </button>
    </li>
  );
}
