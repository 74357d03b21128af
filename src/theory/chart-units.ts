/** Reads the words between two bar lines: chords, beats, and what is neither. */
import type { Unit } from './chart-bar.ts';
import { isTension, type Word } from './chart-lex.ts';
import { harmonyAt, type Reading, report } from './chart-state.ts';
import { countOf, endingOf, isMark, isRoadSign, isSame, metreText } from './chart-words.ts';
import { parseNoteName } from './notes.ts';
import type { TextError } from './result.ts';
import type { Harmony, NoteName, Slot, TextSpan } from './types.ts';

const CHORD_EXPECTED = ['a chord symbol', 'N.C.', '% or /'];
const SIGN_EXPECTED = ['repeats written out as |: … :|', 'endings written out as |1. … :|2. … |'];
const COUNT_EXPECTED = ['a count after :| or at the end of the line'];
const METRE_EXPECTED = ['a time signature at the start of a bar'];
const ENDING_EXPECTED = ['an ending at the start of a bar, as |1.'];
const BEFORE_EXPECTED = ['a chord before it'];

/** UTF-16 units, with what may be stuck to a symbol. */
const LONGEST_SYMBOL = 80;

/** What has been read of a cell. */
interface Cell {
  readonly units: Unit[];
  /** Words that are no chords, to be judged when the whole cell is known. */
  readonly others: Word[];
  /** Words such as D.C., fade: where the others go that stand with them. */
  readonly signs: Word[];
  /** Dashes and dots, with the number of units before them. */
  readonly marks: { readonly before: number; readonly span: TextSpan }[];
}

export const spanOf = (word: Word): TextSpan => ({ at: word.at, length: word.length });

type Before = Pick<Slot, 'harmony' | 'symbol'> | undefined;

const lastHarmony = (cell: Cell): Extract<Unit, { kind: 'harmony' }> | undefined =>
  cell.units.findLast((unit) => unit.kind === 'harmony');

const beforeIn = (reading: Reading, cell: Cell): Before => lastHarmony(cell) ?? reading.lastSlot;

/** A harmony that could not be read, and why, at the place where reading stopped. */
function unread(reading: Reading, word: Word, error: TextError): Harmony {
  const at = Math.min(error.at, word.length);
  const length = Math.min(error.length, word.length - at);
  const { found, expected, suggestion } = error;
  const trouble = { code: 'chord', span: { at: word.at + at, length }, found, expected } as const;
  const near = suggestion === undefined ? {} : { suggestion };
  return { kind: 'unread', problem: report(reading, { ...trouble, ...near }) };
}

function nothingBefore(reading: Reading, span: TextSpan, found: string): Harmony {
  const trouble = { code: 'nothing-before', span, found, expected: BEFORE_EXPECTED } as const;
  return { kind: 'unread', problem: report(reading, trouble) };
}

function pushHarmony(cell: Cell, word: Word, harmony: Harmony, symbol = word.text): void {
  cell.units.push({ kind: 'harmony', harmony, symbol, span: spanOf(word), same: false });
}

function pushSame(reading: Reading, cell: Cell, word: Word): void {
  const before = beforeIn(reading, cell);
  const span = spanOf(word);
  if (before !== undefined) {
    const { harmony, symbol } = before;
    cell.units.push({ kind: 'harmony', harmony, symbol, span, same: true });
  } else {
    const harmony = nothingBefore(reading, span, word.text);
    cell.units.push({ kind: 'harmony', harmony, symbol: word.text, span, same: false });
  }
}

function pushBeat(reading: Reading, cell: Cell, at: number): void {
  const span = { at, length: 1 };
  if (cell.units.length > 0 || reading.lastSlot !== undefined) {
    cell.units.push({ kind: 'beat', span });
  } else {
    const harmony = nothingBefore(reading, span, '/');
    cell.units.push({ kind: 'harmony', harmony, symbol: '/', span, same: false });
  }
}

function pushBeats(reading: Reading, cell: Cell, at: number, count: number): void {
  for (let i = 0; i < count; i += 1) pushBeat(reading, cell, at + i);
}

function withBass(harmony: Harmony | undefined, bass: NoteName): Harmony | undefined {
  if (harmony?.kind !== 'chord') return undefined;
  const { root, tones } = harmony.chord;
  const sameAsRoot = root.letter === bass.letter && root.alter === bass.alter;
  return { kind: 'chord', chord: sameAsRoot ? { root, tones } : { root, tones, bass } };
}

