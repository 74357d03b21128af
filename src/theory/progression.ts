/** Reads a hand-written chart: bars, chords, repeats, endings, time signatures, names of passages. */
import { copySlots, isOverfull, laySlots, MOST_UNITS, type Unit } from './chart-bar.ts';
import {
  type BarLine,
  type Line,
  linesOf,
  plainText,
  type Token,
  tokensOf,
  type Word,
} from './chart-lex.ts';
import { headingOf } from './chart-names.ts';
import { isFact, isRemark, remark, sungTokens } from './chart-remarks.ts';
import {
  beginEnding,
  closeRepeat,
  endEnding,
  endRepeats,
  openRepeat,
  repeatLine,
  roundsFrom,
  takeSigns,
} from './chart-repeats.ts';
import {
  addBar,
  chartOf,
  type Reading,
  report,
  startReading,
  startSection,
} from './chart-state.ts';
import { METRE_UNITS, MOST_BEATS, parseMetre } from './chart-time.ts';
import { readUnits, spanOf } from './chart-units.ts';
import { countOf, endingOf, metreText } from './chart-words.ts';
import type { Chart, ChartProblem, Slot, TextSpan } from './types.ts';

export interface ReadChart {
  readonly chart: Chart;
  /** In the order of the text. */
  readonly problems: readonly ChartProblem[];
}

const METRE_EXPECTED = [`1 to ${MOST_BEATS} beats of a unit ${METRE_UNITS.join(', ')}, as 3/4`];
const TIME_SIGNS: Readonly<Record<string, string>> = { '𝄴': '4/4', '𝄵': '2/2' };

/** A time signature at the start of a bar; false if the word is none. */
function readMetre(reading: Reading, found: Word): boolean {
  const text = TIME_SIGNS[found.text] ?? metreText(found.text);
  if (text === undefined) return false;
  const metre = parseMetre(text);
  if (metre !== undefined) reading.metre = metre;
  else {
    const trouble = { code: 'metre', span: spanOf(found), found: found.text } as const;
    report(reading, { ...trouble, expected: METRE_EXPECTED });
  }
  return true;
}

/** An ending at the start of a bar; false if the word is none. */
function readEnding(reading: Reading, found: Word): boolean {
  const rounds = endingOf(found.text);
  if (rounds === undefined || !reading.barred) return false;
  beginEnding(reading, rounds, found.text, spanOf(found));
  return true;
}

/** Takes endings and time signatures from the front of a bar. */
function takeHead(reading: Reading, words: readonly Word[]): readonly Word[] {
  const rest = words.findIndex(
    (found) => !readMetre(reading, found) && !readEnding(reading, found),
  );
  return rest < 0 ? [] : words.slice(rest);
}

function spanOfUnits(units: readonly Unit[]): TextSpan {
  const at = units[0]?.span.at ?? 0;
  const last = units.at(-1)?.span ?? { at, length: 0 };
  return { at, length: last.at + last.length - at };
}

function slotsFor(reading: Reading, units: readonly Unit[]): readonly Slot[] {
  const { metre } = reading;
  if (isOverfull(units, metre)) {
    const expected = [`at most ${metre.beats} chords and slashes in ${metre.beats}/${metre.unit}`];
    const span = spanOfUnits(units);
    report(reading, { code: 'beats', span, found: String(units.length), expected });
  }
  return laySlots(units, metre, reading.lastSlot);
}

function isSameBar(reading: Reading, units: readonly Unit[]): boolean {
  const [only] = units;
  return units.length === 1 && only?.kind === 'harmony' && only.same && reading.bars.length > 0;
}

function writeBar(reading: Reading, units: readonly Unit[], span: TextSpan): void {
  const before = reading.bars.at(-1);
  const same = isSameBar(reading, units) && before !== undefined;
  const { metre } = reading;
  const slots = same
    ? copySlots(before.slots, before.metre, metre, units[0]?.span ?? span)
    : slotsFor(reading, units);
  addBar(reading, { metre, slots, same, ...takeSigns(reading), span });
}

/** A bar, or more where so much stands in it that it goes on in the next. */
function writeBars(reading: Reading, units: readonly Unit[], span: TextSpan): void {
  for (let from = 0; from < units.length; from += MOST_UNITS) {
    writeBar(reading, units.slice(from, from + MOST_UNITS), span);
  }
}

/** In text without bar lines each chord begins a bar. */
function writeBarPerChord(reading: Reading, units: readonly Unit[]): void {
  let from = 0;
  for (let to = 1; to <= units.length; to += 1) {
    if (to < units.length && units[to]?.kind === 'beat') continue;
    const bar = units.slice(from, to);
    writeBars(reading, bar, spanOfUnits(bar));
    from = to;
  }
}

