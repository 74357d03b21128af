/** The crosses of silent strings. They come with the pens, since the first view has no room for them. */
import type { Reading } from '#neck';
import { at, type NeckLayout, type Point } from './layout.ts';

/** Ems: half the width of the cross on a string that must not sound. */
const CROSS = 0.28;

function crossPath({ x, y }: Point, em: number): string {
  const r = Math.round(CROSS * em * 10) / 10;
  return `M${x - r} ${y - r}l${2 * r} ${2 * r}m0 ${-2 * r}l${-2 * r} ${2 * r}`;
}

/** Whether a string has no tones beside a wire that a cross there would be drawn over. */
const isFree = ({ tones }: Reading, string: number, wire: number): boolean =>
  !tones.some(
    (tone) =>
      tone.string === string && (Number(tone.fret) === wire || Number(tone.fret) === wire + 1),
  );

/**
 * The wires of the crosses on silent strings: one for all where there is such a one, else for each the
 * first of the grip that is free.
 */
function wiresOf(reading: Reading, silent: readonly number[], frets: readonly number[]) {
  const first = Math.max(0, Math.min(...frets) - 1);
  const within = Array.from({ length: Math.max(...frets) - first + 1 }, (_, i) => first + i);
  const behind = first > 0 ? [first, first - 1, ...within] : within;
  const common = behind.find((wire) => silent.every((string) => isFree(reading, string, wire)));
  return silent.map(
    (string) => common ?? within.find((wire) => isFree(reading, string, wire)) ?? first,
  );
}

/** Path data of a cross on every string that the chosen grip leaves silent. */
export function restMarks(reading: Reading | undefined, layout: NeckLayout): string {
  const held = reading?.chosen?.grip?.tones;
  if (!reading || !held) return '';
  const frets = held.map((tone) => Number(tone.fret));
  const silent = layout.lines
    .map((_, i) => i + 1)
    .filter((string) => !held.some((tone) => tone.string === string));
  const wires = wiresOf(reading, silent, frets);
  return silent
    .map((string, i) => {
      const wire = layout.wires[wires[i] ?? 0] ?? 0;
      return crossPath(at(layout, wire, layout.lines[string - 1] ?? 0), layout.em);
    })
    .join('');
}
