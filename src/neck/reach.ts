import { millimetres } from './places.ts';
import type { Instrument, Millimetres, Reach, Span } from './types.ts';

/** One finger per fret: the little finger rests this many frets above the index. */
export const HAND_FRETS = 3;

/** Five frets at the fifth position are a stretch and four at the first lie well, as common practice has it. */
export const DEFAULT_SPAN: Span = { index: 5, little: 9 };

/**
 * Distance from the nut to a fret: d(n) = L·(1 − 2^(−n/12)).
 * Source: equal temperament; the divisor 17.817 of the usual fret tables is 1/(1 − 2^(−1/12)).
 */
export const distanceTo = (scale: Millimetres, fretNumber: number): Millimetres =>
  millimetres(scale * (1 - 2 ** (-fretNumber / 12)));

/** Distance along a string between two frets. */
export const distanceBetween = (scale: Millimetres, a: number, b: number): Millimetres =>
  millimetres(Math.abs(distanceTo(scale, b) - distanceTo(scale, a)));

/** How far apart index and little finger can come, from what the player said of their own hand. */
export const spanLength = (span: Span, scale: Millimetres): Millimetres =>
  distanceBetween(scale, span.index, span.little);

type HandReach = Exclude<Reach, 'bend'>;

interface Known {
  readonly span: Span;
  readonly byPosition: (readonly HandReach[])[];
}

const known = new WeakMap<Instrument, Known>();

/**
 * How every fret from 0 is reached with the index at `position`. The little finger rests at
 * `position + 3`; an outer finger may leave its fret as long as the two stay within the span.
 * Frets behind the capo are out.
 */
export function reachByFret(
  instrument: Instrument,
  span: Span,
  position: number,
): readonly HandReach[] {
  const before = known.get(instrument);
  const fresh = before?.span === span ? before : { span, byPosition: [] };
  if (fresh !== before) known.set(instrument, fresh);
  const reach = fresh.byPosition[position] ?? computeReach(instrument, span, position);
  fresh.byPosition[position] = reach;
  return reach;
}

function computeReach(instrument: Instrument, span: Span, position: number): readonly HandReach[] {
  const length = spanLength(span, instrument.scale) + 1e-9;
  const little = position + HAND_FRETS;
  const reachOf = (f: number): HandReach => {
    if (f === instrument.capo) return 'open';
    if (f < instrument.capo) return 'out';
    if (f >= position && f <= little) return 'hand';
    const outer = f < position ? little : position;
    return distanceBetween(instrument.scale, f, outer) <= length ? 'stretch' : 'out';
  };
  return Array.from({ length: instrument.frets + 1 }, (_, f) => reachOf(f));
}

/** Lowest and highest fret that the hand can stretch to from a position, within the neck. */
export function stretchLimits(
  instrument: Instrument,
  span: Span,
  position: number,
): { readonly low: number; readonly high: number } {
  const reach = reachByFret(instrument, span, position);
  const reachable = reach.flatMap((r, f) => (r === 'hand' || r === 'stretch' ? [f] : []));
  return { low: reachable[0] ?? position, high: reachable[reachable.length - 1] ?? position };
}
