/** Reads one chord symbol, without looking for a suggestion when that fails. */
import { type Frame, makeChordOf, readFrame } from './chord-frame.ts';
import { readHarte } from './chord-harte.ts';
import { type AccidentalSide, readItems } from './chord-items.ts';
import { plainText, typedOffset } from './chord-text.ts';
import { tonesOf } from './chord-tones.ts';
import { type ChordErrorCode, type Failure, readTokens, type Token } from './chord-words.ts';
import { ok, type Result, type TextError } from './result.ts';
import { textError } from './text-error.ts';
import type { Chord, Degree } from './types.ts';

/**
 * Digits in a row that name the seventh and its tensions (`79b13`) come from a hand that writes the
 * accidental behind its number: ♭9 and 13, not 9 and ♭13.
 */
const BEHIND = /79b13/;

/** Reads accidentals before their numbers, and where that gives no sense, behind them. */
function readQuality(tokens: readonly Token[], text: string): Result<readonly Degree[], Failure> {
  const read = (side: AccidentalSide) => {
    const items = readItems(tokens, side);
    return items.ok ? tonesOf(items.value) : items;
  };
  const [first, second]: readonly AccidentalSide[] = BEHIND.test(text)
    ? ['after', 'before']
    : ['before', 'after'];
  const before = read(first ?? 'before');
  if (before.ok) return before;
  const after = read(second ?? 'after');
  return after.ok ? after : before;
}

function readFramed(frame: Frame): Result<Chord, Failure> {
  const { text } = frame.plain;
  const tokens = readTokens(text, frame.qualityFrom, frame.qualityTo);
  if (!tokens.ok) return tokens;
  const tail = frame.tail ? readTokens(text, frame.tail.from, frame.tail.to) : ok([]);
  if (!tail.ok) return tail;
  const tones = readQuality(
    [...tokens.value, ...tail.value],
    text.slice(frame.qualityFrom, frame.qualityTo),
  );
  return tones.ok ? ok(makeChordOf(frame.root, tones.value, frame.bass?.note)) : tones;
}

/** The chord a typed symbol means; positions in the error are offsets into the typed text. */
export function readChord(typed: string): Result<Chord, TextError<ChordErrorCode>> {
  const frame = readFrame(typed);
  const harte = frame.ok ? readHarte(frame.value) : undefined;
  const chord = harte ?? (frame.ok ? readFramed(frame.value) : frame);
  if (chord.ok) return chord;
  const { code, from, to, expected } = chord.error;
  const plain = code === 'long' ? { text: typed } : plainText(typed);
  return textError(code, typed, typedOffset(plain, from), typedOffset(plain, to), expected);
}
