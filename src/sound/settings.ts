/** How fast and how often: the settings of the transport, and what they refuse. */
import { barsInARow, isTempo, type PlayedBar, type Stretch, TEMPO_RANGE } from '#line';
import { err, ok, type Result, type TextError } from '#theory';
import { type LoopBars, type Rise, SETTING_RANGES, type TransportSettings } from './setup.ts';

type NumberSetting = 'tempo' | 'share' | 'semitones' | 'countInBars';

const isWhole: Readonly<Record<NumberSetting, boolean>> = {
  tempo: false,
  share: false,
  semitones: true,
  countInBars: true,
};

const within = (
  value: number,
  { min, max }: { readonly min: number; readonly max: number },
): boolean => Number.isFinite(value) && value >= min && value <= max;

/** The settings with one number changed; nonsense, and what is so already, changes nothing. */
export function withSetting(
  settings: TransportSettings,
  name: NumberSetting,
  value: number,
): TransportSettings {
  const fits = within(value, SETTING_RANGES[name]) && (!isWhole[name] || Number.isInteger(value));
  return fits && value !== settings[name] ? { ...settings, [name]: value } : settings;
}

/** The settings that play round and round, or once. */
export function withOnce(settings: TransportSettings, once: boolean): TransportSettings {
  if (once === (settings.once === true)) return settings;
  const { once: _before, ...rest } = settings;
  return once ? { ...rest, once } : rest;
}

/**
 * The settings with another loop, or none; one that makes no sense changes nothing. What is looped is
 * played round and round.
 */
export function withLoop(
  settings: TransportSettings,
  loop: LoopBars | undefined,
): TransportSettings {
  const { loop: before, ...rest } = settings;
  if (loop === undefined) return before === undefined ? settings : rest;
  const sense =
    Number.isInteger(loop.first) &&
    Number.isInteger(loop.last) &&
    loop.first >= 1 &&
    loop.last >= loop.first;
  const same = before?.first === loop.first && before.last === loop.last;
  return sense && !same ? withOnce({ ...settings, loop }, false) : settings;
}

/**
 * The settings with another rise of tempo, or none; nonsense changes nothing. There has to be a next
 * round for it, so that what was played once then goes round.
 */
export function withRise(settings: TransportSettings, rise: Rise | undefined): TransportSettings {
  const { rise: before, ...rest } = settings;
  if (rise === undefined) return before === undefined ? settings : rest;
  const { by, every, most } = SETTING_RANGES_OF_RISE;
  const sense =
    within(rise.by, by) &&
    within(rise.every, every) &&
    Number.isInteger(rise.every) &&
    within(rise.most, most);
  const same = before?.by === rise.by && before.every === rise.every && before.most === rise.most;
  return sense && !same ? withOnce({ ...settings, rise }, false) : settings;
}

const SETTING_RANGES_OF_RISE = {
  by: SETTING_RANGES.by,
  every: SETTING_RANGES.every,
  most: TEMPO_RANGE,
} as const;

/** Quarter notes a minute in a round, counted from 0. */
export function tempoIn({ tempo, share, rise }: TransportSettings, round: number): number {
  if (rise === undefined) return tempo * share;
  const risen = tempo + rise.by * Math.floor(Math.max(0, round) / rise.every);
  return Math.max(tempo, Math.min(risen, rise.most)) * share;
}

/**
 * The settings under which a round sounds at a tempo (quarter notes a minute), to half of one: the
 * share is kept where the tempo that it needs can be set, otherwise it is played at full speed.
 */
export function withTempoHeard(
  settings: TransportSettings,
  heard: number,
  round: number,
): TransportSettings {
  const { rise } = settings;
  const risen = rise === undefined ? 0 : rise.by * Math.floor(Math.max(0, round) / rise.every);
  const full = withSetting(settings, 'share', 1);
  const ways = [settings, full].flatMap((base) =>
    [risen, 0].map((by) => withSetting(base, 'tempo', Math.round(heard / base.share) - by)),
  );
  const sounds = ways.find((way) => Math.abs(tempoIn(way, round) - heard) <= 0.5);
  return sounds ?? withSetting(full, 'tempo', Math.round(heard));
}

const refuse = <Code extends string>(code: Code, text: string, expected: string) =>
  err<TextError<Code>>({ code, at: 0, length: text.length, found: text, expected: [expected] });

/** Reads a tempo as typed: `90`, `92.5`. Error code: `tempo`. */
export function parseTempo(text: string): Result<number, TextError<'tempo'>> {
  const tempo = /^\d{1,3}([.,]\d{1,2})?$/.test(text.trim())
    ? Number(text.trim().replace(',', '.'))
    : Number.NaN;
  return isTempo(tempo)
    ? ok(tempo)
    : refuse('tempo', text, `a number from ${TEMPO_RANGE.min} to ${TEMPO_RANGE.max}`);
}

/**
 * Reads bars to loop as typed: `5-8`, `5 to 8`, `5 8`, `5` for one bar, nothing for no loop. `bars`: how
 * many the chart has. Error code: `loop`.
 */
export function parseLoop(
  text: string,
  bars: number,
): Result<LoopBars | undefined, TextError<'loop'>> {
  if (text.trim() === '') return ok(undefined);
  const found = /^(\d{1,5})(?:(?:\s*[-–,]\s*|\s+to\s+|\s+)(\d{1,5}))?$/i.exec(text.trim());
  const first = Number(found?.[1] ?? Number.NaN);
  const last = Number(found?.[2] ?? first);
  const fits = first >= 1 && last >= first && last <= bars;
  return fits
    ? ok({ first, last })
    : refuse('loop', text, `bars from 1 to ${bars}, as 1-${Math.min(2, bars)}`);
}

/** `5-8`, `5`, or nothing. */
export function makeLoop(loop: LoopBars | undefined): string {
  if (loop === undefined) return '';
  return loop.first === loop.last ? `${loop.first}` : `${loop.first}-${loop.last}`;
}

/**
 * Where looped bars lie in what is played: there where they are first played in a row, as written.
 * Undefined where they never are; `playedOf` appends those that only repeats part.
 */
export function spanOfLoop(
  bars: readonly PlayedBar[],
  { first, last }: LoopBars,
): Stretch | undefined {
  const from = barsInARow(bars, first, last);
  const [begin, end] = [bars[from], bars[from + last - first]];
  return begin === undefined || end === undefined
    ? undefined
    : { from: begin.start, to: end.start + end.length };
}
