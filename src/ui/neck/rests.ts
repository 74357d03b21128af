/** The crosses of silent strings. They come with the pens, since the first view has no room for them. */
import type { Reading } from '#neck';
import { at, type NeckLayout, type Point } from './layout.ts';

/** Ems: half the width of the cross on a string that must not sound. */
const CROSS = 0.28;

function crossPath({ x, y }: Point, em: number): string {
  const r = Math.round(CROSS * em * 10) / 10;
  return `M${x - r} ${y - r}l${2 * r} ${2 * r}m0 ${-2 * r}l${-2 * r} ${2 * r}`;
}

/** The first wire of a grip beside which a string has no tones to be drawn over. */
function freeWire({ tones }: Reading, string: number, frets: readonly number[]): number {
  const first = Math.max(0, Math.min(...frets) - 1);
  const taken = tones.filter((tone) => tone.string === string).map((tone) => Number(tone.fret));
  const wires = Array.from({ length: Math.max(...frets) - first + 1 }, (_, i) => first + i);
  return wires.find((wire) => !taken.includes(wire) && !taken.includes(wire + 1)) ?? first;
}

/** Path data of a cross on every string that the chosen grip leaves silent. */
export function restMarks(reading: Reading | undefined, layout: NeckLayout): string {
  const held = reading?.chosen?.grip?.tones;
  if (!reading || !held) return '';
  const frets = held.map((tone) => Number(tone.fret));
  return layout.lines
    .map((across, i) => {
      if (held.some((tone) => tone.string === i + 1)) return '';
      const wire = layout.wires[freeWire(reading, i + 1, frets)] ?? 0;
      return crossPath(at(layout, wire, across), layout.em);
    })
    .join('');
}
