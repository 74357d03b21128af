/** What a loop is while the chart is shorter than it. */
import type { LoopBars } from './setup.ts';

/**
 * What is looped of a chart with so many bars: those of the loop that it has, or none. The loop itself
 * stays as it was set, for the bars may come back; the same reference where the chart has them all.
 */
export function loopWithin(loop: LoopBars | undefined, bars: number): LoopBars | undefined {
  if (loop === undefined || loop.first > bars) return undefined;
  return loop.last <= bars ? loop : { ...loop, last: bars };
}

/** The bars of a loop that a chart with so many bars does not have. */
export function loopBeyond(loop: LoopBars | undefined, bars: number): LoopBars | undefined {
  if (loop === undefined || loop.last <= bars) return undefined;
  return { ...loop, first: Math.max(loop.first, bars + 1) };
}
