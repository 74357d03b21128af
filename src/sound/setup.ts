/** What a first visit hears, and within what everything can be set. */
import { TEMPO_RANGE } from '#line';
import type { Mix, PartMix } from './types.ts';

/** Written bars that are played over and over, both included, from 1. */
export interface LoopBars {
  readonly first: number;
  readonly last: number;
}

/** The tempo rises by `by` quarter notes a minute after every `every` rounds, up to `most`. */
export interface Rise {
  readonly by: number;
  readonly every: number;
  readonly most: number;
}

/** Everything about playing that does not change what is played. */
export interface TransportSettings {
  /** Quarter notes a minute. */
  readonly tempo: number;
  /** Share of the tempo at which it is played: 0.5 is half as fast. */
  readonly share: number;
  /** Absent = all bars. */
  readonly loop?: LoopBars;
  /** Played to the end and no further; absent = round and round. */
  readonly once?: true;
  readonly rise?: Rise;
  /** Everything with a pitch sounds so many semitones higher: −1 is tuned down a half step. */
  readonly semitones: number;
  readonly countInBars: number;
}

export const DEFAULT_SETTINGS: TransportSettings = {
  tempo: 90,
  share: 1,
  semitones: 0,
  countInBars: 1,
};

export const SETTING_RANGES = {
  tempo: TEMPO_RANGE,
  share: { min: 0.25, max: 1 },
  semitones: { min: -12, max: 12 },
  countInBars: { min: 0, max: 4 },
  by: { min: 1, max: 50 },
  every: { min: 1, max: 99 },
} as const;

const part = (level: number, mute = false): PartMix => ({ level, mute, solo: false });

/** Starts quietly: whoever wants it louder turns it up. The whole is well below what the limiter would hold. */
export const DEFAULT_MIX: Mix = {
  parts: {
    line: part(0.8),
    comp: part(0.6),
    bass: part(0.7),
    drums: part(0.75),
    click: part(0.6, true),
    count: part(0.6),
  },
  master: 0.5,
  sound: 'clean',
};
