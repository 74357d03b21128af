/** Finds the name of a passage in a line of a chart. */
import { type Line, tokensOf } from './chart-lex.ts';
import { harmonyAt, type Reading } from './chart-state.ts';
import { looksLikeChord } from './chart-units.ts';
import {
  countOf,
  endingOf,
  isFeel,
  isLetterName,
  isMark,
  isPartName,
  isRoadSign,
  isSame,
  leadingPartName,
  metreText,
} from './chart-words.ts';

/** How many units at the start of a line are no bars, and the name of a passage that they give. */
export interface Heading {
  readonly name?: string;
  readonly length: number;
}

const MOST_NAME_WORDS = 6;
const MOST_NAME_UNITS = 60;
const IN_BRACKETS = /^(\s*\[([^\]|‖]*)\]\s*:?)(.*)$/s;
const BEFORE_COLON = /^(\s*([^:|‖[\]]{1,60}):)(.*)$/s;
const SIGN_AT_END =
  /[\s([]*(?:[x×]\s?\d{1,4}|\d{1,4}\s?(?:[x×]|times)|\d{1,2}\/\d{1,2})[\s)\].:]*$/i;
const BEFORE_BAR = /^(\s*([^:|‖[\]]{1,60}?)\s*)[|‖]/s;

export type WordKind = 'chord' | 'near' | 'sign' | 'other';

const isSign = (text: string): boolean =>
  isMark(text) ||
  isSame(text) ||
  text.startsWith('/') ||
  isRoadSign(text) ||
  countOf(text) !== undefined ||
  metreText(text) !== undefined ||
  endingOf(text) !== undefined;

function kindOf(reading: Reading, text: string): WordKind {
  const symbol = harmonyAt(reading, text);
  if (symbol.ok) return 'chord';
  if (isSign(text)) return 'sign';
  return looksLikeChord(text, symbol.error) ? 'near' : 'other';
}

const wordsOf = (text: string): readonly string[] =>
  tokensOf({ number: 1, at: 0, text }).flatMap((t) => (t.kind === 'word' ? [t.text] : []));

export const kindsOf = (reading: Reading, text: string): readonly WordKind[] =>
  wordsOf(text).map((found) => kindOf(reading, found));

const cleaned = (name: string): string =>
  name
    .replaceAll(/[[\]|‖]/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();

/** A name without what people set it off with: `(Intro)`, `== Verse ==`, `Chorus:`. */
const unwrapped = (name: string): string =>
  cleaned(name)
    .slice(0, MOST_NAME_UNITS)
    .replace(/^[\s*#=~_<-]*\(?([^()]*)\)?[\s*#=~_>:.,-]*$/, '$1')
    .replace(/^[\s*#=~_<-]+/, '')
    .replace(/[\s*#=~_>:.,-]+$/, '');

/** Whether `[name]` would be read as this name again. */
function isName(reading: Reading, name: string): boolean {
  if (!/\p{L}/u.test(name)) return false;
  if (countOf(name) !== undefined || endingOf(name) !== undefined) return false;
  const kinds = kindsOf(reading, name);
  return isLetterName(name) || kinds.length === 0 || kinds.some((kind) => kind !== 'chord');
}

/** A name that nobody would take for chords. */
function isPlainName(reading: Reading, name: string): boolean {
  if (!isName(reading, name)) return false;
  if (isLetterName(name) || isPartName(name)) return true;
  const words = wordsOf(name);
  const kinds = words.map((found) => kindOf(reading, found));
  const harmless = kinds.every((kind) => kind === 'other' || kind === 'sign');
  const signs = words.some((found) => countOf(found) !== undefined || isSame(found));
  const worded = kinds[0] === 'other' || (kinds.includes('other') && isFeel(words[0] ?? ''));
  return harmless && worded && !signs && words.length <= MOST_NAME_WORDS;
}

/** A chord or chords that only look like a decorated name: `C#`, `B-`. */
function isChords(reading: Reading, text: string): boolean {
  if (isLetterName(text.trim().replace(/[).:]+$/, ''))) return false;
  const kinds = kindsOf(reading, text);
  return kinds.length > 0 && kinds.every((kind) => kind === 'chord');
}

function bracketed(reading: Reading, text: string): Heading | undefined {
  const [, taken, inner, rest] = IN_BRACKETS.exec(text) ?? [];
  if (taken === undefined || inner === undefined || rest === undefined) return undefined;
  const name = cleaned(inner);
  const alone = rest.trim() === '' || /^\s*[|‖:]/.test(rest);
  const chordLetter = isLetterName(name) && !alone && (!reading.barred || /^\s*\[/.test(rest));
  return isName(reading, name) && !chordLetter ? { name, length: taken.length } : undefined;
}

function beforeColon(reading: Reading, text: string): Heading | undefined {
  const [, taken, inner, rest] = BEFORE_COLON.exec(text) ?? [];
  if (taken === undefined || inner === undefined || rest === undefined) return undefined;
  if (isChords(reading, inner)) return undefined;
  const name = unwrapped(inner);
  const closing = /^[|‖:]/.test(rest) && !isPartName(name);
  return isPlainName(reading, name) && !closing ? { name, length: taken.length } : undefined;
}

function leading(reading: Reading, text: string): Heading | undefined {
  const found = leadingPartName(text);
  if (found !== undefined) {
    return { name: cleaned(found), length: text.indexOf(found) + found.length };
  }
  const [, taken, inner] = BEFORE_BAR.exec(text) ?? [];
  if (taken === undefined || inner === undefined) return undefined;
  if (isLetterName(inner) || isChords(reading, inner)) return undefined;
  const name = unwrapped(inner);
  return isPlainName(reading, name) ? { name, length: taken.length } : undefined;
}

/** How much of a line is its name: all but a count or a time signature at its end. */
function nameLength(text: string): number {
  const from = Math.max(text.length - MOST_NAME_UNITS, 0);
  const found = SIGN_AT_END.exec(text.slice(from));
  return found === null ? text.length : from + found.index;
}

function wholeLine(reading: Reading, text: string): Heading | undefined {
  if (/[|‖]/.test(text) || isChords(reading, text)) return undefined;
  const length = nameLength(text);
  const name = unwrapped(text.slice(0, length));
  const letter = isLetterName(name) && !reading.barred;
  return isPlainName(reading, name) && !letter ? { name, length } : undefined;
}

/** `Time: 3/4`. */
function timeFact(text: string): Heading | undefined {
  const found = /^\s*(?:time|metre|meter)(?: signature)?\s*[:=]?\s*(?=\d)/i.exec(text)?.[0];
  return found === undefined ? undefined : { length: found.length };
}

/** The name with which a line begins, or which is the whole line. */
export const headingOf = (reading: Reading, line: Line): Heading | undefined =>
  timeFact(line.text) ??
  bracketed(reading, line.text) ??
  beforeColon(reading, line.text) ??
  wholeLine(reading, line.text) ??
  leading(reading, line.text);
