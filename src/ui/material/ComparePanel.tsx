import { formsOf } from '#neck';
import { formName } from '../form-text.ts';
import { TextField } from '../settings/Field.tsx';
import { type Compared, useIntents, useStudy } from '../store/index.ts';
import { numberWord } from '../words.ts';
import { symbolInSigns } from '../words-aloud.ts';
import { degreesShared, placesInWords, type Share, sharing } from './material-words.ts';

function FormButton({ name, label }: { readonly name: string; readonly label: string }) {
  const compare = useStudy(({ workspace }) => workspace.compare);
  const isOn = compare?.kind === 'form' && compare.form === name;
  const { compareWithForm, stopComparing } = useIntents();
  return (
    <button
      type="button"
      aria-pressed={isOn}
      onClick={() => (isOn ? stopComparing() : compareWithForm(name))}
    >
      {label}
    </button>
  );
}

function OtherForms() {
  const instrument = useStudy(({ workspace }) => workspace.instrument);
  const chosen = useStudy(({ study }) => study.reading?.chosen?.form.name);
  const others = formsOf(instrument).filter(({ name }) => name !== chosen);
  return (
    <fieldset className="choice">
      <legend className="label">With another form of this chord</legend>
      <div className="choice-options">
        {others.map((form) => (
          <FormButton key={form.name} name={form.name} label={formName(form)} />
        ))}
      </div>
    </fieldset>
  );
}

function OtherChord() {
  const compare = useStudy(({ workspace }) => workspace.compare);
  const next = useStudy(({ study }) => study.nextSymbol);
  const { compareWithChord } = useIntents();
  return (
    <div className="other-chord">
      <TextField
        name="compare"
        label="With another chord"
        value={compare?.kind === 'chord' ? compare.symbol : ''}
        onCommit={(symbol) => symbol.trim() !== '' && compareWithChord(symbol)}
      >
        {next !== undefined && (
          <button type="button" onClick={() => compareWithChord(next)}>
            the next, {symbolInSigns(next)}
          </button>
        )}
      </TextField>
    </div>
  );
}

const SAMPLE = { r: 7, at: 12 };

/** A mark as the neck has it, with what it means. */
function Sample({ share, words }: { readonly share: Share; readonly words: string }) {
  const { r, at } = SAMPLE;
  return (
    <li>
      <svg className="legend-mark" viewBox="0 0 24 24" aria-hidden="true">
        <g className={`compare-mark ${share}`}>
          {share !== 'second' && <circle className="disc" cx={at} cy={at} r={r} />}
          {share !== 'first' && <circle className="ring" cx={at} cy={at} r={r * 1.3} />}
        </g>
      </svg>
      {words}
    </li>
  );
}

function Sharings({ compared, first }: { readonly compared: Compared; readonly first: string }) {
  const { comparison, name, places } = compared;
  const second = comparison.kind === 'form' ? `${name} form` : symbolInSigns(name);
  const { both, first: left, second: added } = sharing(places);
  const word = both.length === 1 ? 'place' : 'places';
  const where = both.length > 0 && both.length <= 6 ? `: ${placesInWords(both)}` : '';
  const become = degreesShared(both).join(', ');
  return (
    <>
      <p className="shared">
        {first} and {second} share {both.length === 0 ? 'no' : numberWord(both.length)} {word}
        {where}.{become !== '' && comparison.kind === 'chord' && ` ${become}.`}
      </p>
      <ul className="legend compare-legend" aria-label="Marks">
        <Sample share="first" words={`only ${first}, ${left.length}`} />
        <Sample share="second" words={`only ${second}, ${added.length}`} />
        <Sample share="both" words={`both, ${both.length}`} />
      </ul>
    </>
  );
}

export function ComparePanel() {
  const compared = useStudy(({ study }) => study.compared);
  const symbol = useStudy(({ study }) => study.turned?.symbol ?? study.symbol);
  const form = useStudy(({ study }) => study.reading?.chosen?.form);
  const formWords = `${form ? formName(form) : ''} form`;
  const first = compared?.comparison.kind === 'chord' ? symbolInSigns(symbol) : formWords;
  return (
    <div className="panel-main">
      <h3>
        The {formWords} of {symbolInSigns(symbol)}
      </h3>
      <div className="compare-with">
        <OtherForms />
        <OtherChord />
      </div>
      {compared && <Sharings compared={compared} first={first} />}
    </div>
  );
}
