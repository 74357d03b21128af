import type { FormAtHand, FormReason, Grip, Instrument, StringNumber } from './types.ts';

/** Strings of a grip that hold the root, thickest first. */
const rootsOf = ({ tones }: Grip): readonly StringNumber[] =>
  tones
    .filter(({ degree }) => degree.number === 1)
    .map(({ string }) => string)
    .reverse();

/**
 * Why a place of the neck bears a form's name: how far up the open shape has been moved, whether a
 * flat finger lies where that has the nut, and which strings hold the root.
 */
export function formReason({ anchor, grip }: FormAtHand, { capo }: Instrument): FormReason {
  return {
    roots: grip ? rootsOf(grip) : [],
    up: anchor - capo,
    barre: anchor > capo && grip !== undefined && grip.barres.some(({ fret }) => fret === anchor),
  };
}
