import { TURNS } from '#neck';
import { type Colour, makeDegree } from '#theory';
import { COMMANDS } from '../commands/index.ts';
import { shownAs } from '../controls/colours.ts';
import { type TurnedForm, useIntents, useStudy } from '../store/index.ts';
import { symbolInSigns } from '../words-aloud.ts';
import { signs, turnedStringInWords } from './material-words.ts';

const keyOf = (name: string): string | undefined =>
  COMMANDS.find((one) => one.name === `turn-${name.replace('♭', 'b')}`)?.keys[0];

function TurnButton({ name }: { readonly name: string }) {
  const isOn = useStudy(({ workspace }) => workspace.turn === name);
  const { turnForm } = useIntents();
  const key = keyOf(name);
  return (
    <button
      type="button"
      aria-label={name}
      aria-pressed={isOn}
      aria-keyshortcuts={key}
      onClick={() => turnForm(name)}
    >
      {name}
      {key !== undefined && <kbd>{key}</kbd>}
    </button>
  );
}

function Moves({ turned }: { readonly turned: TurnedForm }) {
  const { moves, playable, symbol, from } = turned;
  const name = symbolInSigns(symbol);
  const form = from.chosen?.form.name ?? '';
  if (!playable) {
    return (
      <p>
        Four fingers cannot hold {name} in the {form} form; its tones are shown.
      </p>
    );
  }
  const still =
    moves.length === 0
      ? 'Every tone stays.'
      : 'All other strings keep still. Dashed on the neck is where a tone was.';
  return (
    <>
      <ul className="turn-moves">
        {moves.map((move) => (
          <li key={move.string}>
            <span className="string-word">string {move.string}:</span> {turnedStringInWords(move)}
          </li>
        ))}
      </ul>
      <p>{still}</p>
    </>
  );
}

function ColourRow({ colour }: { readonly colour: Colour }) {
  const show = useStudy(({ workspace }) => workspace.show);
  const { toggleColour } = useIntents();
  const shown = shownAs(show, colour.degree);
  return (
    <li>
      <button
        type="button"
        className="colour-button"
        aria-pressed={shown !== undefined}
        onClick={() => toggleColour(shown ?? colour.degree)}
      >
        {signs(colour.degree)}
      </button>{' '}
      {colour.why}
    </li>
  );
}

function Colours() {
  const colours = useStudy(({ study }) => study.colours);
  const symbol = useStudy(({ study }) => study.turned?.symbol ?? study.symbol);
  if (colours.length === 0) return null;
  return (
    <div className="panel-side">
      <h3>Colour tones for {symbolInSigns(symbol)}, the most used first</h3>
      <ul className="colour-list">
        {colours.map((colour) => (
          <ColourRow key={makeDegree(colour.degree)} colour={colour} />
        ))}
      </ul>
    </div>
  );
}

export function TurnPanel() {
  const turned = useStudy(({ study }) => study.turned);
  const symbol = useStudy(({ study }) => study.symbol);
  const form = useStudy(({ study }) => study.reading?.chosen?.form.name);
  const to = turned ? ` into ${symbolInSigns(turned.symbol)}` : '';
  return (
    <div className="panel-columns">
      <div className="panel-main">
        <h3>
          Turn the {form ?? ''} form of {symbolInSigns(symbol)}
          {to}
        </h3>
        <fieldset className="choice turns">
          <legend className="label">Into</legend>
          <div className="choice-options">
            {TURNS.map(({ name }) => (
              <TurnButton key={name} name={name} />
            ))}
          </div>
        </fieldset>
        {turned && <Moves turned={turned} />}
      </div>
      <Colours />
    </div>
  );
}
