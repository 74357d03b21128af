import { type Rise, SETTING_RANGES, type TransportSettings } from '#sound';
import { Choice } from '../controls/Choice.tsx';
import { CommandButton } from '../controls/CommandButton.tsx';
import { Field } from '../settings/Field.tsx';
import { readWhole } from '../settings/number.ts';
import { type FieldName, useIntents, useStudy } from '../store/index.ts';
import { useSounding } from './players.ts';
import { GUITAR_OPTIONS, PEDAL_OPTIONS, percent, soundingInWords } from './words.ts';

const useTransport = () => useStudy(({ workspace }) => workspace.sound.transport);

/** What was tapped, beside what it is tapped with. */
function Tapped() {
  const tapped = useSounding((sounding) => sounding.tapped);
  return <output aria-label="Tapped">{tapped > 0 && `${tapped} bpm`}</output>;
}

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
        <Tapped />
      </span>
    </div>
  );
}

const USUAL_RISE = { by: 4, every: 2, most: 140 } as const;
/** What the tempo gains at least, where it is near the usual end already. */
const USUAL_GAIN = 20;

/** A rise that is heard: it ends above the tempo. */
const usualRise = (tempo: number): Rise => ({
  ...USUAL_RISE,
  most: Math.min(SETTING_RANGES.tempo.max, Math.max(USUAL_RISE.most, tempo + USUAL_GAIN)),
});

interface RiseFieldProps {
  readonly name: FieldName;
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly range: { readonly min: number; readonly max: number };
  readonly onCommit: (value: number) => void;
}

/** Each of the three says for itself what it refuses. */
function RiseField({ value, range, ...props }: RiseFieldProps) {
  return (
    <Field
      {...props}
      value={String(value)}
      range={range}
      inputMode="numeric"
      restores
      read={(text) => readWhole(text, range, `still ${value}`)}
    />
  );
}

function RiseFields({ rise }: { readonly rise: Rise }) {
  const { setRise } = useIntents();
  const { by, every, tempo } = SETTING_RANGES;
  const set = (change: Partial<Rise>): void => setRise({ ...rise, ...change });
  return (
    <div className="rise-fields">
      <RiseField
        {...{ name: 'rise.by', label: 'by', unit: 'bpm', value: rise.by, range: by }}
        onCommit={(value) => set({ by: value })}
      />
      <RiseField
        {...{ name: 'rise.every', label: 'after', value: rise.every, range: every }}
        unit={rise.every === 1 ? 'round' : 'rounds'}
        onCommit={(value) => set({ every: value })}
      />
      <RiseField
        {...{ name: 'rise.most', label: 'up to', unit: 'bpm', value: rise.most, range: tempo }}
        onCommit={(value) => set({ most: value })}
      />
    </div>
  );
}

/** Why nothing grows faster though it is asked for. */
function whyNot({ rise, once, tempo }: TransportSettings): string | undefined {
  if (rise === undefined) return undefined;
  if (once) return 'It is played once: there are no rounds.';
  return rise.most <= tempo ? `The tempo is ${tempo} already.` : undefined;
}

function RiseChoice() {
  const transport = useTransport();
  const { rise } = transport;
  const { setRise } = useIntents();
  const why = whyNot(transport);
  return (
    <div>
      <label className="tick">
        <input
          type="checkbox"
          checked={rise !== undefined}
          onChange={({ currentTarget }) =>
            setRise(currentTarget.checked ? usualRise(transport.tempo) : undefined)
          }
        />
        Faster with the rounds
      </label>
      {rise && <RiseFields rise={rise} />}
      {why !== undefined && <p className="why-not">{why}</p>}
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
