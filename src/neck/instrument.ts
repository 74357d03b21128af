import { err, makePitch, midiOf, ok, type Pitch, parsePitch, type Result } from '#theory';
import { parseBareTuning } from './bare-tuning.ts';
import { millimetres } from './places.ts';
import { DEFAULT_SPAN } from './reach.ts';
import type { Instrument, OpenString, Span } from './types.ts';

/** A refused value of the instrument or the hand: which field, why, and what would do. */
export interface FieldError {
  readonly field: 'tuning' | 'frets' | 'capo' | 'scale' | 'gauges' | 'span';
  readonly code: 'not-a-note' | 'count' | 'range' | 'not-a-number';
  /** Index of the string or value meant, where one is. */
  readonly item?: number;
  readonly found: string;
  readonly expected: string;
}

/** What a player may say of an instrument; whatever is absent is as on a standard guitar. */
export interface InstrumentSpec {
  /** Open strings, lowest-numbered string last: `E2-A2-D3-G3-B3-E4`. */
  readonly tuning?: string;
  readonly frets?: number;
  readonly capo?: number;
  /** Nut to bridge, millimetres. */
  readonly scale?: number;
  readonly leftHanded?: boolean;
  /** Thousandths of an inch, string 1 first. */
  readonly gauges?: readonly number[];
}

export const LIMITS = {
  strings: { min: 4, max: 8 },
  frets: { min: 12, max: 27 },
  capo: { min: 0, max: 11 },
  scale: { min: 300, max: 1000 },
  gauge: { min: 6, max: 150 },
  pitch: { min: 12, max: 96 },
} as const;

export const STANDARD_TUNING = 'E2-A2-D3-G3-B3-E4';

const within = (n: number, range: { readonly min: number; readonly max: number }): boolean =>
  n >= range.min && n <= range.max;

/** Tuning text in the order of the strings from the lowest-sounding side: string 6 to string 1. */
export const makeTuning = (pitches: readonly Pitch[]): string =>
  [...pitches]
    .reverse()
    .map((pitch) => makePitch(pitch))
    .join('-');

const tuningError = (
  code: FieldError['code'],
  found: string,
  expected: string,
  item?: number,
): FieldError => ({
  field: 'tuning',
  code,
  found,
  expected,
  ...(item === undefined ? {} : { item }),
});

/**
 * Reads open strings typed from string 6 to string 1 (`E2-A2-D3-G3-B3-E4`, also with spaces or
 * commas, or six bare letters such as `DADGAD`). Gives pitches with string 1 first.
 */
export function parseTuning(text: string): Result<readonly Pitch[], FieldError> {
  const words = text.split(/[\s,\-–]+/).filter((word) => word !== '');
  const bare = parseBareTuning(text);
  if (bare !== undefined) return ok(bare);
  if (!within(words.length, LIMITS.strings)) {
    return err(tuningError('count', text, '4 to 8 notes such as E2-A2-D3-G3-B3-E4'));
  }
  const pitches: Pitch[] = [];
  for (const [item, word] of words.entries()) {
    const pitch = parsePitch(word);
    if (!pitch.ok)
      return err(tuningError('not-a-note', word, 'a note with its octave, as E2', item));
    if (!within(midiOf(pitch.value), LIMITS.pitch)) {
      return err(tuningError('range', word, 'a note from C0 to C7', item));
    }
    pitches.unshift(pitch.value);
  }
  return ok(pitches);
}

/** Usual gauge (thousandths of an inch) for an open pitch: the nearest of a 10–46 set, thicker below it. */
const USUAL_GAUGES: readonly (readonly [lowestMidi: number, gauge: number])[] = [
  [62, 10],
  [57, 13],
  [53, 17],
  [48, 26],
  [43, 36],
  [38, 46],
  [33, 60],
  [28, 74],
  [0, 105],
];

const usualGauge = (pitch: Pitch): number =>
  USUAL_GAUGES.find(([lowest]) => midiOf(pitch) >= lowest)?.[1] ?? 105;

