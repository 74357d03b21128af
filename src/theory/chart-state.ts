/** What a reader of charts carries along from word to word. */

import { COMMON_TIME } from './chart-time.ts';
import { isSilent, parseChord } from './chords.ts';
import type { Result, TextError } from './result.ts';
import type {
  Bar,
  Chart,
  ChartProblem,
  Chord,
  Harmony,
  Metre,
  Section,
  Slot,
  TextSpan,
} from './types.ts';

/** A bar that may still be told that a repeat opens or closes on it. */
export type DraftBar = { -readonly [Field in keyof Bar]: Bar[Field] };

export interface DraftSection {
  readonly name?: string;
  readonly bars: DraftBar[];
}

/** Where the line that is being read stands. */
export interface LinePlace {
  readonly number: number;
  readonly at: number;
}

export interface PlacedSign {
  readonly span: TextSpan;
  readonly line: LinePlace;
}

export interface RepeatState {
  /** The sign of a repeat that opens on the next bar. */
  opening: PlacedSign | undefined;
  /** The sign of the repeat that has been opened and not yet closed. */
  open: PlacedSign | undefined;
  /** The first bar that the next close without an opening goes back to. */
  from: number;
  /** The last round that an ending of this repeat named; 0 before the first. */
  lastRound: number;
  /** The ending that begins on the next bar. */
  ending: (PlacedSign & { readonly rounds: readonly number[] }) | undefined;
  /** A close or a double bar has ended the ending that was running. */
  endingOver: boolean;
  /** The bar after a double bar that ended an ending. */
  resume: number | undefined;
}

export interface Reading {
  readonly sections: DraftSection[];
  readonly bars: DraftBar[];
  readonly problems: ChartProblem[];
  readonly chords: Map<string, Result<Harmony, TextError>>;
  readonly repeat: RepeatState;
  /** Whether the text has a bar line anywhere. */
  readonly barred: boolean;
  metre: Metre;
  lastSlot: Slot | undefined;
  line: LinePlace;
}

const KNOWN_CHORDS = 4096;
const SILENT: Harmony = { kind: 'silent' };

export function startReading(barred: boolean): Reading {
  return {
    sections: [],
    bars: [],
    problems: [],
    chords: new Map(),
    repeat: {
      opening: undefined,
      open: undefined,
      from: 0,
      lastRound: 0,
      ending: undefined,
      endingOver: false,
      resume: undefined,
    },
    barred,
    metre: COMMON_TIME,
    lastSlot: undefined,
    line: { number: 1, at: 0 },
  };
}

export const chartOf = (reading: Reading): Chart => ({
  sections: reading.sections satisfies readonly Section[],
});

export interface Trouble {
  readonly code: ChartProblem['code'];
  readonly span: TextSpan;
  readonly found: string;
  readonly expected: readonly string[];
  readonly suggestion?: string;
}

/** Notes a problem, with the line and column of its place. */
export function report(reading: Reading, trouble: Trouble, line = reading.line): ChartProblem {
  const column = trouble.span.at - line.at + 1;
  const problem = { ...trouble, line: line.number, column };
  reading.problems.push(problem);
  return problem;
}

const harmonyOf = (chord: Chord): Harmony => ({ kind: 'chord', chord });

function readHarmony(symbol: string): Result<Harmony, TextError> {
  if (isSilent(symbol)) return { ok: true, value: SILENT };
  const chord = parseChord(symbol);
  return chord.ok ? { ok: true, value: harmonyOf(chord.value) } : chord;
}

/** What a symbol means; a symbol met before gives the same harmony (same reference). */
export function harmonyAt(reading: Reading, symbol: string): Result<Harmony, TextError> {
  const known = reading.chords.get(symbol);
  if (known !== undefined) return known;
  const harmony = readHarmony(symbol);
  if (reading.chords.size < KNOWN_CHORDS) reading.chords.set(symbol, harmony);
  return harmony;
}

export function startSection(reading: Reading, name: string): void {
  reading.sections.push({ name, bars: [] });
}

/** Puts a bar at the end of the section that is being read. */
export function addBar(reading: Reading, bar: DraftBar): void {
  if (reading.sections.length === 0) reading.sections.push({ bars: [] });
  reading.sections.at(-1)?.bars.push(bar);
  reading.bars.push(bar);
  reading.lastSlot = bar.slots.at(-1) ?? reading.lastSlot;
}
