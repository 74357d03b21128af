import { box, type Extent, fretRange, type NeckLayout } from '../neck/layout.ts';

const HAND_FRETS = 4;
/** Ems: the widest that is read with ease, and what is kept free of the hand. */
const WIDEST = 38;
const AIR = 0.75;

/** Along: the free part of a lying neck beside the hand and a stretch of one fret, on the roomier side. */
function freePart(layout: NeckLayout, position: number): Extent {
  const hand = fretRange(layout, position - 1, position + HAND_FRETS);
  const [before, after] = [hand.from, layout.width - hand.to];
  const length = Math.min(Math.max(before, after) - AIR * layout.em, WIDEST * layout.em);
  return before > after
    ? { from: 0, to: length }
    : { from: layout.width - length, to: layout.width };
}

/** Where a word can stand beside the ruler of the hand, under the fret numbers: there it covers nothing. */
export const besideHand = (layout: NeckLayout, position: number) =>
  box(layout, freePart(layout, position), {
    from: layout.fingers - layout.em * 0.7,
    to: layout.height,
  });
