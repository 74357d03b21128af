/** What page, clock and band say to each other. All plain data, so that it passes between threads. */
import type { Performance } from '../performance.ts';
import type { TransportSettings } from '../settings.ts';
import type { StringTone } from '../string.ts';
import type { Mark } from '../transport.ts';
import type { BandEvent, Mix, StringNote } from '../types.ts';

/** What the band is made with. */
export interface BandOptions {
  readonly guitar: readonly StringTone[];
  readonly mix: Mix;
}

/** A note to be struck now; string 1 is the thinnest. Its `start` says how many seconds from now. */
export interface Struck {
  readonly string: number;
  readonly note: StringNote;
}

/** Page to band. */
export type ToBand =
  | { readonly kind: 'clock'; readonly port: MessagePort }
  | { readonly kind: 'mix'; readonly mix: Mix }
  | { readonly kind: 'guitar'; readonly guitar: readonly StringTone[] }
  | { readonly kind: 'strike'; readonly notes: readonly Struck[] };

/** Clock to band. */
export type ClockToBand =
  | { readonly kind: 'events'; readonly events: readonly BandEvent[] }
  | { readonly kind: 'silence' };

/** Band to clock: the audio clock, seconds. */
export interface BandToClock {
  readonly seconds: number;
}

/** Page to clock. */
export type ToClock =
  | { readonly kind: 'band'; readonly port: MessagePort; readonly rate: number }
  | {
      readonly kind: 'start';
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

/** Clock to page: how time runs from moments on; and that nothing more will come after a moment. */
export type FromClock =
  | { readonly kind: 'marks'; readonly marks: readonly Mark[] }
  | { readonly kind: 'done'; readonly seconds: number };
