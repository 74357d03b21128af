/** The frame of a chord symbol: its root, its quality's stretch of text, and its bass. */
import { type PlainText, plainText } from './chord-text.ts';
import { type Failure, fail } from './chord-words.ts';
import { type AccidentalRun, isLetter, readAccidentals, sameNote } from './notes.ts';
import { ok, type Result } from './result.ts';
import type { Chord, Degree, Letter, NoteName } from './types.ts';

/** A chord symbol before its quality is read. All offsets are into the plain text. */
export interface Frame {
  readonly plain: PlainText;
  readonly root: NoteName;
  readonly rootFrom: number;
  readonly qualityFrom: number;
  readonly qualityTo: number;
  readonly bass?: BassFrame;
  /** Tensions behind the bass: `D/F#(add11)`, `D/F# add11`. */
  readonly tail?: Span;
}

interface Span {
  readonly from: number;
  readonly to: number;
}

export interface BassFrame {
  readonly note: NoteName;
  /** Where the slash stands, and where the note begins and ends. */
  readonly slash: number;
  readonly from: number;
  readonly to: number;
}

export const LONGEST_SYMBOL = 64;

const MOST_ROOT_SEMITONES = 2;
const MOST_BASS_SEMITONES = 4;
const A_ROOT = 'a root from A to G, with # or b';

/**
 * `/E`, `(/E)`, `onE`, `(E bass)`, and of chords in ABC notation, whose basses may be small, `/f+`
 * for F♯ and `/b-` for B♭.
 */
const BASS =
  /(\(\s*)?([/\\]|on\s?(?=[A-G])|(?=[A-G][#b]*[ -]?[Bb]ass))\s*(\(\s*)?([A-Ga-g])([#bx]*|(?<=[a-g])[+-])(?:[ -]?[Bb]ass)?\s*(\))?$/;
const CLOSES: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}' };

/** Without space around, footnotes, question and other marks behind, brackets around it all. */
function trimmed(text: string): Span {
  const from = text.length - text.trimStart().length;
  const body = text.slice(from).replace(/[\s*!?~†]*(?:[,;]|[.…]+)?[\s*!?~†]*$/, '');
  const closing = CLOSES[body.charAt(0)];
  if (closing === undefined || !body.endsWith(closing)) return { from, to: from + body.length };
  const inner = trimmed(body.slice(1, -1));
  return { from: from + 1 + inner.from, to: from + 1 + inner.to };
}

function readBass(text: string, from: number, to: number): BassFrame | undefined {
  const part = text.slice(from, to);
  const found = BASS.exec(part);
  if (!found) return undefined;
  const [, outer, slash = '', inner, letter = '', signs = '', closing] = found;
  const brackets = (outer === undefined ? 0 : 1) + (inner === undefined ? 0 : 1);
  if (brackets !== (closing === undefined ? 0 : 1)) return undefined;
  const plain = signs.replace('+', '#').replace('-', 'b');
  const run = readAccidentals(plain, 0, MOST_BASS_SEMITONES);
  if (run.length < signs.length) return undefined;
  const note: NoteName = { letter: letter.toUpperCase() as Letter, alter: run.alter };
  const noteFrom = from + found.index + found[0].indexOf(letter, found[0].indexOf(slash));
  return { note, slash: from + found.index, from: noteFrom, to: noteFrom + 1 + signs.length };
}

const TAIL = /^(.*[/\\]\s*[A-G][#b]*)\s*(\([^()/]*\)|(?:add|no|omit)[^/]*)$/;

/** The bass, and the stretch behind it that is in brackets or adds or omits something. */
function readEnd(text: string, from: number, to: number): Pick<Frame, 'bass' | 'tail'> {
  const bass = readBass(text, from, to);
  if (bass) return { bass };
  const found = TAIL.exec(text.slice(from, to));
  const before = found?.[1] && readBass(text, from, from + found[1].length);
  return found?.[2] && before ? { bass: before, tail: { from: to - found[2].length, to } } : {};
}

const ROOT_WORD = /[- ]?(sharp|flat)(?![a-z])|♮/iy;

/** `Bb`, `F♯♯`, also `B flat`, `F-sharp`, and `A♮`. */
function readRootSigns(text: string, from: number): AccidentalRun {
  const run = readAccidentals(text, from, MOST_ROOT_SEMITONES);
  ROOT_WORD.lastIndex = from;
  const word = run.length === 0 ? ROOT_WORD.exec(text) : null;
  if (!word) return run;
  const [written, name] = word;
  const alter = name === undefined ? 0 : name.toLowerCase() === 'flat' ? -1 : 1;
  return { alter, length: written.length };
}

/** Reads root and bass; fails with `empty`, `long`, `root` or `bracket`. */
export function readFrame(typed: string): Result<Frame, Failure> {
  if (typed.length > LONGEST_SYMBOL) {
    return fail('long', { from: LONGEST_SYMBOL, to: typed.length }, 'at most 64 characters');
  }
  const plain = plainText(typed);
  const { text } = plain;
  const { from, to } = trimmed(text);
  if (to <= from) return fail('empty', { from: 0, to: 0 }, 'a chord symbol such as Am7');
  const letter = text.charAt(from);
  if (CLOSES[letter] !== undefined) {
    return fail('bracket', { from: to, to }, `the closing ${CLOSES[letter]}`);
  }
  if (!isLetter(letter)) return fail('root', { from, to: from + 1 }, A_ROOT);
  const run = readRootSigns(text.slice(0, to), from + 1);
  const qualityFrom = from + 1 + run.length;
  const end = readEnd(text, qualityFrom, to);
  const root = { letter, alter: run.alter };
  const qualityTo = end.bass?.slash ?? to;
  return ok({ plain, root, rootFrom: from, qualityFrom, qualityTo, ...end });
}

/** A bass that is the root is none. */
export function makeChordOf(root: NoteName, tones: readonly Degree[], bass?: NoteName): Chord {
  return bass === undefined || sameNote(bass, root) ? { root, tones } : { root, tones, bass };
}
