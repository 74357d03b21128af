/** Everything the views show, derived from a workspace. */
import type { Workspace } from '#lesson';
import {
  bestAtHand,
  copyAt,
  type FormAtHand,
  formsAlongNeck,
  type Hand,
  nearestCopy,
  type Reading,
  type ReadingQuery,
} from '#neck';
import { type Chart, type Chord, estimateKey, type Key, parseProgression } from '#theory';
import { accountOf, type Standing, symbolInSigns } from '../words.ts';
import {
  cellAt,
  cellsOf,
  chordOf,
  nextOf,
  nextWords,
  type Served,
  withForms,
  withNumerals,
} from './lane.ts';
import { lensEngine, NO_MATERIAL, type Travelled } from './lenses.ts';
import { reread } from './reread.ts';
import type { LaneCell, RouteStudy, Study, Unsaid } from './types.ts';

type Part = keyof Workspace;

const same = (a: Workspace, b: Workspace, parts: readonly Part[]): boolean =>
  parts.every((part) => a[part] === b[part]);

/** What each part of the study depends on. */
const HAND: readonly Part[] = ['position', 'form', 'instrument', 'span'];
const ROUTE: readonly Part[] = ['route', 'routeTo', 'weights', 'pins'];
const MATERIAL: readonly Part[] = ['bendLimits', 'lens', 'turn', 'compare', 'fingering'];
const READING: readonly Part[] = ['show', 'spelling', 'progression', 'at', 'key'];
const ALL: readonly Part[] = [...HAND, ...ROUTE, ...MATERIAL, ...READING];

/** Whether a study of one is a study of the other, but for one part. */
export const sameBut = (a: Workspace, b: Workspace, but: Part): boolean =>
  ALL.every((part) => part === but || a[part] === b[part]);

type Typed = Pick<Study, 'chart' | 'problems'>;
interface Keys {
  readonly keyIsEstimate: boolean;
  readonly key?: Key;
  readonly runnerUp?: Key;
}
type Lane = Pick<Study, 'cells' | 'nextOf' | 'route'>;

function typedOf({ progression }: Workspace, before: Study | undefined): Typed {
  if (before?.of.progression === progression) return before;
  return parseProgression(progression);
}

function estimated(chart: Chart): Keys {
  const estimate = estimateKey(chart);
  if (!estimate) return { keyIsEstimate: true };
  const { best, runnerUp } = estimate;
  return { keyIsEstimate: true, key: best, ...(runnerUp && { runnerUp }) };
}

function keysOf({ key }: Workspace, chart: Chart, before: Study | undefined): Keys {
  if (before?.chart === chart && before.of.key === key) {
    const { keyIsEstimate, key: found, runnerUp } = before;
    return { keyIsEstimate, ...(found && { key: found }), ...(runnerUp && { runnerUp }) };
  }
  return key ? { keyIsEstimate: false, key } : estimated(chart);
}

const handOf = ({ position, instrument, span }: Workspace): Hand => ({
  position,
  instrument,
  span,
});

const served = (chord: Chord, { form, ...workspace }: Workspace): FormAtHand | undefined =>
  form === undefined
    ? bestAtHand(chord, handOf(workspace))
    : (nearestCopy(chord, handOf(workspace), form) ?? bestAtHand(chord, handOf(workspace)));

/** Asks once for each chord; those known from before need no asking if the hand has not moved. */
function server(workspace: Workspace, before: Study | undefined) {
  const stays = before !== undefined && !before.route && same(before.of, workspace, HAND);
  const known = new Map<Chord, FormAtHand | undefined>();
  for (const cell of stays ? before.cells : []) {
    const chord = chordOf(cell.slot);
    if (chord) known.set(chord, cell.form);
  }
  return ({ slot }: LaneCell): Served => {
    const chord = chordOf(slot);
    if (!chord) return {};
    if (!known.has(chord)) known.set(chord, served(chord, workspace));
    const form = known.get(chord);
    return form ? { form } : {};
  };
}

/** What serves each cell on a route: its stop, and where the hand is. */
function routeServer(workspace: Workspace, route: RouteStudy, way: Travelled) {
  return ({ index, slot }: LaneCell): Served => {
    const step = route.stepOf[index] ?? -1;
    const position = way.positions[step] ?? workspace.position;
    const hand = { ...handOf(workspace), position };
    const chord = chordOf(slot);
    const stop = way.stops[step];
    const { form: _form, ...free } = workspace;
    const form =
      chord && stop
        ? copyAt(chord, hand, stop.form.name, stop.anchor)
        : chord && served(chord, { ...free, position });
    return { position, ...(form && { form }) };
  };
}

function serverOf(workspace: Workspace, route: RouteStudy | undefined, before: Study | undefined) {
  const way = route && lensEngine()?.travelled(route, workspace.position);
  return way ? routeServer(workspace, route, way) : server(workspace, before);
}

