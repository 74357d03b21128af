import { fret, stringNumber } from './places.ts';
import type { Barre } from './types.ts';

/** Frets by string, string 1 first; null = not played. The unit of every shape in this room. */
export type Frets = readonly (number | null)[];

/** Which finger holds each string (absent = open or not played), and the barres among them. */
export interface Fingering {
  readonly fingers: readonly (number | undefined)[];
  readonly barres: readonly Barre[];
  readonly count: number;
}

/** Neighbouring strings that one finger holds at one fret; `from` and `to` are indices from string 1. */
interface Press {
  readonly fret: number;
  readonly from: number;
  readonly to: number;
}

/** From the lowest fret up, thick strings first. */
const singlePresses = (frets: Frets, open: number): readonly Press[] =>
  frets
    .flatMap((f, i) => (f !== null && f > open ? [{ fret: f, from: i, to: i }] : []))
    .sort((a, b) => a.fret - b.fret || b.from - a.from);

/** A finger laid flat stops every string it crosses, so none of them may sound below its fret. */
const canLieAcross = (frets: Frets, at: number, from: number, to: number): boolean =>
  frets.slice(from, to + 1).every((f) => f === null || f >= at);

/** Lays one finger across presses at the same fret wherever nothing below it sounds. */
function barred(frets: Frets, presses: readonly Press[], at: number): readonly Press[] {
  const merged: Press[] = [];
  for (const press of presses) {
    const last = merged[merged.length - 1];
    const both = last?.fret === at && press.fret === at;
    if (both && canLieAcross(frets, at, press.from, last.to))
      merged[merged.length - 1] = { ...last, from: press.from };
    else merged.push(press);
  }
  return merged;
}

/** The index lies across first, then, while fingers are still short, whatever else can be laid flat. */
function pressesWithin(frets: Frets, open: number, hands: number): readonly Press[] {
  const single = singlePresses(frets, open);
  const lowest = single[0]?.fret;
  if (lowest === undefined) return single;
  const indexBarre = barred(frets, single, lowest);
  if (single.length <= hands && !liesBetter(frets, single, indexBarre, open)) return single;
  let presses = indexBarre;
  const higher = [...new Set(single.map((press) => press.fret))].filter((f) => f !== lowest);
  for (const at of higher.reverse()) {
    if (presses.length <= hands && !leavesMiddleAstray(presses)) break;
    presses = barred(frets, presses, at);
  }
  return presses;
}

const hasOpen = (frets: Frets, open: number): boolean => frets.some((f) => f !== null && f <= open);

/**
 * Two neighbouring strings at the lowest fret take one flat index rather than two fingertips, unless it
 * would damp a thinner string that is open, and so do more where all four fingers would be needed (common
 * practice).
 */
function liesBetter(
  frets: Frets,
  single: readonly Press[],
  withBarre: readonly Press[],
  open: number,
): boolean {
  const lowest = single[0]?.fret;
  const tips = single.filter((press) => press.fret === lowest).length;
  const [flat] = withBarre;
  if (flat === undefined || tips < 2 || withBarre.length !== single.length - tips + 1) return false;
  const tight = flat.to - flat.from === tips - 1;
  if (tips === 2 && tight) return !hasOpen(frets.slice(0, flat.from), open);
  return single.length === HAND_FINGERS && (tight || isReachedOver(frets, flat, withBarre));
}

/** Frets before the index that the middle finger hardly comes to beside the other two (common practice). */
const BEYOND_MIDDLE = 3;

/** Whether all four fingers are needed although the three others stand far before the index. */
const leavesMiddleAstray = ([index, middle, , little]: readonly Press[]): boolean =>
  index !== undefined &&
  middle !== undefined &&
  little !== undefined &&
  middle.fret - index.fret >= BEYOND_MIDDLE;

const HAND_FINGERS = 4;
/** Frets before a flat index from which on a second fingertip beside it would stand in the way. */
const BEYOND_NEXT = 2;

/** Whether the other fingers stand well before a flat one, and no string under it rests: x x 7 9 10 7. */
const isReachedOver = (frets: Frets, flat: Press, presses: readonly Press[]): boolean =>
  !frets.slice(flat.from, flat.to).includes(null) &&
  presses.slice(1).every((press) => press.fret >= flat.fret + BEYOND_NEXT);

/** Fingers follow the frets upward from that of the index, one a fret where the others still find room. */
function numberedFrom(index: number, presses: readonly Press[]): readonly number[] {
  let last = 0;
  return presses.map((press, i) => {
    const room = HAND_FINGERS - (presses.length - 1 - i);
    last = Math.min(Math.max(last, press.fret - index) + 1, room);
    return last;
  });
}

/**
 * Among open strings the hand keeps to the first frets, a finger for each, unless that takes the little
 * finger: Em with 2 and 3, A with 1, 2 and 3 (common practice).
 */
function numbered(presses: readonly Press[], frets: Frets, open: number): readonly number[] {
  const atNut = numberedFrom(open + 1, presses);
  const keeps = hasOpen(frets, open) && presses.every(({ from, to }) => from === to);
  return keeps && !atNut.includes(HAND_FINGERS)
    ? atNut
    : numberedFrom(presses[0]?.fret ?? 0, presses);
}

const barreOf = (press: Press, finger: number): Barre => ({
  finger,
  fret: fret(press.fret),
  from: stringNumber(press.to + 1),
  to: stringNumber(press.from + 1),
});

/**
 * Fingers for a shape, strings at `open` (the nut or the capo) taking none. Undefined when four
 * fingers, flat ones counted once, do not hold it.
 */
export function fingeringOf(frets: Frets, open: number): Fingering | undefined {
  const presses = pressesWithin(frets, open, 4);
  if (presses.length > 4) return undefined;
  const fingers: (number | undefined)[] = frets.map(() => undefined);
  const barres: Barre[] = [];
  const numbers = numbered(presses, frets, open);
  for (const [i, press] of presses.entries()) {
    const finger = numbers[i] ?? 4;
    if (press.to > press.from) barres.push(barreOf(press, finger));
    for (let s = press.from; s <= press.to; s++) {
      if (frets[s] === press.fret) fingers[s] = finger;
    }
  }
  return { fingers, barres, count: presses.length };
}
