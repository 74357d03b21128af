import { restMarks } from '../neck/rests.ts';
import { BRACKET, CHOSEN_BRACKET, LABEL, QUIET_LABEL } from './outlines.ts';
import { penOf } from './pen.ts';

/** A pen for every face on the neck: labels of tones, those out of reach, letters of brackets, crosses. */
export const PENS = {
  label: penOf(LABEL),
  quiet: penOf(QUIET_LABEL),
  bracket: penOf(BRACKET),
  chosen: penOf(CHOSEN_BRACKET),
  rests: restMarks,
};
