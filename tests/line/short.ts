/** Short notations for the tests of lines and of what is heard. */
import type { LineNote } from '#line';
import { fret, stringNumber } from '#neck';
import { type Chart, parseProgression, ticks } from '#theory';

/** The chart of a text that has to be readable. */
export function chart(text: string): Chart {
  const read = parseProgression(text);
  if (read.problems.length > 0) throw new Error(`${text}: ${read.problems[0]?.code}`);
  return read.chart;
}

/** Quarters from the beginning, as short numbers: 960 ticks are 1. */
export const quarters = (ticks: number): number => Number((ticks / 960).toFixed(3));

/** `5:3@0+0.5`: string, fret, start and length in quarters; an attack other than the pick after it. */
export const noteText = (note: LineNote): string =>
  `${note.string}:${note.fret}@${quarters(note.start)}+${quarters(note.length)}${
    note.attack === 'pick' ? '' : ` ${note.attack}`
  }`;

export const lineText = (notes: readonly LineNote[]): string => notes.map(noteText).join(' ');

/** A picked eighth on a string at a fret, from a tick on. */
export const lineNote = (
  string: number,
  at: number,
  start: number,
  more: Partial<LineNote> = {},
): LineNote => ({
  string: stringNumber(string),
  fret: fret(at),
  start: ticks(start),
  length: ticks(480),
  force: 0.7,
  attack: 'pick',
  ...more,
});
