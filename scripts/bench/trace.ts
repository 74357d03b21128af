/** One complete event of a trace, times in microseconds. */
interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly args?: { readonly data?: { readonly type?: string } };
}

const isList = (value: unknown): value is { readonly traceEvents: readonly TraceEvent[] } =>
  typeof value === 'object' && value !== null && 'traceEvents' in value;

const eventsOf = (json: string): readonly TraceEvent[] => {
  const trace: unknown = JSON.parse(json);
  if (!isList(trace)) throw new Error('this is no trace');
  return trace.traceEvents;
};

const isKeydown = ({ name, args }: TraceEvent): boolean =>
  name === 'EventDispatch' && args?.data?.type === 'keydown';

/**
 * The work that each key press of a Chromium trace caused on the page's main thread, in
 * milliseconds: every task (script, style, layout, paint) from the one that handles the press to the
 * one before the next press.
 */
export const workPerKey = (json: string): readonly number[] => {
  const events = eventsOf(json);
  const keys = events.filter(isKeydown).sort((a, b) => a.ts - b.ts);
  const page = keys[0];
  const tasks = events
    .filter(({ name, pid, tid }) => name === 'RunTask' && pid === page?.pid && tid === page.tid)
    .sort((a, b) => a.ts - b.ts);
  const work = keys.map(() => 0);
  let key = -1;
  for (const { ts, dur = 0 } of tasks) {
    while ((keys[key + 1]?.ts ?? Number.POSITIVE_INFINITY) < ts + dur) key++;
    if (key >= 0) work[key] = (work[key] ?? 0) + dur / 1000;
  }
  return work;
};