function laneOf(workspace: Workspace, typed: Typed, keys: Keys, before: Study | undefined): Lane {
  const sameChart = before?.chart === typed.chart;
  const unmoved = sameChart && before.key === keys.key;
  const bare = sameChart ? before.cells : cellsOf(typed.chart, before?.cells ?? []);
  const next = sameChart ? before.nextOf : nextOf(typed.chart, bare);
  const numbered = unmoved ? bare : withNumerals(bare, next, keys.key);
  const route = lensEngine()?.routeOf(workspace, typed.chart, numbered, before);
  const sameHand = before?.route === route && before && same(before.of, workspace, HAND);
  if (unmoved && sameHand) return before;
  const cells = withForms(numbered, serverOf(workspace, route, before));
  return { cells, nextOf: next, ...(route && { route }) };
}

function standingOf(cell: LaneCell | undefined): Standing {
  if (!cell) return { kind: 'empty' };
  const { harmony } = cell.slot;
  if (harmony.kind !== 'unread') return { kind: harmony.kind };
  const { suggestion } = harmony.problem;
  return { kind: 'unread', found: cell.symbol, ...(suggestion !== undefined && { suggestion }) };
}

interface OnNeck {
  readonly chord?: Chord;
  readonly symbol: string;
}

const onNeck = (cell: LaneCell | undefined): OnNeck => {
  const chord = cell && chordOf(cell.slot);
  return chord ? { chord, symbol: cell.symbol } : { symbol: '' };
};

/** While the chord under the cursor cannot be read the last good one stays, or the nearest before it. */
function lastGood(lane: Lane, cursor: number, before: Study | undefined): OnNeck {
  if (before?.chord) return { chord: before.chord, symbol: before.symbol };
  return onNeck(lane.cells.slice(0, cursor).findLast((cell) => chordOf(cell.slot)));
}

function neckOf(lane: Lane, cursor: number, before: Study | undefined): OnNeck {
  const cell = lane.cells[cursor];
  const { kind } = standingOf(cell);
  if (kind === 'unread') return lastGood(lane, cursor, before);
  return kind === 'silent' ? { symbol: cell?.symbol ?? '' } : onNeck(cell);
}

/** Where the hand is at a cell, and the form that is asked for there. */
type Asked = Pick<ReadingQuery, 'position' | 'form' | 'anchor'>;

function askedAt({ cells, route }: Lane, index: number, { position, form }: Workspace): Asked {
  const cell = cells[index];
  if (route && cell?.position !== undefined) {
    const stop = cell.form;
    const asked = stop && { form: stop.form.name, anchor: stop.anchor };
    return { position: cell.position, ...asked };
  }
  return form === undefined ? { position } : { position, form };
}

function queryOf(workspace: Workspace, chord: Chord, asked: Asked): ReadingQuery {
  const { show: colours, spelling, instrument, span } = workspace;
  return { instrument, span, ...asked, chord, colours, spelling };
}

const NOWHERE: readonly FormAtHand[] = [];

function placesOf(
  workspace: Workspace,
  chord: Chord,
  position: number,
  before: Study | undefined,
): readonly FormAtHand[] {
  const parts = ['instrument', 'span'] as const;
  const known = before?.chord === chord && before.position === position;
  if (known && same(before.of, workspace, parts)) return before.places;
  return formsAlongNeck(chord, { ...handOf(workspace), position });
}

interface Next {
  readonly nextChord?: Chord;
  readonly nextSymbol?: string;
  readonly nextWords?: string;
  readonly nextForm?: FormAtHand;
}

function nextAt({ cells, nextOf: next }: Lane, cursor: number): Next {
  const cell = cells[next[cursor] ?? -1];
  const nextChord = cell && chordOf(cell.slot);
  if (!cell || !nextChord) return {};
  const words = nextWords(cells, cursor, cell.index);
  const form = cell.form && { nextForm: cell.form };
  return { nextChord, nextSymbol: cell.symbol, nextWords: words, ...form };
}

function nextReadingOf(
  workspace: Workspace,
  lane: Lane,
  cursor: number,
  before: Study | undefined,
): Reading | undefined {
  const index = lane.nextOf[cursor] ?? -1;
  const cell = lane.cells[index];
  const chord = cell && chordOf(cell.slot);
  if (!chord) return undefined;
  const query = queryOf(workspace, chord, askedAt(lane, index, workspace));
  return reread(query, [before?.nextReading, before?.turned?.from, before?.reading]);
}

/** The reading of any cell, where the hand is for it; undefined where no chord stands. */
export function readingAt(study: Study, index: number): Reading | undefined {
  const cell = study.cells[index];
  const chord = cell && chordOf(cell.slot);
  if (!chord) return undefined;
  return reread(queryOf(study.of, chord, askedAt(study, index, study.of)), [study.nextReading]);
}

type OnTheNeck = Pick<
  Study,
  'reading' | 'nextReading' | 'turned' | 'compared' | 'places' | keyof typeof NO_MATERIAL
>;

