/** The nouns of what a person keeps. */
import type { StudyName } from '#line';
import type { BendLimits, Instrument, RouteWeights, Span } from '#neck';
import type { FeelName, Mix, TransportSettings } from '#sound';
import type { Degree, Key } from '#theory';

export const LABELS = ['degrees', 'notes', 'fingers', 'none'] as const;
export type Labels = (typeof LABELS)[number];
export const SPACINGS = ['true', 'even'] as const;
export type Spacing = (typeof SPACINGS)[number];
export const THEMES = ['system', 'light', 'dark', 'contrast'] as const;
export type Theme = (typeof THEMES)[number];
export const SPELLINGS = ['exact', 'plain'] as const;
export type Spelling = (typeof SPELLINGS)[number];
export const ROUTES = ['stay', 'carry', 'travel'] as const;
export type RouteKind = (typeof ROUTES)[number];

/** What is drawn over the neck besides the reading. */
export const LENSES = [
  'none',
  'bends',
  'connections',
  'turn',
  'fingering',
  'compare',
  'route',
] as const;
export type Lens = (typeof LENSES)[number];

/** Where a route that travels is to arrive: a fret under the index finger, by a written bar from 1. */
export interface RouteGoal {
  readonly position: number;
  readonly bar: number;
}

/** A form set by hand for one chord of a route; `at` is the chord's `bar.beat`. */
export interface PinnedForm {
  readonly at: string;
  readonly form: string;
  readonly anchor: number;
}

/** A form that a player put down: a fingering named as a chord in a tuning. */
export interface OwnForm {
  readonly name: string;
  /** From the lowest string, as `x7678x`. */
  readonly fingering: string;
  readonly symbol: string;
  /** As `makeTuning` writes it. */
  readonly tuning: string;
}

/** What the reading is laid beside: the same chord in another form, or another chord. */
export type Comparison =
  | { readonly kind: 'form'; readonly form: string }
  | { readonly kind: 'chord'; readonly symbol: string };

/** What a page-turning pedal does on the practice screen. */
export const PEDALS = ['plays', 'steps'] as const;
export type Pedal = (typeof PEDALS)[number];

/** How the progression is heard and practised. */
export interface SoundSetup {
  /** How the reading is played over its backing. */
  readonly study: StudyName;
  readonly feel: FeelName;
  /** Whether a tone, grip or chord sounds when it is touched. */
  readonly touch: boolean;
  readonly pedal: Pedal;
  readonly transport: TransportSettings;
  readonly mix: Mix;
}

/** A moment of the chart: written bar from 1, beat from 1 (may have a fraction). */
export interface Moment {
  readonly bar: number;
  readonly beat: number;
}

/** Everything a person set or typed; what undo goes back over and what is kept. */
export interface Workspace {
  /** The progression as typed. */
  readonly progression: string;
  /** Where the cursor stands. Kept, but not a step of undo. */
  readonly at: Moment;
  /** Fret under the index finger, 1 and up. */
  readonly position: number;
  /** A form asked for by name; absent = whatever lies best under the hand. */
  readonly form?: string;
  /** Always with those of `ownForms` on it that belong to its tuning (`withInstrument`). */
  readonly instrument: Instrument;
  readonly span: Span;
  /** Colour degrees switched on. */
  readonly show: readonly Degree[];
  /** Key set by hand; absent = as estimated. */
  readonly key?: Key;
  readonly spelling: Spelling;
  readonly labels: Labels;
  readonly spacing: Spacing;
  readonly theme: Theme;
  /** Single-character shortcuts on (WCAG 2.2, 2.1.4: they can be switched off). */
  readonly shortcuts: boolean;
  /** With a route on, `position` is what is asked of it: home to stay near, or where to set out. */
  readonly route?: RouteKind;
  /** Where `travel` goes; absent = `usualGoal`. */
  readonly routeTo?: RouteGoal;
  readonly weights: RouteWeights;
  readonly pins: readonly PinnedForm[];
  readonly bendLimits: BendLimits;
  /** Of every tuning; those of other tunings wait. */
  readonly ownForms: readonly OwnForm[];
  /** Kept, but not a step of undo; so are `turn` and `compare`. */
  readonly lens: Lens;
  /** Name of a row of `TURNS`. */
  readonly turn?: string;
  readonly compare?: Comparison;
  /** The fingering as typed, right or wrong. */
  readonly fingering: string;
  readonly sound: SoundSetup;
  /** The caution about listening has been shown: once is enough. */
  readonly cautioned: boolean;
}
