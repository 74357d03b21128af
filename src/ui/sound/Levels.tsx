import { gainOfPart, HEARING, PARTS, type PartName } from '#sound';
import { useIntents, useStudy } from '../store/index.ts';
import { PART_WORDS, percent } from './words.ts';

const STEP = 0.05;

function Fader(props: {
  readonly label: string;
  readonly level: number;
  readonly onLevel: (level: number) => void;
}) {
  const { label, level, onLevel } = props;
  return (
    <input
      type="range"
      min={0}
      max={1}
      step={STEP}
      value={level}
      aria-label={label}
      aria-valuetext={percent(level)}
      onChange={({ currentTarget }) => onLevel(Number(currentTarget.value))}
    />
  );
}

function Whole() {
  const master = useStudy(({ workspace }) => workspace.sound.mix.master);
  const { setMaster } = useIntents();
  return (
    <tr className="whole">
      <th scope="row">everything</th>
      <td>
        <Fader label="Level of everything" level={master} onLevel={setMaster} />
      </td>
      <td className="level-now">{percent(master)}</td>
    </tr>
  );
}

function Part({ name }: { readonly name: PartName }) {
  const { level, mute, solo } = useStudy(({ workspace }) => workspace.sound.mix.parts[name]);
  const silent = useStudy(({ workspace }) => gainOfPart(workspace.sound.mix, name) === 0);
  const { setPart } = useIntents();
  const called = PART_WORDS[name];
  return (
    <tr className={silent ? 'silent' : undefined}>
      <th scope="row">{called}</th>
      <td>
        <Fader
          label={`Level of the ${called}`}
          level={level}
          onLevel={(next) => setPart(name, { level: next })}
        />
      </td>
      <td className="level-now">{silent ? 'silent' : percent(level)}</td>
      <td>
        <button
          type="button"
          aria-pressed={mute}
          aria-label={`Mute the ${called}`}
          onClick={() => setPart(name, { mute: !mute })}
        >
          mute
        </button>
      </td>
      <td>
        {name !== 'count' && (
          <button
            type="button"
            aria-pressed={solo}
            aria-label={`Only the ${called}`}
            onClick={() => setPart(name, { solo: !solo })}
          >
            only
          </button>
        )}
      </td>
    </tr>
  );
}

/** How loud each part is; the caution stands where it can be made louder. */
export function Levels() {
  return (
    <div className="levels-part">
      <table className="levels">
        <caption>Levels</caption>
        <tbody>
          <Whole />
          {PARTS.map((name) => (
            <Part key={name} name={name} />
          ))}
        </tbody>
      </table>
      <div className="caution">
        {HEARING.map(({ text, source }) => (
          <p key={source}>
            {text} <cite>{source}</cite>
          </p>
        ))}
      </div>
    </div>
  );
}