function readCell(reading: Reading, words: readonly Word[], span: TextSpan): void {
  const units = readUnits(reading, takeHead(reading, words));
  if (reading.barred) writeBars(reading, units, span);
  else writeBarPerChord(reading, units);
}

/** In text without bar lines a time signature may stand before any chord. */
function metreRuns(words: readonly Word[]): readonly (readonly Word[])[] {
  const runs: Word[][] = [[]];
  for (const found of words) {
    const text = metreText(found.text);
    if (text !== undefined && parseMetre(text) !== undefined) runs.push([]);
    runs.at(-1)?.push(found);
  }
  return runs;
}

function readWords(reading: Reading, words: readonly Word[], span: TextSpan): void {
  if (words.length === 0) return;
  const runs = reading.barred ? [words] : metreRuns(words);
  for (const run of runs) readCell(reading, run, span);
}

function readBarLine(reading: Reading, sign: BarLine, rounds: number): void {
  const span = { at: sign.at, length: sign.length };
  if (sign.closes) closeRepeat(reading, span, rounds);
  if (sign.double) endEnding(reading);
  if (sign.opens) openRepeat(reading, span);
}

/** What the counts of a line (`x3`) belong to. */
interface Counts {
  readonly first: number;
  closing: { readonly rounds: number } | undefined;
  line: { readonly rounds: number; readonly span: TextSpan } | undefined;
}

/** A count after or before `:|`, or at the end of the line; false if the word is none of these. */
function readCount(reading: Reading, tokens: readonly Token[], i: number, counts: Counts): boolean {
  const token = tokens[i];
  const count = token?.kind === 'word' ? countOf(token.text) : undefined;
  if (token?.kind !== 'word' || count === undefined) return false;
  const before = tokens[i - 1];
  const after = tokens[i + 1];
  const last = reading.bars.at(-1);
  const atEnd = tokens.slice(i + 1, i + 4).every(({ kind }) => kind === 'bar');
  const closed = before?.kind === 'bar' && before.closes && last?.closesRepeat !== undefined;
  const closes = after?.kind === 'bar' && after.closes;
  if (!closed && !closes && !atEnd) return false;
  const span = spanOf(token);
  const rounds = roundsFrom(reading, count, token.text, span);
  if (closed) last.closesRepeat = rounds;
  else if (closes) counts.closing = { rounds };
  else counts.line = { rounds, span };
  return true;
}

function readTokens(reading: Reading, tokens: readonly Token[], end: number): void {
  const counts: Counts = { first: reading.bars.length, closing: undefined, line: undefined };
  let words: Word[] = [];
  let from = tokens[0]?.at ?? end;
  for (const [i, token] of tokens.entries()) {
    if (token.kind === 'word') {
      if (!readCount(reading, tokens, i, counts)) words.push(token);
      continue;
    }
    readWords(reading, words, { at: from, length: token.at - from });
    readBarLine(reading, token, counts.closing?.rounds ?? 2);
    counts.closing = undefined;
    words = [];
    from = token.at + token.length;
  }
  readWords(reading, words, { at: from, length: end - from });
  if (counts.line !== undefined) {
    repeatLine(reading, counts.first, counts.line.rounds, counts.line.span);
  }
}

/** The bars of a line, once it is known what else stands in it. */
function readBars(reading: Reading, line: Line): void {
  const end = line.at + line.text.length;
  if (/^\s*:?[|‖]/.test(line.text)) {
    readTokens(reading, tokensOf(line), end);
    return;
  }
  const sung = sungTokens(reading, line);
  if (sung !== undefined) {
    remark(reading, line);
    readTokens(reading, sung, end);
    return;
  }
  const heading = headingOf(reading, line);
  if (heading === undefined && isRemark(reading, line)) {
    remark(reading, line);
    return;
  }
  if (heading?.name !== undefined) startSection(reading, heading.name);
  readTokens(reading, tokensOf(line, heading?.length ?? 0), end);
}

function readLine(reading: Reading, line: Line): void {
  reading.line = line;
  if (line.text.trim() === '') return;
  if (isFact(line)) remark(reading, line);
  else readBars(reading, line);
}

/**
 * Reads a chart as people write it. Never fails: what could not be used stands in `problems`, with
 * line and column from 1 (UTF-16), and everything else works. Bars are parted by `|` and its
 * typographic kin and by line ends; text without any bar line is a chord a bar. A symbol that means
 * nothing keeps its share of the bar as an `unread` slot.
 */
export function parseProgression(text: string): ReadChart {
  const plain = plainText(text);
  const reading = startReading(/[|‖]/.test(plain));
  for (const line of linesOf(plain)) readLine(reading, line);
  endRepeats(reading);
  const problems = reading.problems.toSorted((a, b) => a.span.at - b.span.at);
  return { chart: chartOf(reading), problems };
}
