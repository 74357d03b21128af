import { describe, expect, it } from 'vitest';
import { percentile } from '../../../scripts/bench/bench.ts';
import { workPerKey } from '../../../scripts/bench/trace.ts';

const task = (ts: number, dur: number, tid = 1) => ({ name: 'RunTask', pid: 1, tid, ts, dur });
const key = (ts: number) => ({
  name: 'EventDispatch',
  pid: 1,
  tid: 1,
  ts,
  args: { data: { type: 'keydown' } },
});

describe('workPerKey', () => {
  it('adds up the tasks of the same thread from each press to the next', () => {
    const traceEvents = [
      task(0, 500),
      ...[task(1000, 2000), key(1100), task(4000, 1000), task(4000, 9000, 2)],
      ...[task(33_000, 500), key(33_100), task(34_000, 250)],
    ];
    expect(workPerKey(JSON.stringify({ traceEvents }))).toEqual([3, 0.75]);
  });

  it('finds nothing where no key was pressed', () => {
    expect(workPerKey(JSON.stringify({ traceEvents: [task(0, 500)] }))).toEqual([]);
    expect(() => workPerKey('[]')).toThrow('no trace');
  });
});

describe('percentile', () => {
  it.each([
    [0.5, 2],
    [0.95, 4],
    [0, 1],
    [1, 4],
  ])('at %d of 1 to 4 is %d', (share, value) => {
    expect(percentile([4, 2, 1, 3], share)).toBe(value);
  });
});
