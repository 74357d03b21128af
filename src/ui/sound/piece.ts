/** What is played from a study: its chart in time, the planned forms, and what is studied over them. */

import type { SoundSetup } from '#lesson';
import {
  loopApart,
  type Plan,
  type Planned,
  type Played,
  playedOf,
  type Stretch,
  type StudyName,
  studyNotes,
} from '#line';
import {
  type LoopBars,
  loopWithin,
  makePerformance,
  type Performance,
  spanOfLoop,
  type TransportSettings,
} from '#sound';
import { barsOf, slotsOf, type Ticks } from '#theory';
import { type AppState, goingOn, readingAt, type Study } from '../store/index.ts';
import { type Sounded, soundedOf } from './marking.ts';

export interface Piece {
  readonly played: Played;
  readonly performance: Performance;
  /** For every written slot (index in `slotsOf`) the cell of the lane that it belongs to. */
  readonly cellOf: readonly number[];
  /** The tick at which each cell is played first. */
  readonly startOf: readonly Ticks[];
  /** What of the studied line sounds when. */
  readonly sounded: readonly Sounded[];
}

/** Slots that merely go on belong to the cell before them. */
export function cellsOfSlots({ chart, cells }: Study): readonly number[] {
  let cell = -1;
  return slotsOf(chart).map(({ at }) => {
    if (cells[cell + 1]?.at === at) cell += 1;
    return Math.max(0, cell);
  });
}

/** The best way from one cell into another. */
function connectionOf(study: Study, from: number, to: number): Planned['connection'] {
  const reading = readingAt(study, from);
  const next = readingAt(study, to);
  return reading && next && goingOn(reading, next, study.of, undefined).connections[0];
}

function planOf(study: Study, name: StudyName, cellOf: readonly number[]): Plan {
  const known = new Map<string, Planned>();
  const made = (from: number, to: number | undefined): Planned => {
    const grip = study.cells[from]?.form?.grip;
    const connects = name === 'connect' && to !== undefined;
    const connection = connects ? connectionOf(study, from, to) : undefined;
    return { ...(grip && { grip }), ...(connection && { connection }) };
  };
  return (index, next) => {
    const from = cellOf[index] ?? 0;
    const to = next === undefined ? undefined : cellOf[next];
    const key = `${from} ${to}`;
    const planned = known.get(key) ?? made(from, to);
    known.set(key, planned);
    return planned;
  };
}

function startsOf({ slots }: Played, cellOf: readonly number[], cells: number): readonly Ticks[] {
  const first = new Map<number, Ticks>();
  for (const { index, start } of slots) {
    const cell = cellOf[index] ?? 0;
    if (!first.has(cell)) first.set(cell, start);
  }
  return Array.from({ length: cells }, (_, cell) => first.get(cell) ?? (0 as Ticks));
}

/** What decides how it sounds. */
export interface Source {
  readonly study: Study;
  readonly sound: SoundSetup;
}

export const sourceOf = ({ study, workspace }: AppState): Source => ({
  study,
  sound: workspace.sound,
});

/** The bars that are looped: those of the loop that the chart has. */
export const loopOf = ({ study, sound }: Source): LoopBars | undefined =>
  loopWithin(sound.transport.loop, barsOf(study.chart).length);

/** Everything that is heard of a study. */
export function makePiece(source: Source): Piece {
  const { study, sound } = source;
  const { chart, cells, of } = study;
  const { instrument } = of;
  const loop = loopOf(source);
  const played = playedOf(chart, loop);
  const cellOf = cellsOfSlots(study);
  const line = studyNotes(sound.study, played, planOf(study, sound.study, cellOf), instrument);
  const gripAt = (index: number) => cells[cellOf[index] ?? 0]?.form?.grip;
  return {
    played,
    performance: makePerformance({
      ...{ chart, instrument, feel: sound.feel, gripAt, line },
      ...(loop && { loop }),
    }),
    cellOf,
    startOf: startsOf(played, cellOf, cells.length),
    sounded: soundedOf(line),
  };
}

export const sameBars = (a: LoopBars | undefined, b: LoopBars | undefined): boolean =>
  a?.first === b?.first && a?.last === b?.last;

/** Whether the loops of two sources of one chart are played from the same bars. */
function loopsAlike(source: Source, other: Source): boolean {
  const [a, b] = [loopOf(source), loopOf(other)];
  const { chart } = source.study;
  return sameBars(a, b) || sameBars(loopApart(chart, a), loopApart(chart, b));
}

/** Whether two sources sound alike: then what is played for one need not be made again for the other. */
export const soundsAlike = (a: Source, b: Source): boolean =>
  a.study.chart === b.study.chart &&
  a.study.cells === b.study.cells &&
  a.study.of.instrument === b.study.of.instrument &&
  a.study.of.bendLimits === b.study.of.bendLimits &&
  a.sound.study === b.sound.study &&
  a.sound.feel === b.sound.feel &&
  loopsAlike(a, b);

/** The settings with the bars of the loop that the chart has; none where it has none of them. */
export function settingsOf(source: Source): TransportSettings {
  const { transport } = source.sound;
  const loop = loopOf(source);
  if (loop === transport.loop) return transport;
  const { loop: _set, ...rest } = transport;
  return loop === undefined ? rest : { ...rest, loop };
}

/** The tick at which a cell is played first within a stretch; undefined where it is not. */
export function startWithin(
  { played, cellOf }: Pick<Piece, 'played' | 'cellOf'>,
  cell: number,
  { from, to }: Stretch,
): number | undefined {
  return played.slots.find(
    ({ index, start }) => cellOf[index] === cell && start >= from && start < to,
  )?.start;
}

/** The stretch that is looped, in ticks of the performance. */
export function loopSpan({ performance }: Piece, { loop }: TransportSettings): Stretch | undefined {
  return loop && spanOfLoop(performance.bars, loop);
}