/** Everything about the chord on the neck, under the hand where it is at the cursor. */
function studied(
  workspace: Workspace,
  lane: Lane,
  at: { readonly cursor: number; readonly chord: Chord | undefined; readonly asked: Asked },
  before: Study | undefined,
): OnTheNeck {
  const { chord, asked } = at;
  const nextReading = nextReadingOf(workspace, lane, at.cursor, before);
  const next = nextReading && { nextReading };
  if (!chord) return { ...next, ...NO_MATERIAL, places: NOWHERE };
  const query = queryOf(workspace, chord, asked);
  const places = placesOf(workspace, chord, asked.position, before);
  const lenses = lensEngine();
  if (!lenses) {
    return { ...next, ...NO_MATERIAL, reading: reread(query, [before?.reading]), places };
  }
  const { reading, turned } = lenses.shownOf(query, workspace, before);
  const compared = lenses.comparedOf(reading, query, workspace, before);
  return {
    ...next,
    ...lenses.goingOn(reading, nextReading, workspace, before),
    ...(turned && { turned }),
    ...(compared && { compared }),
    colours: lenses.coloursOf(reading, before),
    places,
  };
}

/**
 * The study of a workspace. Given the study `before`, every part whose inputs did not change is
 * taken from it by reference, which of several routes or names is chosen too; while the chord under
 * the cursor cannot be read, the last good one stays on the neck. If nothing that it depends on
 * changed, `before` itself is returned.
 */
export function studyOf(workspace: Workspace, before?: Study): Study {
  if (before && same(before.of, workspace, ALL)) return before;
  const typed = typedOf(workspace, before);
  const keys = keysOf(workspace, typed.chart, before);
  const lane = laneOf(workspace, typed, keys, before);
  return assembled(workspace, { typed, keys, lane }, before);
}

interface Read {
  readonly typed: Typed;
  readonly keys: Keys;
  readonly lane: Lane;
}

/** Each of `read` may be a whole study of which only its own parts are meant. */
function assembled(workspace: Workspace, read: Read, before: Study | undefined): Study {
  const { chart, problems } = read.typed;
  const { keyIsEstimate, key, runnerUp } = read.keys;
  const { cells, nextOf: next, route } = read.lane;
  const lane = { cells, nextOf: next, ...(route && { route }) };
  const cursor = cellAt(cells, workspace.at);
  const standing = standingOf(cells[cursor]);
  const { chord, symbol } = neckOf(lane, cursor, before);
  const asked = askedAt(lane, cursor, workspace);
  const fingered = lensEngine()?.fingeredOf(workspace, before);
  return withAccount({
    of: workspace,
    chart,
    problems,
    ...lane,
    cursor,
    standing,
    symbol,
    position: asked.position,
    ...(chord && { chord }),
    ...studied(workspace, lane, { cursor, chord, asked }, before),
    ...nextAt(lane, cursor),
    keyIsEstimate,
    ...(key && { key }),
    ...(runnerUp && { runnerUp }),
    ...(fingered && { fingered }),
  });
}

/** What the neck shows: the chord as typed, and what it is turned into. */
const symbolShown = ({ symbol, turned }: Unsaid): string =>
  turned ? `${symbolInSigns(symbol)} turned: ${symbolInSigns(turned.symbol)}` : symbol;

function withAccount(study: Unsaid): Study {
  const { standing, position, reading, nextSymbol, nextForm: form, nextWords: words } = study;
  const next = nextSymbol === undefined ? undefined : { symbol: nextSymbol, form, words };
  const symbol = symbolShown(study);
  const material = lensEngine()?.materialInWords(study) ?? [];
  const beside = reading && lensEngine()?.besideInWords(reading, { ...handOf(study.of), position });
  return {
    ...study,
    ...accountOf({ standing, symbol, position, reading, next, beside, material }),
  };
}

/** The study made anew with lenses that have arrived; the last good chord stays on the neck. */
export function renewed(study: Study): Study {
  const { reading, nextReading, turned, compared, fingered, ...bare } = study;
  const lane = laneOf(bare.of, bare, bare, bare);
  return assembled(bare.of, { typed: bare, keys: bare, lane }, bare);
}

/** The study with another route: planned further, stopped, or another of its ways chosen. */
export function withRoute(study: Study, change: (route: RouteStudy) => RouteStudy): Study {
  const route = study.route && change(study.route);
  if (!route || route === study.route) return study;
  const isSameWay = route.routes === study.route?.routes && route.chosen === study.route.chosen;
  const cells = isSameWay ? study.cells : withForms(study.cells, serverOf(study.of, route, study));
  const lane = { cells, nextOf: study.nextOf, route };
  return assembled(study.of, { typed: study, keys: study, lane }, study);
}

/** The study with another order of what follows what: as it is played just now. */
export function withNextOf(study: Study, nextOf: readonly number[]): Study {
  const { cells, route } = study;
  const lane = { cells, nextOf, ...(route && { route }) };
  return assembled(study.of, { typed: study, keys: study, lane }, study);
}

/** The study with another name chosen for the fingering. */
export function withName(study: Study, index: number): Study {
  const fingered =
    study.fingered && lensEngine()?.naming(study.fingered, index, study.of.instrument);
  return !fingered || fingered === study.fingered ? study : withAccount({ ...study, fingered });
}
