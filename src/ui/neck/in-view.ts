/** Where the hand stands in a pane that is lower than the neck. */

/** What is before the hand, as a share of it: at the nut so much holds the open strings and their names. */
const BEFORE = 0.28;

/** Puts the hand in the middle of such a pane, or lower where it would hide what lies before the hand. */
export function centreHand(pane: HTMLElement): void {
  const { scrollHeight, clientHeight } = pane;
  const hand = pane.querySelector('.hand-wash')?.getBoundingClientRect();
  if (scrollHeight <= clientHeight || hand === undefined) return;
  const room = clientHeight - hand.height;
  const before = Math.max(room / 2, Math.min(room, BEFORE * hand.height));
  pane.scrollTop += hand.top - pane.getBoundingClientRect().top - before;
}
