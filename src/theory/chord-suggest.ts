/** What an unreadable chord symbol was probably meant to be. */
import { LONGEST_SYMBOL, readFrame } from './chord-frame.ts';
import { readChord } from './chord-read.ts';
import { typedOffset } from './chord-text.ts';
import type { ChordErrorCode } from './chord-words.ts';
import type { TextError } from './result.ts';

/** What stands in for a root: other languages' names and letters that look like ours. */
const ROOTS: readonly (readonly [RegExp, string])[] = [
  [/^H(?![a-z])/, 'B'],
  [/^H(?=m|dim|aug|sus|add|maj)/, 'B'],
  [/^([CDFGA])is(?!us)/, '$1#'],
  [/^([EA])s(?!us)/, '$1b'],
  [/^([CDG])es/, '$1b'],
  // Sharps as `s`, where file names or tags allow no `#`.
  [/^([CDFG])s(?!u)/, '$1#'],
  [/^do(?!m)/i, 'C'],
  [/^ré?e?(?![a-z]*\s)/i, 'D'],
  [/^mi(?!n)/i, 'E'],
  [/^fa/i, 'F'],
  [/^sol/i, 'G'],
  [/^la/i, 'A'],
  [/^(?:si|ti)/i, 'B'],
  [/^С/, 'C'],
  [/^А/, 'A'],
  [/^В/, 'B'],
  [/^Е/, 'E'],
  [/^([A-G])B(?![a-z])/, '$1b'],
  [/^♭([A-G])/, '$1b'],
  [/^b([A-G])/, '$1b'],
  [/^[♯#]([A-G])/, '$1#'],
];

/** Qualities worth being mistyped, the commoner first. */
const VOCABULARY: readonly string[] = (
  'm 7 m7 maj7 dim sus4 sus2 add9 6 m6 9 m9 maj9 7sus4 dim7 aug m7b5 sus 5 11 13 69 2 4 ' +
  'min maj min7 major minor aug7 9sus4 13sus4 m11 m13 maj13 madd9 m(maj7) mMaj7 minmaj7 7alt ' +
  'alt 7b9 7#9 7b5 7#5 7b13 7#11 7b9b13 7#9#5 7b9#11 9#11 13#11 13b9 maj7#11 maj7#5 maj9#11 ' +
  '7sus2 7sus4b9 add2 add4 add11 no3 6/9 m69 m6/9 (add9) m(add9) m7(b5) 7(b9) 7(#9) 7(#11) (no3) ' +
  'dim9 min9 min6 min11 min7b5 maj6 sus2sus4 7sus 9sus 13sus augmented diminished'
).split(' ');

/**
 * Edit distance in which exchanging two neighbours counts once (optimal string alignment).
 * Small letters and capitals count as the same.
 */
function editDistance(a: string, b: string): number {
  const [left, right] = [a.toLowerCase(), b.toLowerCase()];
  let before: readonly number[] = [];
  let row: readonly number[] = Array.from({ length: right.length + 1 }, (_, j) => j);
  for (let i = 1; i <= left.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= right.length; j += 1) {
      const same = left[i - 1] === right[j - 1];
      const swapped = left[i - 1] === right[j - 2] && left[i - 2] === right[j - 1];
      const swap = swapped && i > 1 && j > 1 ? (before[j - 2] ?? 0) + 1 : Number.POSITIVE_INFINITY;
      const [up = 0, diagonal = 0, beside = 0] = [row[j], row[j - 1], next[j - 1]];
      next.push(Math.min(up + 1, beside + 1, diagonal + (same ? 0 : 1), swap));
    }
    [before, row] = [row, next];
  }
  return row[right.length] ?? left.length;
}

const readable = (symbol: string): boolean => readChord(symbol).ok;

/** Digits and what goes with them are rarely exchanged, and often make sense when they are. */
const NUMERIC = /[\d+-]/;

/** The symbol with each two neighbours exchanged, from the left. */
function exchanges(symbol: string): readonly string[] {
  const all: string[] = [];
  for (let i = 0; i + 1 < symbol.length; i += 1) {
    const [a = '', b = ''] = [symbol[i], symbol[i + 1]];
    const isSlip = a !== b && !NUMERIC.test(a + b);
    if (isSlip) all.push(symbol.slice(0, i) + b + a + symbol.slice(i + 2));
  }
  return all;
}

function otherRoot(symbol: string): string | undefined {
  const capital = symbol.charAt(0).toUpperCase() + symbol.slice(1);
  const candidates = ROOTS.filter(([pattern]) => pattern.test(symbol)).map(([pattern, root]) =>
    symbol.replace(pattern, root),
  );
  return [...candidates, ...(capital === symbol ? [] : [capital])].find(readable);
}

/** `C/H` → `C/B`, `C/G7` → `C/G`, `C/` → `C`. */
function otherBass(symbol: string, error: TextError<ChordErrorCode>): string | undefined {
  const before = symbol.slice(0, error.at);
  const rest = symbol.slice(error.at).trim();
  const basses = [otherRoot(rest), /^[A-G][#b]?/.exec(rest)?.[0]];
  const bare = before.replace(/[\s/\\]+$/, '');
  return [...basses.flatMap((bass) => (bass ? [before + bass] : [])), bare].find(readable);
}

function otherBracket(symbol: string, error: TextError<ChordErrorCode>): string | undefined {
  const closed = [')', ']', '}'].map((bracket) => symbol + bracket);
  const without = [
    symbol.slice(0, error.at) + symbol.slice(error.at + error.length),
    symbol.replaceAll(/[()[\]{}]/g, ''),
  ];
  return [...closed, ...without].find(readable);
}

/** At most one slip in three characters, so that something of what was typed stays. */
const slipsAllowed = (length: number): number => Math.min(2, Math.floor(length / 3));

function otherQuality(symbol: string): string | undefined {
  const frame = readFrame(symbol);
  if (!frame.ok) return undefined;
  const { plain, rootFrom, qualityFrom, qualityTo } = frame.value;
  const [start, from, to] = [rootFrom, qualityFrom, qualityTo].map((at) => typedOffset(plain, at));
  const root = symbol.slice(start, from);
  const quality = symbol.slice(from, to);
  const bass = frame.value.bass ? symbol.slice(to, typedOffset(plain, frame.value.bass.to)) : '';
  const allowed = slipsAllowed(quality.length);
  const near = VOCABULARY.filter((word) => Math.abs(word.length - quality.length) <= allowed);
  const ranked = near
    .map((word) => ({ word, slips: editDistance(quality, word) }))
    .filter(({ word, slips }) => word !== quality && slips <= allowed)
    .sort((a, b) => a.slips - b.slips)
    .map(({ word }) => root + word + bass);
  return ranked.find(readable);
}

/** The typed symbol without what was not understood, if it is a chord and little is lost. */
function withoutStrange(symbol: string, error: TextError<ChordErrorCode>): string | undefined {
  const isWord = /^[A-G][a-z]+$/.test(symbol);
  if (isWord || error.at < 2 || error.length === 0) return undefined;
  const [before, after] = [symbol.slice(0, error.at), symbol.slice(error.at + error.length)];
  return [before + after, before].map((text) => text.replace(/[\s,;/\\]+$/, '')).find(readable);
}

/** A readable symbol near the one that failed, or undefined. Costs some 100 µs. */
export function suggestChord(symbol: string, error: TextError<ChordErrorCode>): string | undefined {
  const typed = symbol.trim();
  if (typed === '' || typed.length > LONGEST_SYMBOL) return undefined;
  if (error.code === 'bracket') return otherBracket(symbol, error);
  if (error.code === 'bass') return otherBass(symbol, error);
  if (error.code === 'root') return otherRoot(typed);
  return (
    exchanges(typed).find(readable) ??
    otherRoot(typed) ??
    otherQuality(typed) ??
    withoutStrange(symbol, error)
  );
}
