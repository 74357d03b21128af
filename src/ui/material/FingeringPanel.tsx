import { memo, useId, useState } from 'react';
import { tuningOf } from '#lesson';
import type { NameReading } from '#theory';
import { fieldError, useIntents, useStudy } from '../store/index.ts';
import { ChordSymbol } from '../type/Symbol.tsx';
import { signs } from './material-words.ts';
import { OwnFormRow } from './OwnFormRow.tsx';

interface NameProps {
  readonly reading: NameReading;
  readonly index: number;
  readonly chosen: boolean;
  readonly onChoose: (index: number) => void;
}

/** What is to be known of a name besides the name. */
function remarksOn({ rootless, chord }: NameReading): string {
  const remarks = [
    ...(rootless ? ['without its root'] : []),
    ...(chord.bass ? ['slash bass'] : []),
  ];
  return remarks.join(', ');
}

const NameRow = memo(function NameRow({ reading, index, chosen, onChoose }: NameProps) {
  const remarks = remarksOn(reading);
  return (
    <li data-name-reading="" data-symbol={reading.symbol} data-rootless={reading.rootless}>
      <button type="button" aria-pressed={chosen} onClick={() => onChoose(index)}>
        <ChordSymbol text={reading.symbol} />
        {remarks !== '' && <span className="quiet"> {remarks}</span>}
      </button>
    </li>
  );
});

const NO_NAMES: readonly NameReading[] = [];

function Names() {
  const names = useStudy(({ study }) => study.fingered?.names) ?? NO_NAMES;
  const chosen = useStudy(({ study }) => study.fingered?.chosen);
  const { chooseName } = useIntents();
  if (names.length === 0) return null;
  return (
    <ol className="row-list names" aria-label="What it is called, best first">
      {names.map((reading, i) => (
        <NameRow
          key={reading.symbol}
          reading={reading}
          index={i}
          chosen={i === chosen}
          onChoose={chooseName}
        />
      ))}
    </ol>
  );
}

/** The degrees in the chosen name, from the lowest string. */
function DegreesDown() {
  const places = useStudy(({ study }) => study.fingered?.places);
  if (!places || places.length === 0) {
    return (
      <p>
        Type a fingering from the lowest string, such as x7678x (with more than nine frets
        x-10-12-11-12-x), or put fingers on the neck: click a place, or walk there with the arrow
        keys and press Enter.
      </p>
    );
  }
  const degrees = places.toReversed().map(({ degree }) => (degree ? signs(degree) : '?'));
  return (
    <p>
      Degrees from the lowest string: {degrees.join(' ')}
      <span className="footnote"> The small number beside each on the neck is the finger.</span>
    </p>
  );
}

/** Keeps the fingering as a form; the name is asked for here, what is wrong with it told here. */
function Keep() {
  const id = useId();
  const [name, setName] = useState('');
  const hasName = useStudy(({ study }) => (study.fingered?.chosen ?? -1) >= 0);
  const count = useStudy(({ workspace }) => workspace.ownForms.length);
  const refused = useStudy((state) => fieldError(state, 'ownForm'));
  const { saveOwnForm } = useIntents();
  const [kept, setKept] = useState(count);
  if (kept !== count) {
    setKept(count);
    if (count > kept) setName('');
  }
  if (!hasName) return null;
  return (
    <form
      className="keep-form"
      onSubmit={(event) => {
        event.preventDefault();
        saveOwnForm(name);
      }}
    >
      <label htmlFor={id}>Name of the form</label>
      <input
        id={id}
        type="text"
        value={name}
        autoComplete="off"
        aria-invalid={refused !== undefined}
        aria-describedby={refused === undefined ? undefined : `${id}-error`}
        onChange={({ currentTarget }) => setName(currentTarget.value)}
      />
      <button type="submit">Keep as my form</button>
      {refused !== undefined && (
        <p className="field-error" id={`${id}-error`} role="alert">
          {refused}
        </p>
      )}
    </form>
  );
}

function OwnForms() {
  const forms = useStudy(({ workspace }) => workspace.ownForms);
  const instrument = useStudy(({ workspace }) => workspace.instrument);
  const tuning = tuningOf(instrument);
  const here = forms.filter((form) => form.tuning === tuning);
  const elsewhere = forms.length - here.length;
  return (
    <div className="panel-side">
      <h3>My forms</h3>
      {here.length === 0 && (
        <p>None yet. One that is kept moves along the neck like the five and can be asked for.</p>
      )}
      <ul className="own-forms">
        {here.map((form) => (
          <OwnFormRow key={form.name} form={form} />
        ))}
      </ul>
      {elsewhere > 0 && <p className="footnote">{elsewhere} more belong to other tunings.</p>}
    </div>
  );
}

export function FingeringPanel({ open }: { readonly open: boolean }) {
  return (
    <div className="panel-columns">
      <div className="panel-main">
        <h3>What it is called, best first</h3>
        {open && <DegreesDown />}
        <Names />
        {open && <Keep />}
      </div>
      {open && <OwnForms />}
    </div>
  );
}
