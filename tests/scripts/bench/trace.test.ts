import { describe, expect, it } from 'vitest';
import { percentile } from '../../../scripts/bench/bench.ts';
import { phasesOfKeys, workPerKey } from '../../../scripts/bench/trace.ts';

const event = (name: string, ts: number, dur: number) => ({ name, pid: 1, tid: 1, ts, dur });
const task = (ts: number, dur: number, tid = 1) => ({ ...event('RunTask', ts, dur), tid });
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
    expect(workPerKey(JSON.stringify({ traceEvents }))).toEqual([
      { passed: 3, worked: 3 },
      { passed: 0.75, worked: 0.75 },
    ]);
  });

  it('tells time on the processor from time that passed', () => {
    const traceEvents = [{ ...task(1000, 2000), tdur: 1500 }, key(1100)];
    expect(workPerKey(JSON.stringify({ traceEvents }))).toEqual([{ passed: 2, worked: 1.5 }]);
  });

  it('finds nothing where no key was pressed', () => {
    expect(workPerKey(JSON.stringify({ traceEvents: [task(0, 500)] }))).toEqual([]);
    expect(() => workPerKey('[]')).toThrow('no trace');
  });
});

describe('phasesOfKeys', () => {
  it('gives each press each phase without what is nested in it', () => {
    const traceEvents = [
      ...[event('Layout', 500, 300), task(1000, 9000), key(1100)],
      ...[event('FunctionCall', 2000, 4000), event('Layout', 3000, 1000)],
      ...[event('Layout', 7000, 2000), key(33_100), event('Paint', 34_000, 500)],
    ];
    const [first, second] = phasesOfKeys(JSON.stringify({ traceEvents }));
    expect(first?.get('script')).toBe(3);
    expect(first?.get('layout')).toBe(3);
    expect(first?.get('paint')).toBe(0);
    expect(second?.get('paint')).toBe(0.5);
    expect(second?.get('script')).toBe(0);
  });

  it('counts the time on the processor, and what a handler itself takes as script', () => {
    const traceEvents = [
      { ...key(1100), dur: 2000, tdur: 1500 },
      { ...event('Layout', 1200, 500) },
    ];
    const [only] = phasesOfKeys(JSON.stringify({ traceEvents }));
    expect(only?.get('script')).toBe(1);
    expect(only?.get('layout')).toBe(0.5);
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
