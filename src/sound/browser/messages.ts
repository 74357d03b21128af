/** What page, clock and band say to each other. All plain data, so that it passes between threads. */
import type { Performance } from '../performance.ts';
import type { TransportSettings } from '../setup.ts';
import type { StringTone } from '../string.ts';
import type { Mark } from '../transport.ts';
import type { BandEvent, Mix, Struck } from '../types.ts';

/** What the band is made with. */
export interface BandOptions {
  readonly guitar: readonly StringTone[];
  readonly mix: Mix;
}

/** Page to band. */
export type ToBand =
  | { readonly kind: 'clock'; readonly port: MessagePort }
  | { readonly kind: 'mix'; readonly mix: Mix }
  | { readonly kind: 'guitar'; readonly guitar: readonly StringTone[] }
  | { readonly kind: 'strike'; readonly notes: readonly Struck[] };

/** The frame at which a run is meant to begin. */
export interface Begins {
  readonly run: number;
  readonly frame: number;
}

/** Clock to band. */
export type ClockToBand =
  | {
      readonly kind: 'events';
      readonly events: readonly BandEvent[];
      /** A run begins with these; should its frame have passed, all of it is played later. */
      readonly begins?: Begins;
    }
  /** What was given away with a slice from `keep` on is taken back. */
  | { readonly kind: 'back'; readonly keep: number }
  | { readonly kind: 'silence' };

/** Band to clock: the audio clock (seconds) and when it was read (milliseconds since 1970); by how much a run is late. */
export type BandToClock =
  | { readonly kind: 'now'; readonly seconds: number; readonly at: number }
  | { readonly kind: 'late'; readonly run: number; readonly seconds: number };

/** Page to clock. */
export type ToClock =
  | { readonly kind: 'band'; readonly port: MessagePort; readonly rate: number }
  | {
      readonly kind: 'start';
      /** Tells this performance from those before it. */
      readonly run: number;
      readonly performance: Performance;
      readonly settings: TransportSettings;
      /** Tick of the performance. */
      readonly from: number;
      /** The audio clock when it was asked. */
      readonly now: number;
    }
  | { readonly kind: 'settings'; readonly settings: TransportSettings }
  | { readonly kind: 'performance'; readonly performance: Performance }
  | { readonly kind: 'stop' };

/**
 * Clock to page, about a run: how time runs from moments on, given away with a slice; that nothing
 * will come after a moment; that slices from `keep` on are taken back; that all its moments are so
 * much later on the audio clock.
 */
export type FromClock = { readonly run: number } & (
  | { readonly kind: 'marks'; readonly slice: number; readonly marks: readonly Mark[] }
  | { readonly kind: 'done'; readonly seconds: number }
  | { readonly kind: 'back'; readonly keep: number }
  | { readonly kind: 'late'; readonly seconds: number }
);
