/** Why one form and not another. Only words ask for it, which come after the first view. */
import type { Chord } from '#theory';
import {
  cleanFirst,
  type Hand,
  type Measured,
  narrowFirst,
  ownFirst,
  ranked,
  shareOf,
  usualFirst,
} from './at-hand.ts';
import { contains } from './grips.ts';
import type { FormAtHand, FormRival } from './types.ts';

/** What sets the first of two apart of which as much lies under the hand. */
function decides(a: Measured, b: Measured): FormRival['by'] | undefined {
  if (ownFirst(a, b) < 0) return 'whole';
  if (narrowFirst(a, b) < 0) return 'narrow';
  if (shareOf(a) > shareOf(b)) return 'stretch';
  if (a.distance < b.distance) return 'near';
  if (cleanFirst(a, b) < 0) return 'clean';
  return usualFirst(a, b) < 0 ? 'usual' : undefined;
}

/** How much more lies under the hand, as the reader sees it, who is told how many places of how many. */
const moreSeen = ({ at: a }: Measured, { at: b }: Measured): number =>
  a.under * b.of - b.under * a.of;

function setsApart(best: Measured, second: Measured): FormRival['by'] | undefined {
  if (second.at.under + second.at.stretched === 0) return 'alone';
  const more = moreSeen(best, second);
  if (more === 0) return decides(best, second);
  if (more > 0) return 'share';
  if (second.partOf !== undefined) return 'part';
  return second.wide && second.at.stretched > 0 ? 'narrow' : 'stretch';
}

const holdsAll = ({ grip: whole }: FormAtHand, { grip: part }: FormAtHand): boolean =>
  whole !== undefined && part !== undefined && contains(whole, part);

/**
 * What sets the best form of a chord apart from the one that comes after it; undefined where the hand
 * has nothing of any.
 */
export function rivalAtHand(chord: Chord, hand: Hand): FormRival | undefined {
  const all = ranked(chord, hand);
  const [best, second] = all;
  if (best === undefined || second === undefined || best.at.under === 0) return undefined;
  const by = setsApart(best, second);
  const whole = all.find((one) => one !== second && holdsAll(one.at, second.at))?.at;
  return by && { at: second.at, by, ...(whole && { within: whole.form }) };
}
