/** Drums and click, made of sines and noise, rendered once and then played back. */
import { type FilterSpec, filterInPlace, makeBiquad } from './biquad.ts';
import { nextRandom, randomFrom } from './random.ts';

export const DRUMS = ['kick', 'snare', 'stick', 'hat', 'open', 'ride', 'click', 'accent'] as const;
export type DrumName = (typeof DRUMS)[number];

/** A sine that falls from one pitch (Hz) to another and dies away (seconds to −60 dB). */
interface Sine {
  readonly from: number;
  readonly to: number;
  readonly falls: number;
  readonly decay: number;
  readonly level: number;
}

/** Noise through filters, dying away. */
interface Noise {
  readonly filters: readonly FilterSpec[];
  readonly decay: number;
  readonly level: number;
}

interface DrumSpec {
  readonly seconds: number;
  readonly sines: readonly Sine[];
  readonly noises: readonly Noise[];
}

const sine = (from: number, to: number, falls: number, decay: number, level: number): Sine => ({
  from,
  to,
  falls,
  decay,
  level,
});

const noise = (decay: number, level: number, ...filters: readonly FilterSpec[]): Noise => ({
  filters,
  decay,
  level,
});

const above = (hertz: number, q = 0.7): FilterSpec => ({ kind: 'high', hertz, q });
const below = (hertz: number, q = 0.7): FilterSpec => ({ kind: 'low', hertz, q });

/** Sizes and pitches are our own; a beater's click, a shell's tone and the wires' noise are common practice. */
const SPECS: Readonly<Record<DrumName, DrumSpec>> = {
  kick: {
    seconds: 0.4,
    sines: [sine(150, 52, 0.035, 0.32, 1)],
    noises: [noise(0.015, 0.5, below(2500))],
  },
  snare: {
    seconds: 0.3,
    sines: [sine(240, 185, 0.02, 0.13, 0.45), sine(360, 330, 0.02, 0.09, 0.2)],
    noises: [noise(0.2, 0.7, above(700), below(7500))],
  },
  stick: {
    seconds: 0.12,
    sines: [sine(1650, 1600, 0.01, 0.045, 0.35), sine(540, 520, 0.01, 0.06, 0.2)],
    noises: [noise(0.02, 0.35, above(700), below(5000))],
  },
  hat: { seconds: 0.1, sines: [], noises: [noise(0.055, 0.4, above(6500, 1.1), below(12000))] },
  open: { seconds: 0.5, sines: [], noises: [noise(0.4, 0.35, above(6000, 1.1), below(12000))] },
  ride: {
    seconds: 0.8,
    sines: [sine(3150, 3150, 1, 0.5, 0.05), sine(4730, 4730, 1, 0.35, 0.04)],
    noises: [noise(0.6, 0.13, above(5000), below(11000)), noise(0.02, 0.2, above(3000))],
  },
  click: { seconds: 0.06, sines: [sine(1000, 1000, 1, 0.05, 0.6)], noises: [] },
  accent: { seconds: 0.06, sines: [sine(1500, 1500, 1, 0.05, 0.8)], noises: [] },
};

function addSine(into: Float32Array, one: Sine, rate: number): void {
  let phase = 0;
  for (let i = 0; i < into.length; i++) {
    const t = i / rate;
    const hertz = one.to + (one.from - one.to) * Math.exp(-t / one.falls);
    phase += (2 * Math.PI * hertz) / rate;
    into[i] = (into[i] ?? 0) + one.level * Math.sin(phase) * 10 ** ((-3 * t) / one.decay);
  }
}

function addNoise(into: Float32Array, one: Noise, rate: number, seed: number): void {
  const random = randomFrom(seed);
  const fall = 10 ** (-3 / (one.decay * rate));
  let level = one.level;
  const made = new Float32Array(into.length);
  for (let i = 0; i < made.length; i++) {
    made[i] = level * nextRandom(random);
    level *= fall;
  }
  for (const filter of one.filters) filterInPlace(makeBiquad(filter, rate), made, made.length);
  for (let i = 0; i < made.length; i++) into[i] = (into[i] ?? 0) + (made[i] ?? 0);
}

/** The last of it is faded, so that it does not break off. */
function fadeEnd(samples: Float32Array, rate: number): void {
  const length = Math.min(samples.length, Math.round(0.01 * rate));
  for (let i = 0; i < length; i++) {
    const at = samples.length - 1 - i;
    samples[at] = (samples[at] ?? 0) * (i / length);
  }
}

/** One stroke on a drum; `take` tells apart strokes that should not be the same noise again. */
export function renderDrum(name: DrumName, rate: number, take = 0): Float32Array {
  const { seconds, sines, noises } = SPECS[name];
  const samples = new Float32Array(Math.round(seconds * rate));
  for (const one of sines) addSine(samples, one, rate);
  for (const [i, one] of noises.entries())
    addNoise(samples, one, rate, 101 * (take + 1) + 17 * i + name.length);
  fadeEnd(samples, rate);
  return samples;
}

/** Strokes of each drum that differ in their noise: the same one again and again sounds like a machine. */
const TAKES = 3;

export type DrumKit = Readonly<Record<DrumName, readonly Float32Array[]>>;

const takesOf = (name: DrumName, rate: number): readonly Float32Array[] =>
  Array.from({ length: TAKES }, (_, take) => renderDrum(name, rate, take));

export const makeKit = (rate: number): DrumKit => ({
  kick: takesOf('kick', rate),
  snare: takesOf('snare', rate),
  stick: takesOf('stick', rate),
  hat: takesOf('hat', rate),
  open: takesOf('open', rate),
  ride: takesOf('ride', rate),
  click: takesOf('click', rate),
  accent: takesOf('accent', rate),
});
