import { err, ok, type Result, type TextError } from '#theory';
import { type Frets, fingeringOf } from './fingers.ts';
import { distanceBetween } from './reach.ts';
import type { Instrument } from './types.ts';

export type FingeringErrorCode = 'count' | 'fret' | 'beyond' | 'wide' | 'fingers' | 'silent';

/**
 * No hand is asked for more, in millimetres from index to little finger. Flat hands of pianists span
 * about 152 mm there (Boyle/PASK analysis); a quarter more is beyond anybody.
 */
const WIDEST_HAND = 190;

interface Word {
  readonly text: string;
  readonly at: number;
}

/** Words between separators, or single signs where there are none. */
function wordsOf(text: string): readonly Word[] {
  const separated = /[\s,\-–]/.test(text.trim());
  const pattern = separated ? /[^\s,\-–]+/g : /\S/g;
  return [...text.matchAll(pattern)].map((match) => ({ text: match[0], at: match.index }));
}

const refuse = (
  code: FingeringErrorCode,
  { text, at }: Word,
  expected: string,
): Result<never, TextError<FingeringErrorCode>> =>
  err({ code, at, length: text.length, found: text, expected: [expected] });

/** How far apart the outer held frets lie. */
function widthOf(frets: Frets, instrument: Instrument): number {
  const held = frets.filter((f): f is number => f !== null && f > instrument.capo);
  if (held.length < 2) return 0;
  return distanceBetween(instrument.scale, Math.min(...held), Math.max(...held));
}

/** Whether a hand could hold it; `found` is what the error quotes. Frets with string 1 first. */
export function checkFingering(
  frets: Frets,
  instrument: Instrument,
  found = makeFingering(frets),
): Result<Frets, TextError<FingeringErrorCode>> {
  const whole = { text: found, at: 0 };
  if (frets.filter((f) => f !== null).length < 2) {
    return refuse('silent', whole, 'at least two strings that sound');
  }
  if (widthOf(frets, instrument) > WIDEST_HAND) {
    return refuse('wide', whole, `frets no more than ${WIDEST_HAND} mm apart`);
  }
  return fingeringOf(frets, instrument.capo) === undefined
    ? refuse('fingers', whole, 'no more than four fingers, a barre counting one')
    : ok(frets);
}

/**
 * The frets of a typed fingering, whether a hand can hold them or not. Error codes: `count`, `fret`,
 * `beyond`.
 */
export function fretsIn(
  text: string,
  instrument: Instrument,
): Result<Frets, TextError<FingeringErrorCode>> {
  const words = wordsOf(text);
  const strings = instrument.strings.length;
  for (const word of words) {
    if (!/^(?:[xX×]|\d{1,2})$/.test(word.text)) return refuse('fret', word, 'x or a fret number');
    const f = Number(word.text);
    const off = f > instrument.frets || f < instrument.capo;
    if (/\d/.test(word.text) && off) {
      return refuse('beyond', word, `a fret from ${instrument.capo} to ${instrument.frets}`);
    }
  }
  if (words.length !== strings) {
    return refuse('count', { text, at: 0 }, `${strings} signs, one for each string, as x7678x`);
  }
  return ok(words.map(({ text: sign }) => (/\d/.test(sign) ? Number(sign) : null)).reverse());
}

/**
 * Reads a fingering typed from string 6 to string 1: `x7678x`, or with separators where a fret has
 * two digits, `x-10-12-11-12-x`. Gives frets with string 1 first, null for a string not played.
 * Error codes: `count` (not one word a string), `fret` (neither x nor a number), `beyond` (off the
 * neck or behind the capo), `silent`, `wide`, `fingers` (more than a hand can do).
 */
export function parseFingering(
  text: string,
  instrument: Instrument,
): Result<Frets, TextError<FingeringErrorCode>> {
  const frets = fretsIn(text, instrument);
  return frets.ok ? checkFingering(frets.value, instrument, text) : frets;
}

/** `x7678x`, or `x-10-12-11-12-x` from the tenth fret on; string 6 first. */
export function makeFingering(frets: Frets): string {
  const words = [...frets].reverse().map((f) => (f === null ? 'x' : String(f)));
  return words.join(words.some((word) => word.length > 1) ? '-' : '');
}
