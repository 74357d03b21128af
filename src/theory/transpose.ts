/** Moves a typed progression to another key, changing roots and basses only. */
import { barsOf } from './chart-walk.ts';
import { readFrame } from './chord-frame.ts';
import { typedOffset } from './chord-text.ts';
import { fifthsOf } from './keys.ts';
import {
  type AccidentalStyle,
  makeNoteName,
  plainName,
  readAccidentals,
  sameNote,
} from './notes.ts';
import { parseProgression } from './progression.ts';
import type { Chart, Chord, Key, Letter, NoteName, Slot } from './types.ts';

const FIFTHS: readonly Letter[] = ['F', 'C', 'G', 'D', 'A', 'E', 'B'];
const MOST_ALTER = 2;

function nameAtFifths(fifths: number): NoteName {
  const place = fifths + 1;
  const alter = Math.floor(place / FIFTHS.length);
  return { letter: FIFTHS[place - alter * FIFTHS.length] ?? 'C', alter };
}

/**
 * A note moved by the spelled interval from one tonic to the other: as the new key spells it. What
 * would need more than a double accidental is respelled plainly.
 */
export function transposeNote(name: NoteName, from: Key, to: Key): NoteName {
  const moved = nameAtFifths(fifthsOf(name) + fifthsOf(to.tonic) - fifthsOf(from.tonic));
  return Math.abs(moved.alter) > MOST_ALTER ? plainName(moved) : moved;
}

/** A note as it stands in the text. */
interface WrittenNote {
  readonly at: number;
  readonly length: number;
  readonly name: NoteName;
  readonly small: boolean;
}

function noteIn(text: string, at: number): WrittenNote | undefined {
  const letter = /^[A-G]/i.exec(text.charAt(at))?.[0];
  if (letter === undefined) return undefined;
  const { alter, length } = readAccidentals(text, at + 1);
  const capital = FIFTHS.find((l) => l === letter.toUpperCase()) ?? 'C';
  const name = { letter: capital, alter };
  return { at, length: length + 1, name, small: letter !== capital };
}

const rootIn = (symbol: string, chord: Chord): WrittenNote | undefined => {
  const at = symbol.search(/[A-G]/);
  const found = at < 0 ? undefined : noteIn(symbol, at);
  return found !== undefined && sameNote(found.name, chord.root) ? found : undefined;
};

/** A bass that stands `alone`, as `/G`, is read as one under a chord on C. */
function bassIn(symbol: string, chord: Chord, alone: boolean): WrittenNote | undefined {
  const lead = alone ? 'C' : '';
  const frame = readFrame(lead + symbol);
  if (!frame.ok || !frame.value.bass) return undefined;
  const { plain, bass } = frame.value;
  if (!sameNote(bass.note, chord.bass ?? chord.root)) return undefined;
  const from = typedOffset(plain, bass.from);
  const length = typedOffset(plain, bass.to) - from;
  const at = from - lead.length;
  return { at, length, name: bass.note, small: /[a-g]/.test(symbol.charAt(at)) };
}

/** The root and the bass that a slot's typed symbol names, in the whole text. */
function notesOf(slot: Slot, text: string): readonly WrittenNote[] {
  if (slot.harmony.kind !== 'chord') return [];
  const { at, length } = slot.span;
  const symbol = text.slice(at, at + length);
  const alone = slot.symbol.startsWith('/');
  const root = alone ? undefined : rootIn(symbol, slot.harmony.chord);
  const bass = bassIn(symbol, slot.harmony.chord, alone);
  return [root, bass]
    .filter((found) => found !== undefined)
    .map((found) => ({ ...found, at: at + found.at }));
}

const typedSlots = (chart: Chart): readonly Slot[] =>
  barsOf(chart).flatMap(({ slots, same }) => (same ? [] : slots.filter(({ held }) => !held)));

/**
 * The text with every root and bass moved by the spelled interval between the tonics; all else stays
 * letter for letter, also what could not be read. Accidentals are written as signs where the text
 * has signs. Keys of one tonic give the same text (same reference).
 */
export function transposeText(text: string, from: Key, to: Key): string {
  if (sameNote(from.tonic, to.tonic)) return text;
  const style: AccidentalStyle = /[♯♭𝄪𝄫]/u.test(text) ? 'sign' : 'ascii';
  const parts: string[] = [];
  let done = 0;
  for (const slot of typedSlots(parseProgression(text).chart)) {
    for (const { at, length, name, small } of notesOf(slot, text)) {
      const moved = makeNoteName(transposeNote(name, from, to), style);
      parts.push(text.slice(done, at), small ? moved.toLowerCase() : moved);
      done = at + length;
    }
  }
  return parts.join('') + text.slice(done);
}
