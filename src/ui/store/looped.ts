/** Which bars are looped as the chart stands, and which the key that loops would take. */
import { type LoopBars, loopWithin } from '#sound';
import { barsOf, type Chart } from '#theory';
import type { AppState } from './types.ts';

/** The loop in force: of a loop that is set, the bars that the chart has. */
export const loopNow = ({ study, workspace }: AppState): LoopBars | undefined =>
  loopWithin(workspace.sound.transport.loop, barsOf(study.chart).length);

/** The written bars of the section that a bar stands in, from 1. */
export function sectionOf({ sections }: Chart, bar: number): LoopBars | undefined {
  let first = 1;
  for (const { bars } of sections) {
    const last = first + bars.length - 1;
    if (bars.length > 0 && bar <= last) return { first, last };
    first += bars.length;
  }
  return undefined;
}

const sectionHere = ({ study }: AppState): LoopBars | undefined =>
  sectionOf(study.chart, study.cells[study.cursor]?.bar ?? 1);

/** The loop that was let go by key, as long as the text is the same and the cursor in its section. */
export function loopBefore(state: AppState): LoopBars | undefined {
  const { letGo, study } = state;
  const section = sectionHere(state);
  if (letGo?.chart !== study.chart || section === undefined) return undefined;
  const { loop } = letGo;
  return loop.first <= section.last && loop.last >= section.first ? loop : undefined;
}

/** What the key loops where nothing is looped: what it let go before, or the section under the cursor. */
export const loopOffered = (state: AppState): LoopBars | undefined =>
  loopBefore(state) ?? sectionHere(state);
