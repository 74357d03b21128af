/** What a player does with the chord on the neck: turning, comparing, bending, going on. */
import type { Comparison, Workspace } from '#lesson';
import {
  type Bend,
  bendsAtHand,
  compareReadings,
  connectionsBetween,
  formsOf,
  openMidis,
  type Reading,
  type ReadingQuery,
  reachedByBends,
  TURNS,
  turnChord,
  turnForm,
} from '#neck';
import { type Colour, coloursFor, makeChord, parseChord } from '#theory';
import { type Going, NO_MATERIAL, type Shown } from './lenses.ts';
import { plainOf, reread, viewOf } from './reread.ts';
import type { Compared, Study } from './types.ts';

/** Turns the form of a reading as the workspace asks; the one before if it is the same. */
export function shownOf(
  query: ReadingQuery,
  { turn: name }: Workspace,
  before: Study | undefined,
): Shown {
  const known = [before?.turned?.from, before?.reading, before?.nextReading];
  const from = reread(query, known);
  const turn = TURNS.find((one) => one.name === name);
  const last = before?.turned;
  if (turn === undefined) return { reading: from };
  const shown = plainOf(before?.reading);
  if (shown && last?.from === from && last.turn === turn) return { reading: shown, turned: last };
  const { chosen } = from;
  const chord = turnChord(query.chord, turn.suffix);
  const made = chosen?.grip && turnForm(query.chord, chosen.grip, turn.suffix, query.instrument);
  const form = chosen && { form: chosen.form.name, anchor: chosen.anchor };
  const reading = reread({ ...query, ...form, chord }, [from]);
  const turned = { turn, chord, symbol: makeChord(chord), from, moves: made?.moves ?? [] };
  return { reading, turned: { ...turned, playable: made !== undefined } };
}

function secondQuery(
  { form: _form, anchor: _anchor, ...query }: ReadingQuery,
  compare: Comparison,
  last: Compared | undefined,
): ReadingQuery | undefined {
  if (compare.kind === 'form') {
    const exists = formsOf(query.instrument).some(({ name }) => name === compare.form);
    return exists ? { ...query, form: compare.form } : undefined;
  }
  if (last?.comparison === compare) return { ...query, chord: last.second.chord };
  const chord = parseChord(compare.symbol);
  return chord.ok ? { ...query, chord: chord.value } : undefined;
}

/** Lays another reading beside the one that is shown. */
export function comparedOf(
  reading: Reading,
  query: ReadingQuery,
  { compare }: Workspace,
  before: Study | undefined,
): Compared | undefined {
  if (!compare) return undefined;
  const last = before?.compared;
  if (last?.comparison === compare && plainOf(before?.reading) === reading) return last;
  const asked = secondQuery({ ...query, chord: reading.chord }, compare, last);
  if (!asked) return undefined;
  const second = reread(asked, [last?.second]);
  const [name, what] =
    compare.kind === 'form'
      ? ([compare.form, 'shapes'] as const)
      : ([compare.symbol, 'tones'] as const);
  const places = compareReadings(reading, second, what);
  return { comparison: compare, name, second, what, places };
}

function bendsOf(
  reading: Reading,
  next: Reading | undefined,
  { instrument, show: colours, spelling, bendLimits: limits }: Workspace,
): readonly Bend[] {
  const { chord, position } = reading;
  const query = { chord, position, instrument, colours, spelling, limits };
  return bendsAtHand(next ? { ...query, next: next.chord } : query);
}

/** Only the reading and the limits decide what a bend reaches, not the chord that is next. */
function reachedOf(
  reading: Reading,
  bends: readonly Bend[],
  before: Study | undefined,
  sameLimits: boolean,
): Reading {
  const shown = before?.reading;
  if (shown && sameLimits && plainOf(shown) === reading) return shown;
  return viewOf(reachedByBends(reading, bends), reading);
}

/** The bends under the hand, what they reach, and what leads to the next chord. */
export function goingOn(
  reading: Reading,
  next: Reading | undefined,
  workspace: Workspace,
  before: Study | undefined,
): Going {
  const sameLimits = before?.of.bendLimits === workspace.bendLimits;
  const shown = before?.reading;
  if (shown && sameLimits && plainOf(shown) === reading && before.nextReading === next) {
    return { reading: shown, bends: before.bends, connections: before.connections };
  }
  const bends = bendsOf(reading, next, workspace);
  const opens = openMidis(workspace.instrument);
  const connections = next
    ? connectionsBetween(reading, next, bends, opens)
    : NO_MATERIAL.connections;
  return { reading: reachedOf(reading, bends, before, sameLimits), bends, connections };
}

/** The colours that are offered for the chord on the neck. */
export const coloursOf = (reading: Reading, before: Study | undefined): readonly Colour[] =>
  before?.reading?.chord === reading.chord ? before.colours : coloursFor(reading.chord);
