/**
 * When everything is played. A timer only wakes it up; what is due within a window ahead is given a
 * moment on the audio clock, after C. Wilson, "A tale of two clocks". Every moment is computed from
 * where the present tempo began, so that nothing adds up. Pure: each step gives a new state.
 */
import { type Stretch, secondsPerTick } from '#line';
import { barTicks, type Metre, ticks } from '#theory';
import { countIn } from './backing.ts';
import { eventsOf, type Owned, type Performance } from './performance.ts';
import { makeLoop, spanOfLoop, tempoIn } from './settings.ts';
import type { TransportSettings } from './setup.ts';

/** Seconds between two wake-ups, and how far ahead is scheduled (values of the article). */
export const WAKE_SECONDS = 0.025;
export const WINDOW_SECONDS = 0.1;

/** From this moment of the audio clock on, time runs so: what is drawn reads these. */
export interface Mark {
  readonly seconds: number;
  /** Tick of the performance, or of the count-in. */
  readonly tick: number;
  readonly secondsPerTick: number;
  /** Rounds of the loop before this one; −1 while it is counted in. */
  readonly round: number;
  /** No further: the end of the round. */
  readonly until: number;
}

/** An event with its moment on the audio clock. */
export interface Timed extends Owned {
  readonly seconds: number;
  readonly secondsPerTick: number;
}

/** A passage that is played from a tick to another: the count-in, the first round, the next. */
interface Pass extends Stretch {
  readonly events: readonly Owned[];
  readonly round: number;
}

export interface Transport {
  readonly performance: Performance;
  readonly settings: TransportSettings;
  readonly pass: Pass;
  /** Index in the pass of the first event that is not scheduled yet. */
  readonly next: number;
  /** Where the present tempo began in the pass. */
  readonly anchor: { readonly tick: number; readonly seconds: number; readonly perTick: number };
  /** The rest of what begins when the count-in is over. */
  readonly begin: number;
  /** All events before this moment are scheduled. */
  readonly until: number;
  readonly marks: readonly Mark[];
  readonly done: boolean;
}

/** The stretch of the performance that is played round and round, or once. */
function stretchOf({ bars, length }: Performance, { loop }: TransportSettings): Stretch {
  const whole = { from: 0, to: length };
  return (loop && spanOfLoop(bars, loop)) ?? whole;
}

/** The first event for which it no longer holds that its tick comes before something. */
function indexAt(events: readonly Owned[], before: (tick: number) => boolean): number {
  let low = 0;
  let high = events.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (before(events[middle]?.event.start ?? 0)) low = middle + 1;
    else high = middle;
  }
  return low;
}

const secondsOf = ({ anchor }: Pick<Transport, 'anchor'>, tick: number): number =>
  anchor.seconds + (tick - anchor.tick) * anchor.perTick;

const tickOf = ({ anchor }: Pick<Transport, 'anchor'>, seconds: number): number =>
  anchor.tick + (seconds - anchor.seconds) / anchor.perTick;

const markOf = ({ anchor, pass }: Pick<Transport, 'anchor' | 'pass'>): Mark => ({
  seconds: anchor.seconds,
  tick: anchor.tick,
  secondsPerTick: anchor.perTick,
  round: pass.round,
  until: pass.to,
});

/** The transport as it enters a pass at a moment. */
function entered(transport: Transport, pass: Pass, seconds: number): Transport {
  const perTick = secondsPerTick(tempoIn(transport.settings, pass.round));
  const anchor = { tick: pass.from, seconds, perTick };
  const next = indexAt(pass.events, (tick) => tick < pass.from);
  const marks = [...transport.marks, markOf({ anchor, pass })];
  return { ...transport, pass, anchor, next, marks };
}

const barFrom = ({ bars }: Performance, from: number) =>
  bars.find(({ start, length }) => from < start + length) ?? bars[0];

