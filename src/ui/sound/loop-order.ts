/** What follows what while a loop is set: the page that stands still agrees with what would be played. */
import { playedOf } from '#line';
import { spanOfLoop } from '#sound';
import { comingAt } from './coming.ts';
import { cellsOfSlots, loopOf, type Source, startWithin } from './piece.ts';

/** For every cell within the loop the next other chord, −1 = none; empty without a loop. */
export function loopOrder(source: Source): ReadonlyMap<number, number> {
  const { study, sound } = source;
  const { transport } = sound;
  const loop = loopOf(source);
  const played = playedOf(study.chart, loop);
  const span = loop && spanOfLoop(played.bars, loop);
  if (span === undefined) return new Map();
  const piece = { played, cellOf: cellsOfSlots(study) };
  return new Map(
    study.cells.flatMap(({ index }) => {
      const tick = startWithin(piece, index, span);
      if (tick === undefined) return [];
      return [[index, comingAt(piece, study, transport, { tick, span }).next ?? -1] as const];
    }),
  );
}
