/**
 * What the study lenses compute. None of it is needed for the first view, so it is fetched after the
 * page stands and put in here; until then a study has no bends, connections, routes and the like.
 */
import type { Workspace } from '#lesson';
import type { Bend, Connection, Hand, Reading, ReadingQuery, Stop } from '#neck';
import type { Chart, Colour } from '#theory';
import type { Beside } from '../words.ts';
import type { Page } from './page.ts';
import type {
  AppState,
  Compared,
  Fingered,
  LaneCell,
  RouteStudy,
  Study,
  TurnedForm,
  Unsaid,
} from './types.ts';
import type { Cell } from './zustand.ts';

/** The reading that is shown, and how it came about if a form was turned. */
export interface Shown {
  readonly reading: Reading;
  readonly turned?: TurnedForm;
}

export interface Going {
  readonly reading: Reading;
  readonly bends: readonly Bend[];
  readonly connections: readonly Connection[];
}

/** Where the hand is at every step of a route, and the stop of each that has one. */
export interface Travelled {
  readonly stops: readonly (Stop | undefined)[];
  readonly positions: readonly number[];
}

type Before = Study | undefined;

/** The functions of material.ts, route.ts, fingered.ts and the words-….ts that a study calls, and what makes studies beforehand. */
export interface LensEngine {
  readonly readyStudy: (workspace: Workspace, before: Study) => Study;
  readonly startBackground: (cell: Cell<AppState>, page: Page) => () => void;
  readonly shownOf: (query: ReadingQuery, workspace: Workspace, before: Before) => Shown;
  readonly comparedOf: (
    reading: Reading,
    query: ReadingQuery,
    workspace: Workspace,
    before: Before,
  ) => Compared | undefined;
  readonly goingOn: (
    reading: Reading,
    next: Reading | undefined,
    workspace: Workspace,
    before: Before,
  ) => Going;
  readonly coloursOf: (reading: Reading, before: Before) => readonly Colour[];
  readonly routeOf: (
    workspace: Workspace,
    chart: Chart,
    cells: readonly LaneCell[],
    before: Before,
  ) => RouteStudy | undefined;
  readonly travelled: (route: RouteStudy, start: number) => Travelled | undefined;
  readonly fingeredOf: (workspace: Workspace, before: Before) => Fingered | undefined;
  readonly naming: (fingered: Fingered, index: number, on: Workspace['instrument']) => Fingered;
  readonly materialInWords: (study: Unsaid) => readonly string[];
  readonly besideInWords: (reading: Reading, hand: Hand) => Beside;
}

const NO_BENDS: readonly Bend[] = [];
const NO_CONNECTIONS: readonly Connection[] = [];
const NO_COLOURS: readonly Colour[] = [];

/** Nothing of all this without a chord, or before the lenses are there. */
export const NO_MATERIAL = {
  bends: NO_BENDS,
  connections: NO_CONNECTIONS,
  colours: NO_COLOURS,
} as const;

let engine: LensEngine | undefined;
let fetcher: (() => void) | undefined;
let waiting: readonly (() => void)[] = [];
/** Something was asked of them before anybody could say how they come. */
let urgently = false;

export const lensEngine = (): LensEngine | undefined => engine;

/** Puts the lenses in; whatever waited for them is done now. */
export function installLenses(arrived: LensEngine): void {
  engine = arrived;
  const work = waiting;
  waiting = [];
  for (const one of work) one();
}

/** Says how the lenses can be fetched; called at once if something waits for them already. */
export function lensesComeBy(fetch: () => void): void {
  fetcher = fetch;
  if (urgently) fetch();
}

/** Does something now if the lenses are there, or as soon as they are; `urgent` sends for them. */
export function whenLenses(work: () => void, urgent: boolean): void {
  if (engine) {
    work();
    return;
  }
  waiting = [...waiting, work];
  urgently ||= urgent;
  if (urgent) fetcher?.();
}