function countPass(performance: Performance, count: number, from: number): Pass | undefined {
  const { bars, parts } = performance;
  const bar = barFrom(performance, from);
  if (count <= 0 || bar === undefined) return undefined;
  const events = eventsOf({
    bars,
    length: bar.length,
    parts: emptyBut(parts, countIn(bar.metre, count)),
  });
  return { events, from: 0, to: count * barTicks(bar.metre), round: -1 };
}

const emptyBut = (
  parts: Performance['parts'],
  count: Performance['parts']['count'],
): Performance['parts'] => ({
  ...parts,
  line: [],
  comp: [],
  bass: [],
  drums: [],
  click: [],
  count,
});

function firstPass(performance: Performance, settings: TransportSettings, from: number): Pass {
  const span = stretchOf(performance, settings);
  const inside = from >= span.from && from < span.to;
  return { events: eventsOf(performance), from: inside ? from : span.from, to: span.to, round: 0 };
}

/** The metre that is counted in before what begins at a tick; undefined when there is nothing. */
export const countMetre = (
  performance: Performance,
  settings: TransportSettings,
  from: number,
): Metre | undefined => barFrom(performance, firstPass(performance, settings, from).from)?.metre;

/**
 * A transport that begins at a moment of the audio clock (seconds), from a tick of the performance;
 * from the beginning of the loop if that lies outside it.
 */
export function startTransport(
  performance: Performance,
  settings: TransportSettings,
  from: number,
  seconds: number,
): Transport {
  const first = firstPass(performance, settings, from);
  const count = countPass(performance, settings.countInBars, first.from);
  const empty: Transport = {
    performance,
    settings,
    pass: first,
    next: 0,
    anchor: { tick: first.from, seconds, perTick: 1 },
    begin: first.from,
    until: seconds,
    marks: [],
    done: performance.length === 0,
  };
  return entered(empty, count ?? first, seconds);
}

/** What follows when a pass has come to its end. */
function following(transport: Transport): Transport {
  const { pass, performance, settings } = transport;
  const seconds = secondsOf(transport, pass.to);
  if (pass.round < 0)
    return entered(transport, firstPass(performance, settings, transport.begin), seconds);
  if (settings.once) return { ...transport, done: true };
  const again = { ...firstPass(performance, settings, -1), round: pass.round + 1 };
  return entered(transport, again, seconds);
}

/** Less than a hundredth of a sample. Moments that are one by intention may differ by rounding. */
const TOLERANCE = 1e-7;

const isBefore = (seconds: number, until: number): boolean => seconds < until - TOLERANCE;

/** How long before its tick an event may sound, seconds. */
const leadOf = ({ late = 0 }: Owned['event']): number => Math.max(0, -late);

/** A stroke may take its time, but no more than half of it: at a fast tempo it is a fast stroke. */
function lateOf(event: Owned['event'], perTick: number): number {
  const { late = 0 } = event;
  return event.kind === 'note' ? Math.min(late, 0.5 * event.length * perTick) : late;
}

/** What a step of the transport gives. */
export interface Advanced {
  readonly transport: Transport;
  readonly events: readonly Timed[];
  readonly marks: readonly Mark[];
}

const MOST_PASSES = 1000;

/** Events of the present pass up to a moment, and the index after them. */
function dueIn(transport: Transport, until: number): readonly Timed[] {
  const { pass, next, anchor } = transport;
  const due: Timed[] = [];
  for (let i = next; i < pass.events.length; i++) {
    const owned = pass.events[i];
    if (owned === undefined || owned.event.start >= pass.to) break;
    const seconds = secondsOf(transport, owned.event.start);
    if (!isBefore(seconds - leadOf(owned.event), until)) break;
    const late = lateOf(owned.event, anchor.perTick);
    due.push({ ...owned, seconds: seconds + late, secondsPerTick: anchor.perTick });
  }
  return due;
}

