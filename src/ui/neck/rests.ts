/** The crosses of silent strings. They come with the pens, since the first view has no room for them. */
import type { Reading } from '#neck';
import { at, middleOf, type NeckLayout, type Point } from './layout.ts';
import { RING, radiusOf } from './marks.ts';

/** Ems: half the width of the cross on a string that must not sound. */
const CROSS = 0.28;

function crossPath({ x, y }: Point, em: number): string {
  const r = Math.round(CROSS * em * 10) / 10;
  return `M${x - r} ${y - r}l${2 * r} ${2 * r}m0 ${-2 * r}l${-2 * r} ${2 * r}`;
}

/** Whether the marks of a string's tones beside a wire leave room for a cross there. */
function isFree({ tones }: Reading, layout: NeckLayout, string: number, wire: number): boolean {
  const along = layout.wires[wire] ?? 0;
  return tones
    .filter(({ string: own, fret }) => own === string && (fret === wire || fret === wire + 1))
    .every((tone) => {
      const apart = Math.abs(middleOf(layout, tone.fret) - along);
      return apart > RING * radiusOf(layout, tone) + CROSS * layout.em;
    });
}

/**
 * The wires of the crosses on silent strings: the one behind the grip, or the next at which there is
 * room on all of them; else for each the first that has.
 */
function wiresOf(reading: Reading, layout: NeckLayout, silent: readonly number[]) {
  const frets = (reading.chosen?.grip?.tones ?? []).map((tone) => Number(tone.fret));
  const first = Math.max(0, Math.min(...frets) - 1);
  const within = Array.from({ length: Math.max(...frets) - first + 1 }, (_, i) => first + i);
  const behind = first > 0 ? [first, first - 1, ...within] : within;
  const isFreeAt = (wire: number) => (string: number) => isFree(reading, layout, string, wire);
  const common = behind.find((wire) => silent.every(isFreeAt(wire)));
  return silent.map((string) => common ?? within.find((wire) => isFreeAt(wire)(string)) ?? first);
}

/** Path data of a cross on every string that the chosen grip leaves silent. */
export function restMarks(reading: Reading | undefined, layout: NeckLayout): string {
  const held = reading?.chosen?.grip?.tones;
  if (!reading || !held) return '';
  const silent = layout.lines
    .map((_, i) => i + 1)
    .filter((string) => !held.some((tone) => tone.string === string));
  const wires = wiresOf(reading, layout, silent);
  return silent
    .map((string, i) => {
      const wire = layout.wires[wires[i] ?? 0] ?? 0;
      return crossPath(at(layout, wire, layout.lines[string - 1] ?? 0), layout.em);
    })
    .join('');
}