/** `/B`: the chord before, over another bass. */
function pushBass(reading: Reading, cell: Cell, word: Word): boolean {
  const bass = parseNoteName(word.text.slice(1));
  if (!word.text.startsWith('/') || !bass.ok) return false;
  const harmony = withBass(beforeIn(reading, cell)?.harmony, bass.value);
  pushHarmony(cell, word, harmony ?? nothingBefore(reading, spanOf(word), word.text));
  return true;
}

/** `C7 (b9)`, `C maj7`: a tension that stands apart belongs to the chord before it. */
function attach(reading: Reading, cell: Cell, word: Word): boolean {
  const last = cell.units.at(-1);
  if (last?.kind !== 'harmony' || last.same || last.harmony.kind !== 'chord') return false;
  const symbol = last.symbol + withoutEndMarks(word).text;
  const harmony = harmonyAt(reading, symbol);
  if (!harmony.ok || last.symbol.startsWith('/')) return false;
  const span = { at: last.span.at, length: word.at + word.length - last.span.at };
  cell.units[cell.units.length - 1] = { ...last, harmony: harmony.value, symbol, span };
  return true;
}

type Misplaced = 'word' | 'metre' | 'ending' | 'repeat';

function complain(
  reading: Reading,
  found: Word,
  code: Misplaced,
  expected: readonly string[],
): void {
  const span = spanOf(found);
  if (code === 'word' && mergeWord(reading, found, expected)) return;
  report(reading, { code, span, found: found.text, expected });
}

/** `D.C. al Fine` is one problem: a word that directly follows another is drawn into its problem. */
function mergeWord(reading: Reading, found: Word, expected: readonly string[]): boolean {
  const last = reading.problems.at(-1);
  if (last?.expected !== expected || last.line !== reading.line.number) return false;
  const gap = found.at - last.span.at - last.span.length;
  if (gap < 0 || gap > 1) return false;
  const span = { at: last.span.at, length: found.at + found.length - last.span.at };
  const merged = { ...last, span, found: last.found + ' '.repeat(gap) + found.text };
  reading.problems[reading.problems.length - 1] = merged;
  return true;
}

const withoutEndMarks = (found: Word): Word => {
  const text = found.text.replace(/[.,;:!?*]+$/, '');
  return text === '' || text === found.text ? found : { ...found, text, length: text.length };
};

/** A chord that a comma or colon has stuck to, without it. */
function tidied(reading: Reading, found: Word): Word {
  const bare = withoutEndMarks(found);
  return bare !== found && harmonyAt(reading, bare.text).ok ? bare : found;
}

