/** The nouns of the neck. */
import type { Brand, Chord, Degree, NoteName, Pitch } from '#theory';

/** 1 = the thinnest string. */
export type StringNumber = Brand<number, 'StringNumber'>;
/** 0 = the open string. */
export type Fret = Brand<number, 'Fret'>;
export type Millimetres = Brand<number, 'Millimetres'>;

/** One string at one fret. */
export interface Place {
  readonly string: StringNumber;
  readonly fret: Fret;
}

/** One string of the instrument. Gauge in thousandths of an inch (10 = .010). */
export interface OpenString {
  readonly pitch: Pitch;
  readonly gauge: number;
  readonly wound: boolean;
}

/** A fretted instrument. `strings[0]` is string 1. */
export interface Instrument {
  readonly strings: readonly OpenString[];
  readonly frets: number;
  /** Fret the capo lies behind, 0 = none. Frets are still counted from the nut. */
  readonly capo: number;
  /** Nut to bridge. */
  readonly scale: Millimetres;
  readonly leftHanded: boolean;
  /** Forms that the player put down, besides those that the tuning has. */
  readonly ownForms?: readonly Form[];
}

/** "Index at fret `index`, my little finger holds fret `little`." */
export interface Span {
  readonly index: number;
  readonly little: number;
}

/**
 * An open chord shape that moves along the neck. `frets[0]` belongs to string 1, counted from the
 * anchor (where the open strings come to lie); null = not played. `root` is the open chord's root.
 */
export interface Form {
  readonly name: string;
  readonly root: NoteName;
  readonly frets: readonly (number | null)[];
  /** Only on forms that a player put down: what the lowest string plays, and whether the root is left out. */
  readonly own?: { readonly bass: Degree; readonly rootless: boolean };
}

/** One finger on one or more neighbouring strings at a fret. */
export interface Barre {
  readonly finger: number;
  readonly fret: Fret;
  readonly from: StringNumber;
  readonly to: StringNumber;
}

/** A place of a grip: which degree sounds there, and the finger that holds it (absent = open). */
export interface GripTone extends Place {
  readonly degree: Degree;
  readonly finger?: number;
}

/** What is actually fretted for a chord in a form. `tones` run from string 1 to the lowest. */
export interface Grip {
  readonly form: Form;
  readonly anchor: Fret;
  readonly tones: readonly GripTone[];
  readonly barres: readonly Barre[];
  /** Chord degrees that the grip has to leave out. */
  readonly missing: readonly Degree[];
}

export const KINDS = ['shape', 'chord', 'colour'] as const;
export type ToneKind = (typeof KINDS)[number];
export const REACHES = ['hand', 'stretch', 'open', 'bend', 'out'] as const;
export type Reach = (typeof REACHES)[number];

/** A place on the neck that sounds a chord tone or a colour tone. */
export interface Tone extends Place {
  readonly pitch: Pitch;
  readonly degree: Degree;
  readonly kind: ToneKind;
  readonly reach: Reach;
  readonly finger?: number;
}

/** How a form lies relative to the hand. Counts are of the grip's tones. */
export interface FormAtHand {
  readonly form: Form;
  readonly anchor: Fret;
  /** Absent when no playable grip of this chord exists in this form. */
  readonly grip?: Grip;
  readonly under: number;
  readonly stretched: number;
  readonly of: number;
  /** Neighbouring forms of the same chord and the places they share with this one. */
  readonly overlaps: readonly {
    readonly form: Form;
    readonly anchor: Fret;
    readonly shared: readonly Place[];
  }[];
}

/** Why a place of the neck bears a form's name. */
export interface FormReason {
  /** Strings of the grip that hold the root, thickest first. */
  readonly roots: readonly StringNumber[];
  /** Frets from where the shape is open: from the nut, or from the capo. */
  readonly up: number;
  /** Whether a flat finger lies where the open shape has the nut. */
  readonly barre: boolean;
}

/**
 * The form that comes after the best, and what sets the best apart. `share`: more of it lies under the
 * hand, as a share of its grip. `stretch`: more of it with the tones that the hand stretches to.
 * `part`: what the other has is only a part of some form's grip. Where the hand has as much of both,
 * the best is the `whole` of which the other is a part, fits into four frets (`narrow`), lies nearer,
 * has no string to mute in it (`clean`), or is the more usual. `alone`: nothing of any other lies under the hand.
 */
export interface FormRival {
  readonly at: FormAtHand;
  readonly by:
    | 'share'
    | 'stretch'
    | 'part'
    | 'whole'
    | 'narrow'
    | 'near'
    | 'clean'
    | 'usual'
    | 'alone';
  /** The form of which the other's grip is a part, where that is at hand too. */
  readonly within?: Form;
}

export interface ReadingQuery {
  readonly chord: Chord;
  /** Fret under the index finger. */
  readonly position: number;
  readonly instrument: Instrument;
  readonly span: Span;
  /** Colour degrees switched on. */
  readonly colours: readonly Degree[];
  /** Ask for a form by name; absent = whatever lies best under the hand. */
  readonly form?: string;
  /** Of that form the copy with this anchor; absent = the one nearest to the hand. */
  readonly anchor?: number;
  readonly spelling: 'exact' | 'plain';
}

/** What the hand can reach of a chord where it is. `forms` best first; `chosen` is one of them. */
export interface Reading {
  readonly chord: Chord;
  readonly position: number;
  readonly forms: readonly FormAtHand[];
  readonly chosen: FormAtHand | undefined;
  readonly tones: readonly Tone[];
}
