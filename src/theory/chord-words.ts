/** The vocabulary of chord symbols, and the text after the root cut into its words. */
import { err, ok, type Result } from './result.ts';

export type Word =
  | 'minor'
  | 'major'
  | 'triangle'
  | 'dim'
  | 'half'
  | 'aug'
  | 'dom'
  | 'sus'
  | 'alt'
  | 'phrygian'
  | 'add'
  | 'no';

/** A word of a chord symbol; `from` and `to` are offsets into the plain text. */
export type Token = { readonly from: number; readonly to: number } & (
  | { readonly kind: 'word'; readonly word: Word }
  | { readonly kind: 'number'; readonly number: number }
  | { readonly kind: 'sign'; readonly alter: number }
  | { readonly kind: 'plus' | 'dash' }
  | { readonly kind: 'open' | 'close'; readonly bracket: string }
  /** `apart` = a slash or comma, which sets a tension apart; a space or full stop does not. */
  | { readonly kind: 'gap'; readonly apart: boolean }
);

/** What is wrong with a chord symbol. */
export type ChordErrorCode =
  | 'empty'
  | 'long' // over 64 characters
  | 'root' // no note letter at the start
  | 'quality' // letters that are no word of a chord symbol
  | 'tension' // a number that is no tension, or an alteration without sense
  | 'bracket' // one without its other half, or with nothing in it
  | 'bass' // no note after the slash
  | 'conflict'; // two statements that exclude each other

/** A failure in the plain text. */
export interface Failure {
  readonly code: ChordErrorCode;
  readonly from: number;
  readonly to: number;
  readonly expected: readonly string[];
}

export const fail = (
  code: ChordErrorCode,
  { from, to }: { readonly from: number; readonly to: number },
  ...expected: readonly string[]
): { readonly ok: false; readonly error: Failure } => err({ code, from, to, expected });

export const A_QUALITY = 'a quality such as m, maj7, 7, sus4 or dim';
export const A_TENSION = 'a tension such as 9, b9, #11 or 13';
export const A_BASS = 'a bass note such as /E or /F#';

/** Written in any mixture of capitals. */
const SPELLINGS: readonly (readonly [Word, readonly string[]])[] = [
  ['half', ['halfdiminished', 'halfdim', 'hdim', '%']],
  ['minor', ['minor', 'min', 'mi']],
  ['major', ['major', 'maj', 'mj', 'ma']],
  ['dim', ['diminished', 'dim', 'di']],
  ['aug', ['augmented', 'aug']],
  ['dom', ['dominant', 'dom']],
  ['sus', ['suspended', 'susp', 'sus']],
  ['alt', ['altered', 'alt']],
  ['phrygian', ['phrygian', 'phryg']],
  ['add', ['add']],
  ['no', ['omit', 'no']],
];

const WORDS: ReadonlyMap<string, Word> = new Map(
  SPELLINGS.flatMap(([word, spellings]) => spellings.map((spelling) => [spelling, word] as const)),
);

/**
 * The longest spelling first; `madd9` and `malt` begin with a bare m. `%7` is half-diminished in
 * text corpora of jazz; a lone `%` stands for a repeated bar.
 */
const WORD = new RegExp(
  [...WORDS.keys()]
    .sort((a, b) => b.length - a.length)
    .map((spelling) => (spelling === 'ma' ? 'ma(?!dd|ug|lt)' : spelling))
    .map((spelling) => spelling.replace(/^half/, 'half[- ]?').replace('%', '%(?=7)'))
    .join('|'),
  'iy',
);

/** Capitals matter only here. */
const LETTERS: Readonly<Record<string, Word>> = {
  m: 'minor',
  M: 'major',
  j: 'triangle',
  J: 'triangle',
  Δ: 'triangle',
  '^': 'triangle',
  o: 'dim',
  O: 'dim',
  '°': 'dim',
  h: 'half',
  ø: 'half',
};

const SIGNS: Readonly<Record<string, number>> = {
  '##': 2,
  '#': 1,
  sharp: 1,
  bb: -2,
  b: -1,
  flat: -1,
  '♮': 0,
  natural: 0,
  nat: 0,
};

