/** Kept apart from the guitar's tones: the audio thread needs these, and nothing of the neck. */
import type { StringTone } from './string.ts';

/** The strings of a bass, G2 to E1: longer, duller, played with a finger nearer to the middle. */
export const BASS_TONES: readonly StringTone[] = [43, 38, 33, 28].map((open) => ({
  open,
  pickAt: 0.2,
  sustain: 8,
  highs: 0.16,
}));
