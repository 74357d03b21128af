import type { Browser } from '@playwright/test';
import { Bench } from 'tinybench';

/** One measured figure. `limit` is the most it may be; absent = told for information. */
export interface Row {
  readonly name: string;
  readonly figure: number;
  readonly unit: string;
  readonly limit?: number;
}

/** The built program as it is served, and a browser to visit it with. */
export interface Visit {
  readonly url: string;
  readonly browser: Browser;
}

/** What every `*.bench.ts` exports as `measure`. */
export type Measure = (visit: Visit) => Promise<readonly Row[]> | readonly Row[];

/** Median milliseconds a call of each task, all measured in one run after a warm-up. */
export const timed = async <Name extends string>(
  tasks: Readonly<Record<Name, () => unknown>>,
): Promise<(name: Name) => number> => {
  const bench = new Bench({ time: 500, warmupTime: 200, throws: true });
  for (const name in tasks) bench.add(name, tasks[name]);
  await bench.run();
  return (name) => {
    const result = bench.getTask(name)?.result;
    return result?.state === 'completed' ? result.latency.p50 : Number.NaN;
  };
};

/** The value that the given share (0 to 1) of the numbers do not exceed. */
export const percentile = (numbers: readonly number[], share: number): number => {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(sorted.length * share) - 1)] ?? Number.NaN;
};