/** Plain steel is sold up to about .020; thicker strings are wound (common practice). */
const isWound = (gauge: number): boolean => gauge > 20;

const openString = (pitch: Pitch, gauge: number): OpenString => ({
  pitch,
  gauge,
  wound: isWound(gauge),
});

function numberError(
  field: 'frets' | 'capo' | 'scale',
  value: number,
  range: { readonly min: number; readonly max: number },
  whole: boolean,
): FieldError | undefined {
  const expected = `${whole ? 'a whole number' : 'millimetres'} from ${range.min} to ${range.max}`;
  if (!Number.isFinite(value) || (whole && !Number.isInteger(value))) {
    return { field, code: 'not-a-number', found: String(value), expected };
  }
  return within(value, range)
    ? undefined
    : { field, code: 'range', found: String(value), expected };
}

function gaugesError(gauges: readonly number[], strings: number): FieldError | undefined {
  const expected = `${strings} gauges from ${LIMITS.gauge.min} to ${LIMITS.gauge.max} thousandths of an inch`;
  if (gauges.length !== strings) {
    return { field: 'gauges', code: 'count', found: gauges.join(' '), expected };
  }
  const item = gauges.findIndex((gauge) => !within(gauge, LIMITS.gauge));
  if (item === -1) return undefined;
  return { field: 'gauges', code: 'range', item, found: String(gauges[item]), expected };
}

/** Builds an instrument; every value is checked once here and nowhere after. */
export function makeInstrument(spec: InstrumentSpec): Result<Instrument, FieldError> {
  const tuning = parseTuning(spec.tuning ?? STANDARD_TUNING);
  if (!tuning.ok) return tuning;
  const frets = spec.frets ?? 22;
  const capo = spec.capo ?? 0;
  const scale = spec.scale ?? 648;
  const gauges = spec.gauges ?? tuning.value.map(usualGauge);
  const error =
    numberError('frets', frets, LIMITS.frets, true) ??
    numberError('capo', capo, LIMITS.capo, true) ??
    numberError('scale', scale, LIMITS.scale, false) ??
    gaugesError(gauges, tuning.value.length);
  if (error !== undefined) return err(error);
  const strings = tuning.value.map((pitch, i) => openString(pitch, gauges[i] ?? usualGauge(pitch)));
  return ok({
    strings,
    frets,
    capo,
    scale: millimetres(scale),
    leftHanded: spec.leftHanded ?? false,
  });
}

/** What `makeInstrument` would need to build this instrument again. */
export const specOf = (instrument: Instrument): Required<InstrumentSpec> => ({
  tuning: makeTuning(instrument.strings.map((string) => string.pitch)),
  frets: instrument.frets,
  capo: instrument.capo,
  scale: instrument.scale,
  leftHanded: instrument.leftHanded,
  gauges: instrument.strings.map((string) => string.gauge),
});

/** A hand's span is told by two frets: the index at one, the little finger at another above it. */
export function makeSpan(index: number, little: number): Result<Span, FieldError> {
  const expected = 'index at fret 1 to 12, little finger 3 to 7 frets above it';
  const found = `${index} to ${little}`;
  if (!Number.isInteger(index) || !Number.isInteger(little)) {
    return err({ field: 'span', code: 'not-a-number', found, expected });
  }
  const fits = index >= 1 && index <= 12 && little - index >= 3 && little - index <= 7;
  if (!fits) return err({ field: 'span', code: 'range', found, expected });
  return ok(
    index === DEFAULT_SPAN.index && little === DEFAULT_SPAN.little
      ? DEFAULT_SPAN
      : { index, little },
  );
}

function standardGuitar(): Instrument {
  const made = makeInstrument({});
  if (!made.ok) throw new Error(`standard guitar refused: ${made.error.field}`);
  return made.value;
}

/** Six strings in standard tuning, 22 frets, 648 mm, gauges 10 to 46, right-handed. */
export const STANDARD_GUITAR = standardGuitar();
