/** What is said once about listening, and where it comes from. */

/** A caution with its source. */
export interface Caution {
  readonly text: string;
  readonly source: string;
}

/**
 * For hours of listening: the limits of the standard for listening devices, and how fast safe time
 * shrinks. NIOSH's limit is one for work; it is told as what it is.
 */
export const HEARING: readonly Caution[] = [
  {
    text: 'Start quietly. Listening is held to be safe up to 80 dB(A) for 40 hours a week, for children 75 dB(A); every 3 dB more halves the time.',
    source: 'WHO and ITU, Safe listening devices and systems, Recommendation ITU-T H.870',
  },
  {
    text: 'At work the limit is 85 dB(A) for 8 hours a day, 94 dB(A) for one hour, 100 dB(A) for a quarter of an hour. If your ears ring, stop.',
    source: 'NIOSH recommended exposure limit (occupational; 3-dB exchange rate)',
  },
];

/** Hours a day at a level, dB(A), under NIOSH's limit: 8 / 2^((L − 85) / 3). */
export const niosh = (level: number): number => 8 / 2 ** ((level - 85) / 3);
