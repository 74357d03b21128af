/**
 * Splits a chart's text into lines of words and bar lines. What people paste is first brought to
 * one alphabet, unit for unit, so that every offset stays an offset into the typed text.
 */

/** A run of text without space; `at` is its UTF-16 offset in the whole text. */
export interface Word {
  readonly kind: 'word';
  readonly text: string;
  readonly at: number;
  /** UTF-16 units of the typed text that it covers. */
  readonly length: number;
}

/** A bar line; it may close a repeat, open one, or be double. */
export interface BarLine {
  readonly kind: 'bar';
  readonly at: number;
  readonly length: number;
  readonly opens: boolean;
  readonly closes: boolean;
  readonly double: boolean;
}

export type Token = Word | BarLine;

/** One line of the text, in the one alphabet, without its end. */
export interface Line {
  /** From 1. */
  readonly number: number;
  readonly at: number;
  readonly text: string;
}

/** Each stands for as many UTF-16 units as it has itself: astral signs for two. */
const ALPHABET: readonly (readonly [RegExp, string])[] = [
  [/[│┃∣｜¦┆┇┊┋╎╏❘❙❚⎮ǀ￨▏]/g, '|'],
  [/[║∥ǁ]/g, '‖'],
  [/𝄀|𝄄|𝄅/gu, '| '],
  [/𝄁|𝄂|𝄃/gu, '||'],
  [/𝄆/gu, '|:'],
  [/𝄇/gu, ':|'],
  [/𝄎/gu, '% '],
  [/[：∶꞉]/g, ':'],
  [/[／∕⁄]/g, '/'],
  [/％/g, '%'],
  [/["“”„«»]/g, ' '],
  [
    /[\t\u00a0\u00ad\u1680\u180e\u2000-\u200f\u202a-\u202f\u205f-\u2064\u2066-\u206f\u3000\ufeff]/g,
    ' ',
  ],
  [/[→⇒⟶➔➜➝⇨↦➞▶►]/g, ' '],
  [/[-–—=]{1,8}>/g, ' '],
];

const LINE_END = /\r\n|[\n\r\v\f\u0085\u2028\u2029]/g;
const BAR_RUN = /:?[|‖][|‖:]*/y;
/** An ending that a chord is stuck to: `1.C`, `1,2.(Dm7`. */
const ENDING_BEFORE_CHORD = /\d{1,2}(?:[,.&+–-]\d{1,2})*[.):\]]+(?=[A-GN%/([])/y;
/** What a bracket that belongs to the symbol before it may hold, to its end. */
const BRACKETS = /\([^()|‖]{0,40}\)|\[[^[\]|‖]{0,40}\]|\{[^{}|‖]{0,40}\}/y;
/** A tension, addition, omission or bass set apart from its chord: `(b9)`, `sus4`, `(E bass)`. */
const TENSION =
  /^[([{]?\s*(?:[#b♯♭+-]*\d{1,2}(?![\d.:x×])|sus|add|no\s?\d|omit|maj|ma\d|M\d|min|m(?:\d|$)|mi\d|dim|aug|alt|[A-G][#b♯♭]?[ -]?[Bb]ass\)|[Δ△∆øØ°º+^]+)/;
const OPENING = '([{';
const CLOSING = ')]}';

export const isTension = (text: string): boolean => TENSION.test(text);

function padded(found: string, by: string): string {
  return found.length > by.length ? by + ' '.repeat(found.length - by.length) : by;
}

/** The text in the one alphabet; of the same length, so offsets hold. */
export function plainText(text: string): string {
  return ALPHABET.reduce(
    (plain, [from, to]) => plain.replace(from, (found) => padded(found, to)),
    text,
  );
}

/** The lines of a text that is in the one alphabet. */
export function linesOf(text: string): readonly Line[] {
  const lines: Line[] = [];
  let at = 0;
  for (const end of text.matchAll(LINE_END)) {
    lines.push({ number: lines.length + 1, at, text: text.slice(at, end.index) });
    at = end.index + end[0].length;
  }
  lines.push({ number: lines.length + 1, at, text: text.slice(at) });
  return lines;
}

function matchAt(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}

function barLine(run: string, at: number): BarLine {
  const strokes = run.replaceAll(':', '');
  const closes = run.startsWith(':');
  return {
    kind: 'bar',
    at,
    length: run.length,
    closes,
    opens: run.endsWith(':') || (!closes && strokes.length < run.length),
    double: strokes.length > 1 || strokes.includes('‖'),
  };
}

/** Whether the comma or semicolon at `at` parts two chords, not two tensions. */
const parts = (text: string, at: number): boolean =>
  ',;'.includes(text.charAt(at)) && !/[#b♯♭+\-\d]/.test(text.charAt(at + 1));

const endsWord = (text: string, at: number): boolean =>
  /[\s|‖]/.test(text.charAt(at)) ||
  CLOSING.includes(text.charAt(at)) ||
  (text[at] === ':' && /[|‖]/.test(text.charAt(at + 1))) ||
  parts(text, at);

/** Where the word that starts at `from` ends; brackets that close belong to it, with their spaces. */
function wordEnd(text: string, from: number): number {
  let at = from;
  while (at < text.length && !endsWord(text, at)) {
    const bracket = OPENING.includes(text.charAt(at)) ? matchAt(BRACKETS, text, at) : undefined;
    at += bracket?.length ?? 1;
  }
  return at;
}

/** How many units to leave out at `at`: space, and brackets and commas that hold no tension. */
function skipped(text: string, at: number): number {
  const char = text.charAt(at);
  if (/[\s,;]/.test(char) || CLOSING.includes(char)) return 1;
  if (!OPENING.includes(char)) return 0;
  const bracket = matchAt(BRACKETS, text, at);
  const ending = /^[[{]\s*\d/.test(bracket ?? '');
  return bracket !== undefined && isTension(bracket) && !ending ? 0 : 1;
}

/** The words and bar lines of a line from the unit `from` of its text on. */
export function tokensOf(line: Line, from = 0): readonly Token[] {
  const { text } = line;
  const tokens: Token[] = [];
  for (let at = from; at < text.length; ) {
    const run = matchAt(BAR_RUN, text, at);
    if (run !== undefined) {
      tokens.push(barLine(run, line.at + at));
      at += run.length;
      continue;
    }
    at += skipped(text, at) || addWord(tokens, line, at);
  }
  return joined(tokens);
}

function addWord(tokens: Token[], line: Line, at: number): number {
  const ending = matchAt(ENDING_BEFORE_CHORD, line.text, at)?.length;
  const end = ending === undefined ? Math.max(wordEnd(line.text, at), at + 1) : at + ending;
  const text = line.text.slice(at, end);
  tokens.push({ kind: 'word', text, at: line.at + at, length: end - at });
  return end - at;
}

/** Words that are written apart and mean one thing, and how the pair is written. */
const PAIRS: readonly (readonly [RegExp, RegExp, (a: string, b: string) => string])[] = [
  [/^no$/i, /^chords?$/i, (a, b) => `${a} ${b}`],
  [/^n\.$/i, /^c\.?$/i, (a, b) => a + b],
  [/^[x×✕]$/i, /^\d{1,4}$/, (a, b) => a + b],
  [/^\d{1,4}$/, /^(?:x|×|times)$/i, (a, b) => a + b],
  [/^\d{1,2}\/\d{1,2}$/, /^time[:.]?$/i, (a) => a],
];

function joinWords(a: Word, b: Word): Word | undefined {
  const pair = PAIRS.find(([first, second]) => first.test(a.text) && second.test(b.text));
  if (pair === undefined) return undefined;
  return { kind: 'word', text: pair[2](a.text, b.text), at: a.at, length: b.at + b.length - a.at };
}

function joinColon(a: Token, b: Token): Token | undefined {
  if (a.kind === 'word' && a.text === ':' && b.kind === 'bar') return { ...b, closes: true };
  if (a.kind === 'bar' && b.kind === 'word' && b.text === ':') return { ...a, opens: true };
  return undefined;
}

const join = (a: Token, b: Token): Token | undefined =>
  a.kind === 'word' && b.kind === 'word' ? joinWords(a, b) : joinColon(a, b);

function joined(tokens: readonly Token[]): readonly Token[] {
  const result: Token[] = [];
  for (const token of tokens) {
    const last = result.at(-1);
    const both = last === undefined ? undefined : join(last, token);
    if (both === undefined) result.push(token);
    else result[result.length - 1] = both;
  }
  return result;
}
