/** Everything the views show, derived from a workspace. */
import type { Workspace } from '#lesson';
import {
  bestAtHand,
  type FormAtHand,
  formsAlongNeck,
  type Hand,
  nearestCopy,
  type Reading,
  readNeck,
} from '#neck';
import { type Chart, type Chord, estimateKey, type Key, parseProgression } from '#theory';
import { accountOf, type Standing } from '../words.ts';
import { cellAt, cellsOf, chordOf, nextOf, withForms, withNumerals } from './lane.ts';
import type { LaneCell, Study } from './types.ts';

type Part = keyof Workspace;

const same = (a: Workspace, b: Workspace, parts: readonly Part[]): boolean =>
  parts.every((part) => a[part] === b[part]);

/** What each part of the study depends on. */
const HAND: readonly Part[] = ['position', 'form', 'instrument', 'span'];
const READING: readonly Part[] = [...HAND, 'show', 'spelling'];
const ALL: readonly Part[] = [...READING, 'progression', 'at', 'key'];

type Typed = Pick<Study, 'chart' | 'problems'>;
interface Keys {
  readonly keyIsEstimate: boolean;
  readonly key?: Key;
  readonly runnerUp?: Key;
}
type Lane = Pick<Study, 'cells' | 'nextOf'>;

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
  const stays = before !== undefined && same(before.of, workspace, HAND);
  const known = new Map<Chord, FormAtHand | undefined>();
  for (const cell of stays ? before.cells : []) {
    const chord = chordOf(cell.slot);
    if (chord) known.set(chord, cell.form);
  }
  return (chord: Chord): FormAtHand | undefined => {
    if (!known.has(chord)) known.set(chord, served(chord, workspace));
    return known.get(chord);
  };
}

function laneOf(workspace: Workspace, typed: Typed, keys: Keys, before: Study | undefined): Lane {
  const sameChart = before?.chart === typed.chart;
  const unmoved = sameChart && before.key === keys.key;
  if (unmoved && same(before.of, workspace, HAND)) return before;
  const cells = sameChart ? before.cells : cellsOf(typed.chart, before?.cells ?? []);
  const next = sameChart ? before.nextOf : nextOf(typed.chart, cells);
  const numbered = unmoved ? cells : withNumerals(cells, next, keys.key);
  return { cells: withForms(numbered, server(workspace, before)), nextOf: next };
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

function readingOf(workspace: Workspace, chord: Chord, before: Study | undefined): Reading {
  if (before?.reading && before.chord === chord && same(before.of, workspace, READING)) {
    return before.reading;
  }
  const { show: colours, spelling, form } = workspace;
  const query = { ...handOf(workspace), chord, colours, spelling };
  return readNeck(form === undefined ? query : { ...query, form });
}

const NOWHERE: readonly FormAtHand[] = [];

function placesOf(workspace: Workspace, chord: Chord, before: Study | undefined) {
  const known = before?.chord === chord && same(before.of, workspace, HAND);
  return known ? before.places : formsAlongNeck(chord, handOf(workspace));
}

interface Next {
  readonly nextChord?: Chord;
  readonly nextSymbol?: string;
  readonly nextForm?: FormAtHand;
}

function nextAt({ cells, nextOf: next }: Lane, cursor: number): Next {
  const cell = cells[next[cursor] ?? -1];
  const nextChord = cell && chordOf(cell.slot);
  if (!cell || !nextChord) return {};
  return { nextChord, nextSymbol: cell.symbol, ...(cell.form && { nextForm: cell.form }) };
}

/**
 * The study of a workspace. Given the study `before`, every part whose inputs did not change is
 * taken from it by reference; while the chord under the cursor cannot be read, the last good one
 * stays on the neck. If nothing that it depends on changed, `before` itself is returned.
 */
export function studyOf(workspace: Workspace, before?: Study): Study {
  if (before && same(before.of, workspace, ALL)) return before;
  const typed = typedOf(workspace, before);
  const keys = keysOf(workspace, typed.chart, before);
  const lane = laneOf(workspace, typed, keys, before);
  const cursor = cellAt(lane.cells, workspace.at);
  const standing = standingOf(lane.cells[cursor]);
  const { chord, symbol } = neckOf(lane, cursor, before);
  const reading = chord && readingOf(workspace, chord, before);
  const next = nextAt(lane, cursor);
  const { nextSymbol } = next;
  return {
    of: workspace,
    chart: typed.chart,
    problems: typed.problems,
    cells: lane.cells,
    nextOf: lane.nextOf,
    cursor,
    standing,
    symbol,
    ...(chord && { chord }),
    ...(reading && { reading }),
    ...next,
    ...keys,
    places: chord ? placesOf(workspace, chord, before) : NOWHERE,
    account: accountOf({
      standing,
      symbol,
      position: workspace.position,
      reading,
      next: nextSymbol === undefined ? undefined : { symbol: nextSymbol, form: next.nextForm },
    }),
  };
}
