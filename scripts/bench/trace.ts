/** One complete event of a trace, times in microseconds. */
interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  /** Time on the processor; less than `dur` when the thread had to wait. */
  readonly tdur?: number;
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

/** The events of the thread that handled the first key press, the longest of each moment first. */
const pageEvents = (events: readonly TraceEvent[]): readonly TraceEvent[] => {
  const page = events.find(isKeydown);
  return events
    .filter(({ pid, tid }) => pid === page?.pid && tid === page.tid)
    .sort((a, b) => a.ts - b.ts || (b.dur ?? 0) - (a.dur ?? 0));
};

/** What a key press cost the page's main thread, in milliseconds. */
export interface Work {
  /** From the beginning of each task to its end. */
  readonly passed: number;
  /** On the processor. */
  readonly worked: number;
}

/**
 * The work that each key press of a Chromium trace caused on the page's main thread: every task
 * (script, style, layout, paint) from the one that handles the press to the one before the next.
 */
export const workPerKey = (json: string): readonly Work[] => {
  const events = pageEvents(eventsOf(json));
  const keys = events.filter(isKeydown).map(({ ts }) => ts);
  const work = keys.map(() => ({ passed: 0, worked: 0 }));
  let key = -1;
  for (const { name, ts, dur = 0, tdur = dur } of events) {
    if (name !== 'RunTask') continue;
    while ((keys[key + 1] ?? Number.POSITIVE_INFINITY) < ts + dur) key++;
    const caused = work[key];
    if (caused === undefined) continue;
    caused.passed += dur / 1000;
    caused.worked += tdur / 1000;
  }
  return work;
};

/** The phases of a frame, by the names that Chromium gives to their events in a trace. */
const PHASES: Readonly<Record<string, string>> = {
  EventDispatch: 'script',
  FunctionCall: 'script',
  TimerFire: 'script',
  FireAnimationFrame: 'script',
  UpdateLayoutTree: 'style',
  Layout: 'layout',
  PrePaint: 'pre-paint',
  HitTest: 'hit test',
  Paint: 'paint',
  Layerize: 'layers',
  Commit: 'commit',
};

/** Milliseconds on the processor by phase. */
export type Phases = ReadonlyMap<string, number>;

const endOf = ({ ts, dur = 0 }: TraceEvent): number => ts + dur;
const workedOf = ({ dur = 0, tdur = dur }: TraceEvent): number => tdur;

/** What each key press spent in each phase, without what was nested in it. */
export const phasesOfKeys = (json: string): readonly Phases[] => {
  const events = pageEvents(eventsOf(json));
  const first = events.find(isKeydown)?.ts ?? 0;
  const spent: Map<string, number>[] = [];
  const add = (event: TraceEvent | undefined, time: number) => {
    const phases = spent[spent.length - 1];
    const phase = event && PHASES[event.name];
    if (phases && phase) phases.set(phase, (phases.get(phase) ?? 0) + time / 1000);
  };
  const open: TraceEvent[] = [];
  for (const event of events.filter(({ ts }) => ts >= first)) {
    if (isKeydown(event)) spent.push(new Map(Object.values(PHASES).map((phase) => [phase, 0])));
    while (open.length > 0 && endOf(open[open.length - 1] ?? event) <= event.ts) open.pop();
    add(event, workedOf(event));
    add(open[open.length - 1], -workedOf(event));
    open.push(event);
  }
  return spent;
};
