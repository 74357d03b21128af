/** The nouns of what is heard. */
import type { Playing } from '#line';
import type { DrumName } from './drums.ts';

/** A note for a string, in seconds; what is heard of a line's note once pitch and tempo are known. */
export interface StringNote extends Playing {
  /** Seconds from the beginning. */
  readonly start: number;
  /** Seconds. */
  readonly length: number;
  /** Pitch that the place sounds without bend, slide or vibrato; may have a fraction. */
  readonly midi: number;
  /** 0 (silent) to 1 (as hard as it goes). */
  readonly force: number;
  /** Struck while the fretting hand mutes it: a knock without a pitch to speak of. */
  readonly dead?: boolean;
  /** At its end it slides on by so many semitones, to the note that follows on its string. */
  readonly slideOn?: number;
}

/** A note to be struck by hand; string 1 is the thinnest. Its `start` says how many seconds from now. */
export interface Struck {
  readonly string: number;
  readonly note: StringNote;
}

export const PARTS = ['line', 'comp', 'bass', 'drums', 'click', 'count'] as const;
/** `line` is what is studied; the others are its backing. `count` counts in, and is heard with any solo. */
export type PartName = (typeof PARTS)[number];

/** A part at the mixing desk. */
export interface PartMix {
  /** 0 (silent) to 1 (as loud as it goes). */
  readonly level: number;
  readonly mute: boolean;
  /** While any part is solo, only those are heard. */
  readonly solo: boolean;
}

/** How a backing moves. */
export const FEELS = ['straight', 'shuffle', 'ballad', 'sixteen'] as const;
export type FeelName = (typeof FEELS)[number];

export const GUITAR_SOUNDS = ['clean', 'driven'] as const;
export type GuitarSound = (typeof GUITAR_SOUNDS)[number];

/** Everything that can be set about how the parts are heard. */
export interface Mix {
  readonly parts: Readonly<Record<PartName, PartMix>>;
  /** Level of the whole, 0 to 1. */
  readonly master: number;
  /** The amplifier of the studied line. */
  readonly sound: GuitarSound;
}

/** When a part does something: at a sample, counted from the beginning. */
interface Placed {
  readonly frame: number;
  readonly part: PartName;
  /** The slice of time with which it was given away, where it may be taken back. */
  readonly slice?: number;
}

/** Something that a part does. */
export type BandEvent =
  | (Placed & {
      readonly kind: 'note';
      /** 1 = the thinnest. */
      readonly string: number;
      readonly note: StringNote;
    })
  | (Placed & {
      readonly kind: 'hit';
      readonly drum: DrumName;
      readonly force: number;
    });
