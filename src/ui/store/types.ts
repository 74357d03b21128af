/** What the views are given. Computed by `studyOf`, never by a component. */
import type {
  BendLimitName,
  Comparison,
  PinnedForm,
  RouteGoal,
  RouteKind,
  WeightName,
  Workspace,
} from '#lesson';
import type {
  Bend,
  ComparedPlace,
  CompareWhat,
  Connection,
  FormAtHand,
  Frets,
  Place,
  Reading,
  Route,
  RoutePlan,
  Turn,
  TurnedString,
} from '#neck';
import type { LoopBars } from '#sound';
import type {
  Chart,
  ChartProblem,
  Chord,
  Colour,
  Degree,
  Key,
  NameReading,
  Pitch,
  RomanNumeral,
  Slot,
} from '#theory';
import type { Standing } from '../words.ts';

/** One chord in the lane. */
export interface LaneCell {
  readonly index: number;
  /** Written bar, from 1. */
  readonly bar: number;
  /** `bar.beat`, both from 1. */
  readonly at: string;
  readonly slot: Slot;
  readonly symbol: string;
  /** The form that serves the chord at the present position, or with a route the form of its stop. */
  readonly form?: FormAtHand;
  /** With a route: fret under the index finger, from the stop of the first time it is played. */
  readonly position?: number;
  readonly roman?: RomanNumeral;
  readonly problem?: ChartProblem;
}

/** The form under the cursor turned into another quality; `Study.reading` is then of the turned chord. */
export interface TurnedForm {
  readonly turn: Turn;
  readonly chord: Chord;
  readonly symbol: string;
  /** The reading before it was turned. */
  readonly from: Reading;
  /** The strings that change, thinnest first; all others keep still. */
  readonly moves: readonly TurnedString[];
  /** False where four fingers cannot hold it: there are no moves then, only tones. */
  readonly playable: boolean;
}

/** The reading laid beside another. */
export interface Compared {
  readonly comparison: Comparison;
  /** Form name, or chord symbol as typed. */
  readonly name: string;
  readonly second: Reading;
  readonly what: CompareWhat;
  /** Places with both `first` and `second` are shared. */
  readonly places: readonly ComparedPlace[];
}

/** One string of a fingering that was put down; `degree` is counted in the chosen name. */
export interface FingeredPlace extends Place {
  readonly pitch: Pitch;
  readonly degree?: Degree;
  /** Absent on open strings, and where no hand could hold it. */
  readonly finger?: number;
}

/** The fingering that was typed or put down; of one half typed, the strings so far. */
export interface Fingered {
  readonly text: string;
  /** Frets with string 1 first, null = not played. */
  readonly frets: Frets;
  readonly error?: string;
  /** Best first. */
  readonly names: readonly NameReading[];
  /** Index of the name that is chosen; -1 = there is none. */
  readonly chosen: number;
  /** Thinnest string first. */
  readonly places: readonly FingeredPlace[];
}

/** One chord of the playing order; a chord that simply goes on is one step. */
export interface RouteStep {
  /** Index of the cell in the lane. */
  readonly cell: number;
  /** Absent where none sounds. */
  readonly chord?: Chord;
  readonly pin?: PinnedForm;
}

/** A route through the whole progression, as far as it is planned. */
export interface RouteStudy {
  readonly kind: RouteKind;
  /** Where `travel` goes. */
  readonly goal?: RouteGoal;
  /** The form that `carry` carries. */
  readonly form?: string;
  /** Best first, at most four; `stops` go with `steps`. While a new plan is made, the last good ones. */
  readonly routes: readonly Route[];
  /** Index of the route that is shown. */
  readonly chosen: number;
  /** The chords in playing order, repeats written out. */
  readonly steps: readonly RouteStep[];
  /** For every cell the step of the first time it is played; -1 = never. */
  readonly stepOf: readonly number[];
  /** Pinned forms that do not fit the text: kept, but not planned with. */
  readonly unfit: readonly PinnedForm[];
  readonly error?: string;
  /** Steps planned so far of a plan under way. */
  readonly progress?: { readonly done: number; readonly of: number };
  /** The plan was stopped by hand; asking for the same route again plans anew. */
  readonly stopped: boolean;
  readonly plan?: RoutePlan;
}

