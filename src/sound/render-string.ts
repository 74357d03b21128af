/** A string rendered in one go. */
import type { StringTone } from './string.ts';
import type { StringNote } from './types.ts';
import { makeVoice, renderVoice, startNote } from './voice.ts';

/** The first sample of a moment. */
export const frameOf = (seconds: number, rate: number): number => Math.round(seconds * rate);

/** Seconds for which the last note is allowed to die away. */
const AFTER_SECONDS = 0.3;

/**
 * What a string sounds when these notes are played on it: mono samples at `rate`, full scale ±1,
 * from second 0 until `seconds` (absent = a little after the last note's end). The same notes and
 * seed give the same samples.
 */
export function renderString(
  notes: readonly StringNote[],
  tone: StringTone,
  rate: number,
  { seconds, seed = 1 }: { readonly seconds?: number; readonly seed?: number } = {},
): Float32Array<ArrayBuffer> {
  const inOrder = [...notes].sort((a, b) => a.start - b.start);
  const end = Math.max(0, ...notes.map(({ start, length }) => start + length)) + AFTER_SECONDS;
  const out = new Float32Array(frameOf(seconds ?? end, rate));
  const voice = makeVoice(tone, rate, seed);
  let at = 0;
  for (const note of inOrder) {
    const next = Math.min(out.length, Math.max(at, frameOf(note.start, rate)));
    renderVoice(voice, out, at, next);
    startNote(voice, note);
    at = next;
  }
  renderVoice(voice, out, at, out.length);
  return out;
}