/** Schedules everything before a moment of the audio clock. */
export function advanceUntil(transport: Transport, until: number): Advanced {
  const events: Timed[] = [];
  let now = transport;
  for (let passes = 0; passes < MOST_PASSES && !now.done; passes++) {
    const due = dueIn(now, until);
    events.push(...due);
    if (due.length > 0) now = { ...now, next: now.next + due.length };
    if (!isBefore(secondsOf(now, now.pass.to), until)) break;
    now = following(now);
  }
  const { marks } = now;
  const moved = { ...now, marks: NO_MARKS, until: Math.max(now.until, until) };
  return { transport: moved, events, marks };
}

const NO_MARKS: readonly Mark[] = [];

/** Schedules what is due when it wakes up at `now`, seconds of the audio clock. */
export const advance = (transport: Transport, now: number): Advanced =>
  advanceUntil(transport, now + WINDOW_SECONDS);

/** The transport going on from the first moment that is not scheduled yet, with another tempo. */
function reanchored(transport: Transport): Transport {
  const { pass, settings, until } = transport;
  const seconds = Math.max(until, transport.anchor.seconds);
  const perTick = secondsPerTick(tempoIn(settings, pass.round));
  const anchor = { tick: tickOf(transport, seconds), seconds, perTick };
  return { ...transport, anchor, marks: [...transport.marks, markOf({ anchor, pass })] };
}

/**
 * Where a pass ends that is at a tick when its stretch changes: at once beyond the new end, with its
 * bar where the stretch lies behind the end of the chart.
 */
function endOfPass({ bars, length }: Performance, span: Stretch, tick: number): number {
  const bar = bars.find(({ start, length: ticks }) => tick < start + ticks);
  if (span.from >= length && tick < length && bar) return bar.start + bar.length;
  return Math.max(span.to, tick);
}

/** The transport playing something else, or another stretch of it, from the first moment not scheduled yet. */
function repassed(transport: Transport): Transport {
  const { performance, settings, pass, until } = transport;
  if (pass.round < 0) return transport;
  const tick = tickOf(transport, Math.max(until, transport.anchor.seconds));
  const span = stretchOf(performance, settings);
  const events = eventsOf(performance);
  const to = endOfPass(performance, span, tick);
  const changed = { ...pass, events, to };
  const next = indexAt(events, (start) => isBefore(secondsOf(transport, start), until));
  return { ...transport, pass: changed, next };
}

/** The transport with other settings, from the next note that is not scheduled yet. */
export function withSettings(transport: Transport, settings: TransportSettings): Transport {
  if (settings === transport.settings) return transport;
  const changed = { ...transport, settings };
  const tempo =
    tempoIn(settings, transport.pass.round) !== tempoIn(transport.settings, transport.pass.round);
  const loop = makeLoop(settings.loop) !== makeLoop(transport.settings.loop);
  const repass = loop ? repassed(changed) : changed;
  return tempo || loop ? reanchored(repass) : repass;
}

/** The transport with something else to play, from the next note that is not scheduled yet. */
export const withPerformance = (transport: Transport, performance: Performance): Transport =>
  performance === transport.performance
    ? transport
    : reanchored(repassed({ ...transport, performance }));

/** Where the music is. */
export interface Position {
  /** Of the performance, or of the count-in, with its fraction. */
  readonly tick: number;
  readonly round: number;
  readonly counting: boolean;
}

/** Where the music is at a moment of the audio clock, by its marks; undefined before the first. */
export function positionAt(marks: readonly Mark[], seconds: number): Position | undefined {
  const mark = marks.findLast((one) => one.seconds <= seconds);
  if (mark === undefined) return undefined;
  const tick = Math.min(mark.until, mark.tick + (seconds - mark.seconds) / mark.secondsPerTick);
  return { tick, round: mark.round, counting: mark.round < 0 };
}

/** Where a written bar is played for the first time; 0 for a bar that is not. */
export const tickOfBar = ({ bars }: Performance, written: number): number =>
  ticks(bars.find((bar) => bar.written === written)?.start ?? 0);
