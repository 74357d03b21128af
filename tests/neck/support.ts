import {
  DEFAULT_SPAN,
  formPlaces,
  type Grip,
  type Instrument,
  type InstrumentSpec,
  makeGripText,
  makeInstrument,
  type Reading,
  readNeck,
  type Tone,
} from '#neck';
import { type Chord, type Degree, makeDegree, makePitch, parseChord, parseDegree } from '#theory';

export function instrument(spec: InstrumentSpec = {}): Instrument {
  const made = makeInstrument(spec);
  if (!made.ok) throw new Error(`${made.error.field}: ${made.error.expected}`);
  return made.value;
}

export const GUITAR = instrument();

export function chord(symbol: string): Chord {
  const read = parseChord(symbol);
  if (!read.ok) throw new Error(`${symbol}: ${read.error.code}`);
  return read.value;
}

export function degree(text: string): Degree {
  const read = parseDegree(text);
  if (!read.ok) throw new Error(text);
  return read.value;
}

/** `E C 4` style: the grip of a chord in a form at an anchor, as text; `-` where there is none. */
export function gripText(symbol: string, form: string, anchor: number, on = GUITAR): string {
  const place = formPlaces(chord(symbol), on).find(
    (p) => p.form.name === form && p.anchor === anchor,
  );
  return place?.grip === undefined ? '-' : makeGripText(place.grip, on.strings.length);
}

export function gripOf(symbol: string, form: string, anchor: number): Grip {
  const place = formPlaces(chord(symbol), GUITAR).find(
    (p) => p.form.name === form && p.anchor === anchor,
  );
  if (place?.grip === undefined) throw new Error(`no ${form} form of ${symbol} at ${anchor}`);
  return place.grip;
}

interface Ask {
  readonly form?: string;
  readonly colours?: string;
  readonly on?: Instrument;
  readonly spelling?: 'exact' | 'plain';
}

export function reading(symbol: string, position: number, ask: Ask = {}): Reading {
  return readNeck({
    chord: chord(symbol),
    position,
    instrument: ask.on ?? GUITAR,
    span: DEFAULT_SPAN,
    colours: (ask.colours ?? '').split(' ').filter(Boolean).map(degree),
    spelling: ask.spelling ?? 'exact',
    ...(ask.form === undefined ? {} : { form: ask.form }),
  });
}

/** `1:14 F#5 3 shape hand`: one tone in one line. */
export const toneText = (tone: Tone): string =>
  `${tone.string}:${tone.fret} ${makePitch(tone.pitch)} ${makeDegree(tone.degree)} ${tone.kind} ${tone.reach}`;

export function toneAt(read: Reading, place: string): string {
  const tone = read.tones.find((t) => `${t.string}:${t.fret}` === place);
  return tone === undefined ? '-' : toneText(tone);
}