/** Everything derived from a workspace. Parts that did not change keep their reference. */
export interface Study {
  /** The workspace it was computed from. */
  readonly of: Workspace;
  readonly chart: Chart;
  readonly problems: readonly ChartProblem[];
  readonly cells: readonly LaneCell[];
  /** Index of the cell under the cursor; -1 when there is none. */
  readonly cursor: number;
  /** The chord on the neck: the one under the cursor, or the last good one while typing. */
  readonly chord?: Chord;
  readonly symbol: string;
  /** What stands under the cursor; while it is not `chord`, the neck shows none or the last good one. */
  readonly standing: Standing;
  /** For every cell the index of the next other chord in playing order; -1 = none. */
  readonly nextOf: readonly number[];
  readonly nextChord?: Chord;
  readonly nextSymbol?: string;
  /** How the next chord is come to: “Next”, “Next, by the repeat”, “Next, after N.C.”. */
  readonly nextWords?: string;
  readonly nextForm?: FormAtHand;
  /** Fret under the index finger now: that of the route's stop, or where the workspace has it. */
  readonly position: number;
  readonly reading?: Reading;
  /** The reading of the next chord, where the hand will be for it. */
  readonly nextReading?: Reading;
  /** Every bend under the hand to a tone of this chord or the next, easiest first. */
  readonly bends: readonly Bend[];
  /** What leads to the next chord, best first. */
  readonly connections: readonly Connection[];
  /** Colour tones for the chord shown, in the order in which players use them. */
  readonly colours: readonly Colour[];
  readonly turned?: TurnedForm;
  readonly compared?: Compared;
  readonly fingered?: Fingered;
  readonly route?: RouteStudy;
  /** Every playable copy of every form of this chord, from the nut up ("where else"). */
  readonly places: readonly FormAtHand[];
  readonly key?: Key;
  readonly keyIsEstimate: boolean;
  readonly runnerUp?: Key;
  /** The reading in words. */
  readonly account: string;
  /** The part of it that says why the form is called so and was chosen; '' where nothing does. */
  readonly reason: string;
}

/** A study before it is put in words. */
export type Unsaid = Omit<Study, 'account' | 'reason'>;

/** A message to the person: a refused value at its field, storage that cannot keep, a link that was partly read. */
export interface Notice {
  readonly id: string;
  readonly tone: 'error' | 'info';
  readonly text: string;
}

/** Work that was left behind and work that was undone; the last of `past` comes back first. */
export interface History {
  readonly past: readonly Workspace[];
  readonly future: readonly Workspace[];
  /** The run that the last step belongs to: the next step of the same run is no new one. */
  readonly run?: string;
}

/** Fields that can refuse what is typed; the refusal is the notice with the id `field.<name>`. */
export const FIELDS = [
  'tuning',
  'frets',
  'capo',
  'scale',
  'gauges',
  'span',
  'key',
  'routeTo',
  'pin',
  'compare',
  'fingering',
  'ownForm',
  'tempo',
  'loop',
  'rise',
  'rise.by',
  'rise.every',
  'rise.most',
] as const;
export type FieldName = (typeof FIELDS)[number] | `weight.${WeightName}` | `bend.${BendLimitName}`;

export const PANELS = ['settings', 'keys'] as const;
export type Panel = (typeof PANELS)[number];

export interface AppState {
  readonly workspace: Workspace;
  readonly study: Study;
  readonly notices: readonly Notice[];
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** Which panel is open over the workspace. */
  readonly panel?: Panel;
  /** Whether the practice screen is on. */
  readonly practising: boolean;
  /** Whether music plays: the reading then changes with every chord. */
  readonly playing: boolean;
  /** The form that walking along the neck asked for: not one that was chosen by hand. */
  readonly walked?: string;
  /** The loop that the key for it let go last, and the chart that it was of: it comes back by the same key. */
  readonly letGo?: { readonly loop: LoopBars; readonly chart: Chart };
  /** While a key is held down, what was shown when that began. */
  readonly held?: Study;
  readonly history: History;
}
