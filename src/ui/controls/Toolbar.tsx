import { memo, useMemo } from 'react';
import { LABELS } from '#lesson';
import { formsOf } from '#neck';
import { formName } from '../form-text.ts';
import { useParts } from '../material/loading.tsx';
import { roman } from '../roman.ts';
import { useIntents, useStudy } from '../store/index.ts';
import { Choice } from './Choice.tsx';
import { CommandButton } from './CommandButton.tsx';
import { COLOURS, type Colour, shownAs } from './colours.ts';

function Position() {
  const position = useStudy(({ workspace }) => workspace.position);
  const isRoute = useStudy(({ workspace }) => workspace.route !== undefined);
  const parts = useParts();
  return (
    <fieldset className="stepper">
      <legend className="label">{isRoute ? 'Route from' : 'Position'}</legend>
      <CommandButton name="hand-down">−</CommandButton>
      <output className="numeral-now">{roman(position)}</output>
      <CommandButton name="hand-up">+</CommandButton>
      {parts && <parts.LeaveRoute />}
    </fieldset>
  );
}

function Elsewhere() {
  return (
    <fieldset className="stepper">
      <legend className="label">Where else</legend>
      <CommandButton name="elsewhere-down">lower</CommandButton>
      <CommandButton name="elsewhere-up">higher</CommandButton>
    </fieldset>
  );
}

const BEST = '';

function FormChoice() {
  const form = useStudy(({ workspace }) => workspace.form);
  const instrument = useStudy(({ workspace }) => workspace.instrument);
  const { pickForm } = useIntents();
  const options = useMemo(
    () => [
      [BEST, 'best'] as const,
      ...formsOf(instrument).map((form) => [form.name, formName(form)] as const),
    ],
    [instrument],
  );
  return (
    <Choice
      label="Form"
      options={options}
      value={form ?? BEST}
      onChange={(name) => pickForm(name === BEST ? undefined : name)}
    />
  );
}

const LABEL_OPTIONS = LABELS.map((label) => [label, label] as const);

function LabelChoice() {
  const labels = useStudy(({ workspace }) => workspace.labels);
  const { setLabels } = useIntents();
  return <Choice label="Labels" options={LABEL_OPTIONS} value={labels} onChange={setLabels} />;
}

function ColourButton({ colour }: { readonly colour: Colour }) {
  const show = useStudy(({ workspace }) => workspace.show);
  const { toggleColour } = useIntents();
  const shown = shownAs(show, colour.degree);
  return (
    <button
      type="button"
      className="colour-button"
      aria-pressed={shown !== undefined}
      onClick={() => toggleColour(shown ?? colour.degree)}
    >
      {colour.name}
    </button>
  );
}

function Colours() {
  return (
    <fieldset className="colours">
      <legend className="label">Colour tones</legend>
      <div className="colour-options">
        {COLOURS.map((colour) => (
          <ColourButton key={colour.name} colour={colour} />
        ))}
      </div>
    </fieldset>
  );
}

/** What is shown on the neck and where the hand goes, without dragging. */
export const Toolbar = memo(function Toolbar() {
  return (
    <section className="toolbar" aria-label="Hand and labels">
      <div className="at-neck">
        <Position />
        <FormChoice />
        <Elsewhere />
        <LabelChoice />
      </div>
      <div className="colour-row">
        <Colours />
      </div>
    </section>
  );
});