/** A root and the first letters of `sus`, `add`, `aug`, …: a chord that is still being typed. */
const HALF_TYPED =
  /^[A-G][#b♯♭]*(?:\d+|m|-)?(?:s|su|a|ad|au|d|di|do|ma|mi|M?a|al|no?|om|omi|omit)$/;

/** Whether a word that is no chord was probably meant as one. */
export const looksLikeChord = (text: string, error: TextError): boolean =>
  error.suggestion !== undefined ||
  HALF_TYPED.test(text) ||
  /^[A-H][#b♯♭]*(?:$|[^A-Za-z]|(?:maj|min|dim|aug|sus|add|alt|[mMj])(?![a-z]))/.test(text);

/** Words that may not stand where a chord stands; true if `found` was one. */
function readMisplaced(reading: Reading, cell: Cell, found: Word): boolean {
  const { text } = found;
  if (isRoadSign(text)) cell.signs.push(found);
  if (countOf(text) !== undefined) complain(reading, found, 'repeat', COUNT_EXPECTED);
  else if (metreText(text) !== undefined) complain(reading, found, 'metre', METRE_EXPECTED);
  else if (endingOf(text) !== undefined) complain(reading, found, 'ending', ENDING_EXPECTED);
  else if (isRoadSign(text)) complain(reading, found, 'word', SIGN_EXPECTED);
  else if (!/\p{L}/u.test(text)) complain(reading, found, 'word', CHORD_EXPECTED);
  else return false;
  return true;
}

/** `C-G-Am`: chords that are drawn together by dashes. */
function readJoined(reading: Reading, cell: Cell, found: Word): boolean {
  if (!/^[A-G][^[\]{};,.:]*$/.test(found.text)) return false;
  const words = [...found.text.matchAll(/[^-–—~>]+/g)].map((part): Word => {
    const [text] = part;
    return { kind: 'word', text, at: found.at + part.index, length: text.length };
  });
  const chords = words.map(({ text }) => harmonyAt(reading, text));
  if (words.length < 2 || !chords.every((chord) => chord.ok)) return false;
  for (const [i, chord] of chords.entries()) {
    const part = words[i];
    if (chord.ok && part !== undefined) pushHarmony(cell, part, chord.value);
  }
  return true;
}

/** A chord symbol, also with slashes or a full stop stuck to it. */
function readSymbol(reading: Reading, cell: Cell, found: Word): boolean {
  const harmony = harmonyAt(reading, found.text);
  if (harmony.ok) {
    pushHarmony(
      cell,
      harmony.value.kind === 'chord' ? tidied(reading, found) : found,
      harmony.value,
    );
    return true;
  }
  if (found.length > LONGEST_SYMBOL) return false;
  const slashes = /[^/](\/+)$/.exec(found.text)?.[1]?.length ?? 0;
  const length = found.length - slashes;
  const bare = withoutEndMarks({ ...found, text: found.text.slice(0, length), length });
  if (bare.text === found.text) return readJoined(reading, cell, found);
  if (!readSymbol(reading, cell, bare)) return false;
  pushBeats(reading, cell, found.at + length, slashes);
  return true;
}

function readUnclear(reading: Reading, cell: Cell, found: Word): void {
  const symbol = harmonyAt(reading, found.text);
  if (symbol.ok || readMisplaced(reading, cell, found)) return;
  const tension = isTension(found.text);
  if (looksLikeChord(found.text, symbol.error) && !tension) {
    pushHarmony(cell, found, unread(reading, found, symbol.error));
  } else if (tension && cell.units.length > 0) {
    complain(reading, found, 'word', CHORD_EXPECTED);
  } else {
    cell.others.push(found);
  }
}

function readWord(reading: Reading, cell: Cell, found: Word): void {
  const { text } = found;
  if (/^\/+$/.test(text)) pushBeats(reading, cell, found.at, text.length);
  else if (isSame(text)) pushSame(reading, cell, found);
  else if (isMark(text)) cell.marks.push({ before: cell.units.length, span: spanOf(found) });
  else if (readSymbol(reading, cell, found) || pushBass(reading, cell, found)) return;
  else if (isTension(text) && attach(reading, cell, found)) return;
  else readUnclear(reading, cell, found);
}

/** Words that are no chords: in a bar of nothing else they take its place, or else they are noted. */
function judgeOthers(reading: Reading, cell: Cell): void {
  const alone = cell.units.length === 0 && cell.signs.length === 0;
  for (const other of cell.others) {
    const symbol = harmonyAt(reading, other.text);
    if (alone && !symbol.ok) pushHarmony(cell, other, unread(reading, other, symbol.error));
    else complain(reading, other, 'word', CHORD_EXPECTED);
  }
}

/**
 * Dashes or dots between two chords part them. As many as fill the bar with the chords, two
 * together or at the end of the bar, are beats: `C - - G`, `C . . .`.
 */
function countMarks(reading: Reading, cell: Cell): void {
  const { units, marks } = cell;
  const parting = marks.every(({ before }, i) => {
    const alone = marks[i + 1]?.before !== before;
    return alone && before > 0 && before < units.length;
  });
  const fills = units.length > 0 && units.length + marks.length === reading.metre.beats;
  const follows = reading.lastSlot !== undefined || marks[0]?.before !== 0;
  if (parting || !fills || !follows) return;
  for (const { before, span } of marks.toReversed()) {
    units.splice(before, 0, { kind: 'beat', span });
  }
}

/** The units that the words of one cell (in text without bar lines, of one line) stand for. */
export function readUnits(reading: Reading, words: readonly Word[]): readonly Unit[] {
  const cell: Cell = { units: [], others: [], signs: [], marks: [] };
  for (const found of words) readWord(reading, cell, found);
  if (reading.barred) countMarks(reading, cell);
  judgeOthers(reading, cell);
  return cell.units;
}
