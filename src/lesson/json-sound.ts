/** How a progression is heard, out of plain JSON. */
import { STUDIES } from '#line';
import {
  FEELS,
  GUITAR_SOUNDS,
  type LoopBars,
  type Mix,
  type PartMix,
  type Rise,
  SETTING_RANGES,
  type TransportSettings,
} from '#sound';
import { flag, isJson, objectOf, oneOf, type Reader, whole } from './json.ts';
import { PEDALS, type SoundSetup } from './types.ts';

const within =
  ({ min, max }: { readonly min: number; readonly max: number }): Reader<number> =>
  (value) =>
    typeof value === 'number' && value >= min && value <= max ? value : undefined;

const { tempo, share, semitones, countInBars, by, every } = SETTING_RANGES;

const numbers = objectOf<Omit<TransportSettings, 'loop' | 'rise' | 'once'>>({
  tempo: within(tempo),
  share: within(share),
  semitones: whole(semitones.min, semitones.max),
  countInBars: whole(countInBars.min, countInBars.max),
});

const MOST_BARS = 100_000;

const bars = objectOf<LoopBars>({ first: whole(1, MOST_BARS), last: whole(1, MOST_BARS) });

const loop: Reader<LoopBars> = (value) => {
  const read = bars(value);
  return read && read.first <= read.last ? read : undefined;
};

const rise = objectOf<Rise>({
  by: within(by),
  every: whole(every.min, every.max),
  most: within(tempo),
});

/** What is absent may be; what is there and makes no sense spoils the whole. */
const transport: Reader<TransportSettings> = (value) => {
  const read = numbers(value);
  if (read === undefined || !isJson(value)) return undefined;
  const looped = value['loop'] === undefined ? {} : { loop: loop(value['loop']) };
  const risen = value['rise'] === undefined ? {} : { rise: rise(value['rise']) };
  const once = value['once'] === undefined ? {} : { once: value['once'] === true || undefined };
  const made = { ...read, ...looped, ...risen, ...once };
  return isWhole(made) ? made : undefined;
};

const isWhole = (made: {
  readonly loop?: LoopBars | undefined;
  readonly rise?: Rise | undefined;
  readonly once?: true | undefined;
}): made is TransportSettings => Object.values(made).every((part) => part !== undefined);

const part = objectOf<PartMix>({ level: within({ min: 0, max: 1 }), mute: flag, solo: flag });

const mix = objectOf<Mix>({
  parts: objectOf<Mix['parts']>({
    line: part,
    comp: part,
    bass: part,
    drums: part,
    click: part,
    count: part,
  }),
  master: within({ min: 0, max: 1 }),
  sound: oneOf(GUITAR_SOUNDS),
});

export const sound: Reader<SoundSetup> = objectOf<SoundSetup>({
  study: oneOf(STUDIES),
  feel: oneOf(FEELS),
  touch: flag,
  pedal: oneOf(PEDALS),
  transport,
  mix,
});
