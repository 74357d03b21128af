/** From the strings to the loudspeaker: pickup, drive and cabinet. */
import { type Biquad, type FilterSpec, filterInPlace, makeBiquad } from './biquad.ts';
import { type Drive, driveInPlace, makeDrive } from './drive.ts';

export const AMPS = ['clean', 'driven', 'bass'] as const;
export type AmpName = (typeof AMPS)[number];

/** A row of the table of amplifiers. `level` makes them about equally loud. */
interface AmpSpec {
  readonly before: readonly FilterSpec[];
  readonly drive?: number;
  readonly after: readonly FilterSpec[];
  readonly level: number;
}

/** A coil and its cable resonate and then let little through; a 12-inch speaker ends near 6 kHz (common practice). */
const PICKUP: FilterSpec = { kind: 'low', hertz: 5200, q: 1.2 };
const CABINET: readonly FilterSpec[] = [
  { kind: 'high', hertz: 75, q: 0.8 },
  { kind: 'peak', hertz: 120, q: 1, gain: 2.5 },
  { kind: 'peak', hertz: 420, q: 0.8, gain: -1.5 },
  { kind: 'low', hertz: 6000, q: 0.8 },
];

const SPECS: Readonly<Record<AmpName, AmpSpec>> = {
  clean: { before: [PICKUP], after: CABINET, level: 0.5 },
  driven: {
    before: [PICKUP, { kind: 'high', hertz: 150, q: 0.6 }],
    drive: 9,
    after: [...CABINET, { kind: 'low', hertz: 4500, q: 0.7 }],
    level: 0.22,
  },
  bass: {
    before: [],
    after: [
      { kind: 'high', hertz: 32, q: 0.8 },
      { kind: 'peak', hertz: 90, q: 0.9, gain: 2 },
      { kind: 'low', hertz: 2200, q: 0.7 },
    ],
    level: 0.6,
  },
};

/** An amplifier and its memory. */
export interface Amp {
  readonly before: readonly Biquad[];
  readonly drive: Drive | undefined;
  readonly after: readonly Biquad[];
  readonly level: number;
}

export function makeAmp(name: AmpName, rate: number): Amp {
  const { before, drive, after, level } = SPECS[name];
  return {
    before: before.map((spec) => makeBiquad(spec, rate)),
    drive: drive === undefined ? undefined : makeDrive(drive),
    after: after.map((spec) => makeBiquad(spec, rate)),
    level,
  };
}

/** Sends the first `count` samples through, in place. */
export function amplify(amp: Amp, samples: Float32Array, count: number): void {
  for (const filter of amp.before) filterInPlace(filter, samples, count);
  if (amp.drive !== undefined) driveInPlace(amp.drive, samples, count);
  for (const filter of amp.after) filterInPlace(filter, samples, count);
  for (let i = 0; i < count; i++) samples[i] = (samples[i] ?? 0) * amp.level;
}