/** Numbers in words: `C minor seventh`, `no third`. */
const NUMBER_WORDS: ReadonlyMap<string, number> = new Map([
  ['second', 2],
  ['third', 3],
  ['fourth', 4],
  ['fifth', 5],
  ['sixth', 6],
  ['seventh', 7],
  ['ninth', 9],
  ['eleventh', 11],
  ['thirteenth', 13],
]);
const NUMBER_WORD = new RegExp(`[- ]?(${[...NUMBER_WORDS.keys()].join('|')})`, 'iy');
/** An ordinal ending may follow: `no3rd`, `add 9th`. */
const NUMBER = /(13|11|[2-79])(?:th|rd|nd|st|d(?![a-z]))?/iy;
const SIGN = /##?|bb?|♮/y;
const SIGN_WORD = /(sharp|flat|natural|nat) ?/iy;
const GAP = /[ \t.·•]*[/\\,;|&][ \t/\\,;|&]*|[ \t.·•]+|_/y;
const OPENING: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}', '<': '>' };
const CLOSING = new Set(Object.values(OPENING));

const match = (pattern: RegExp, text: string, from: number): RegExpExecArray | null => {
  pattern.lastIndex = from;
  return pattern.exec(text);
};

function wordAt(text: string, from: number): Token | undefined {
  const found = match(WORD, text, from)?.[0];
  const word = found
    ? WORDS.get(found.toLowerCase().replace(/[- ]/, ''))
    : LETTERS[text.charAt(from)];
  return word && { kind: 'word', word, from, to: from + (found?.length ?? 1) };
}

function signAt(text: string, from: number): Token | undefined {
  const found = match(SIGN, text, from) ?? match(SIGN_WORD, text, from);
  const alter = found && SIGNS[(found[1] ?? found[0]).toLowerCase()];
  return found && alter != null
    ? { kind: 'sign', alter, from, to: from + found[0].length }
    : undefined;
}

function numberAt(text: string, from: number): Token | undefined {
  const found = match(NUMBER, text, from) ?? match(NUMBER_WORD, text, from);
  if (!found) return undefined;
  const written = found[1] ?? '';
  const number = NUMBER_WORDS.get(written.toLowerCase()) ?? Number(written);
  return { kind: 'number', number, from, to: from + found[0].length };
}

function markAt(text: string, from: number): Token | undefined {
  const character = text.charAt(from);
  const to = from + 1;
  if (character === '+') return { kind: 'plus', from, to };
  if (character === '-') return { kind: 'dash', from, to };
  const closing = OPENING[character];
  if (closing) return { kind: 'open', bracket: closing, from, to };
  if (CLOSING.has(character)) return { kind: 'close', bracket: character, from, to };
  const gap = match(GAP, text, from);
  if (!gap) return undefined;
  return { kind: 'gap', apart: /[^ \t._·•]/.test(gap[0]), from, to: from + gap[0].length };
}

function strange(text: string, from: number): ReturnType<typeof fail> {
  const digits = match(/\d+/y, text, from);
  if (digits) return fail('tension', { from, to: from + digits[0].length }, A_TENSION);
  const rest = match(/[^\s()[\]{}/\\,]+/y, text, from)?.[0] ?? text.charAt(from);
  const to = from + rest.length;
  if (/[/\\]\s*$/.test(text.slice(0, from))) return fail('bass', { from, to }, A_BASS, A_TENSION);
  return fail('quality', { from, to }, A_QUALITY, A_TENSION, A_BASS);
}

/** Cuts the quality text from `from` to `to` into tokens; fails at the first thing that is none. */
export function readTokens(
  text: string,
  from: number,
  to: number,
): Result<readonly Token[], Failure> {
  const quality = text.slice(0, to);
  const tokens: Token[] = [];
  let at = from;
  // A zero right after the root is a ring typed on a keyboard that has none.
  if (quality.charAt(at) === '0') {
    tokens.push({ kind: 'word', word: 'dim', from: at, to: at + 1 });
    at += 1;
  }
  while (at < to) {
    const token =
      numberAt(quality, at) ?? markAt(quality, at) ?? wordAt(quality, at) ?? signAt(quality, at);
    if (!token) return strange(quality, at);
    tokens.push(token);
    at = token.to;
  }
  return ok(tokens);
}
