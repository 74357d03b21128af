/** Chord symbols as people write them on lead sheets. */
import { LONGEST_SYMBOL } from './chord-frame.ts';
import { readChord } from './chord-read.ts';
import { suggestChord } from './chord-suggest.ts';
import { plainText } from './chord-text.ts';
import type { ChordErrorCode } from './chord-words.ts';
import { noteAt } from './degrees.ts';
import { err, type Result, type TextError } from './result.ts';
import type { Chord, NoteName } from './types.ts';

export type ChordResult = Result<Chord, TextError<ChordErrorCode>>;

const REMEMBERED = 2048;
const remembered = new Map<string, ChordResult>();

function read(symbol: string): ChordResult {
  const chord = readChord(symbol);
  if (chord.ok) return chord;
  const suggestion = suggestChord(symbol, chord.error);
  return suggestion === undefined ? chord : err({ ...chord.error, suggestion });
}

/**
 * Reads a chord symbol in any of the usual spellings: `Am7`, `A-7`, `Ami7`, `F♯ø`, `B♭Δ9`,
 * `E7(#9)`, `G13sus4/D`, `D7M(9)`, `C79b13b`, `FonG`, also degree lists `C:(b3,5,b7)`. What the numbers
 * mean follows MusicXML 4.0 where authorities differ: 11 and 13 hold everything below them, 7♭13 keeps
 * its fifth, `add2` and `2` are the ninth, `add4` the eleventh, `4` is sus4, a sixth beside a
 * seventh is the thirteenth.
 *
 * Error codes: `empty`, `long` (over 64 characters), `root`, `quality`, `tension`, `bracket`, `bass`,
 * `conflict` (two statements that exclude each other). The position is that of the first thing not
 * understood, in UTF-16 units of `symbol`. A `suggestion` is a symbol that can be read.
 *
 * The same symbol gives the same object while it is remembered.
 */
export function parseChord(symbol: string): ChordResult {
  if (symbol.length > LONGEST_SYMBOL) return read(symbol);
  const known = remembered.get(symbol);
  if (known) return known;
  const result = read(symbol);
  if (remembered.size >= REMEMBERED) remembered.clear();
  remembered.set(symbol, result);
  return result;
}

/** The chord's notes spelled letter by letter from the root, in the order of its tones. */
export const chordNotes = (chord: Chord): readonly NoteName[] =>
  chord.tones.map((tone) => noteAt(chord.root, tone));

const SILENT = /^(?:n\.? ?c\.?|n\/c\.?|no[ _-]?chord|tacet)$/i;

/** Whether a symbol says that no chord sounds: `N.C.`, `NC`, `n.c.`, `No Chord`, `N`. */
export function isSilent(symbol: string): boolean {
  if (symbol.length > LONGEST_SYMBOL) return false;
  const plain = plainText(symbol)
    .text.trim()
    .replace(/^[([](.*)[)\]]$/, '$1')
    .replace(/[*,;]+$/, '');
  return plain === 'N' || SILENT.test(plain);
}
