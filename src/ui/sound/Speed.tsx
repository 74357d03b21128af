import { type Rise, SETTING_RANGES } from '#sound';
import { Choice } from '../controls/Choice.tsx';
import { CommandButton } from '../controls/CommandButton.tsx';
import { NumberField } from '../settings/Field.tsx';
import { useIntents, useStudy } from '../store/index.ts';
import { GUITAR_OPTIONS, PEDAL_OPTIONS, percent, soundingInWords } from './words.ts';

const useTransport = () => useStudy(({ workspace }) => workspace.sound.transport);

function Share() {
  const { share } = useTransport();
  const { setShare } = useIntents();
  return (
    <div className="setting">
      <label htmlFor="share">Slowed down to</label>
      <span className="setting-value">
        <input
          id="share"
          type="range"
          min={SETTING_RANGES.share.min}
          max={SETTING_RANGES.share.max}
          step={0.05}
          value={share}
          aria-valuetext={percent(share)}
          onChange={({ currentTarget }) => setShare(Number(currentTarget.value))}
        />
        {percent(share)}
        <CommandButton name="tap">Tap</CommandButton>
      </span>
    </div>
  );
}

const USUAL_RISE: Rise = { by: 4, every: 2, most: 140 };

function RiseFields({ rise }: { readonly rise: Rise }) {
  const { setRise } = useIntents();
  const { by, every } = SETTING_RANGES;
  return (
    <div className="rise-fields">
      <NumberField
        name="rise"
        label="by"
        whole={by}
        expected={`a number from ${by.min} to ${by.max}`}
        value={rise.by}
        onCommit={(value) => setRise({ ...rise, by: value })}
      />
      <NumberField
        name="rise"
        label="after rounds"
        whole={every}
        expected={`a whole number from ${every.min} to ${every.max}`}
        value={rise.every}
        onCommit={(value) => setRise({ ...rise, every: value })}
      />
      <NumberField
        name="rise"
        label="up to"
        whole={SETTING_RANGES.tempo}
        expected="a number from 20 to 300"
        value={rise.most}
        onCommit={(value) => setRise({ ...rise, most: value })}
      />
    </div>
  );
}

function RiseChoice() {
  const { rise } = useTransport();
  const { setRise } = useIntents();
  return (
    <div>
      <label className="tick">
        <input
          type="checkbox"
          checked={rise !== undefined}
          onChange={({ currentTarget }) => setRise(currentTarget.checked ? USUAL_RISE : undefined)}
        />
        Faster with the rounds
      </label>
      {rise && <RiseFields rise={rise} />}
    </div>
  );
}

const COUNTS = ['0', '1', '2'] as const;
const COUNT_OPTIONS = COUNTS.map((bars) => [bars, bars === '0' ? 'none' : bars] as const);

function CountIn() {
  const { countInBars } = useTransport();
  const { setCountIn } = useIntents();
  return (
    <Choice
      label="Bars counted in"
      options={COUNT_OPTIONS}
      value={String(countInBars) as (typeof COUNTS)[number]}
      onChange={(bars) => setCountIn(Number(bars))}
    />
  );
}

const { min: LOWEST, max: HIGHEST } = SETTING_RANGES.semitones;
const SOUNDING = Array.from({ length: HIGHEST - LOWEST + 1 }, (_, i) => HIGHEST - i);

function Sounding() {
  const { semitones } = useTransport();
  const { setSemitones } = useIntents();
  return (
    <div className="setting">
      <label htmlFor="sounding">Sounds</label>
      <select
        id="sounding"
        value={semitones}
        onChange={({ currentTarget }) => setSemitones(Number(currentTarget.value))}
      >
        {SOUNDING.map((steps) => (
          <option key={steps} value={steps}>
            {soundingInWords(steps)}
          </option>
        ))}
      </select>
    </div>
  );
}

function Guitar() {
  const sound = useStudy(({ workspace }) => workspace.sound.mix.sound);
  const { setGuitar } = useIntents();
  return <Choice label="Guitar" options={GUITAR_OPTIONS} value={sound} onChange={setGuitar} />;
}

function Pedal() {
  const pedal = useStudy(({ workspace }) => workspace.sound.pedal);
  const { setPedal } = useIntents();
  return (
    <Choice
      label="A pedal on the practice screen"
      options={PEDAL_OPTIONS}
      value={pedal}
      onChange={setPedal}
    />
  );
}

function Touch() {
  const touch = useStudy(({ workspace }) => workspace.sound.touch);
  const { setTouch } = useIntents();
  return (
    <label className="tick">
      <input
        type="checkbox"
        checked={touch}
        onChange={({ currentTarget }) => setTouch(currentTarget.checked)}
      />
      Tones, grips and chords sound when they are clicked
    </label>
  );
}

/** How fast, how high, and what the hands and feet do. */
export function Speed() {
  return (
    <div className="speed-part">
      <Share />
      <RiseChoice />
      <Sounding />
      <div className="speed-choices">
        <CountIn />
        <Guitar />
      </div>
      <Pedal />
      <Touch />
    </div>
  );
}
