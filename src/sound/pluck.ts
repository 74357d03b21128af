/** What the pick, or a finger that comes down or off, does to a string. */
import type { Attack } from '#line';
import { nextRandom, type Random } from './random.ts';

/** A blow to a string. Times in samples. */
export interface Pluck {
  /** One round trip of the string. */
  readonly period: number;
  /** Where it meets the string, as a share of the sounding length. */
  readonly place: number;
  /** How long the string takes to slip off: what is softer than that does not sound. */
  readonly softness: number;
  /** Height of the wave, and of the scrape of the pick. */
  readonly height: number;
  readonly scrape: number;
  readonly rate: number;
}

/** How an attack differs from the pick: height of the wave, softness in seconds, scrape. */
const ATTACK_SHAPES: Readonly<
  Record<Attack, { readonly height: number; readonly soft: number; readonly scrape: number }>
> = {
  pick: { height: 1, soft: 0.00012, scrape: 1 },
  hammer: { height: 0.3, soft: 0.0007, scrape: 0.25 },
  pull: { height: 0.4, soft: 0.0004, scrape: 0.5 },
  slide: { height: 0.05, soft: 0.0006, scrape: 1.2 },
};

/** A soft blow is also a dull one. */
const SOFTEST_SECONDS = 0.0004;
const SCRAPE_HEIGHT = 0.06;

/** The blow of an attack with a force from 0 to 1. */
export function pluckFor(
  attack: Attack,
  force: number,
  string: Pick<Pluck, 'period' | 'place' | 'rate'>,
): Pluck {
  const shape = ATTACK_SHAPES[attack];
  const strength = force ** 1.3;
  return {
    ...string,
    softness: (shape.soft + SOFTEST_SECONDS * (1 - force)) * string.rate,
    height: shape.height * strength,
    scrape: shape.scrape * strength * SCRAPE_HEIGHT * (0.5 + force),
  };
}

const step = (samples: number, softness: number): number => {
  const share = Math.min(1, Math.max(0, samples / softness));
  return share * share * (3 - 2 * share);
};

/** Samples that a blow lasts. */
export const pluckLength = ({ period, softness }: Pluck): number =>
  Math.ceil(period + softness) + 1;

/** How long the scrape is heard, seconds. */
const SCRAPE_SECONDS = 0.0015;

function addScrape(into: Float32Array, pluck: Pluck, length: number, random: Random): void {
  const fade = Math.exp(-1 / (SCRAPE_SECONDS * pluck.rate));
  let height = pluck.scrape;
  let smooth = 0;
  let sum = 0;
  for (let i = 0; i < length; i++) {
    smooth += 0.5 * (nextRandom(random) * height - smooth);
    height *= fade;
    into[i] = (into[i] ?? 0) + smooth;
    sum += smooth;
  }
  // Anything but a mean of zero would stay in the loop as an offset.
  for (let i = 0; i < length; i++) into[i] = (into[i] ?? 0) - sum / length;
}

/**
 * Writes one round trip of the wave that an ideally plucked string carries to the bridge: two levels
 * in the ratio of the string's two parts, mean zero, so that partials at multiples of 1 / place are
 * missing. Gives the samples written.
 */
export function writePluck(into: Float32Array, pluck: Pluck, random: Random): number {
  const { period, place, softness, height } = pluck;
  const length = Math.min(pluckLength(pluck), into.length);
  for (let i = 0; i < length; i++) {
    const begins = step(i, softness);
    const turns = step(i - place * period, softness);
    const ends = step(i - period, softness);
    into[i] = height * (begins - turns - place * (begins - ends));
  }
  addScrape(into, pluck, length, random);
  return length;
}
