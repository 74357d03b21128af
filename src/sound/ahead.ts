/**
 * Scheduling further ahead than a change may take: a second is given away, so that a thread
 * which is kept from running does not make the music stumble, and what lies beyond the window is
 * taken back when something changes.
 */
import {
  advanceUntil,
  type Mark,
  type Timed,
  type Transport,
  WAKE_SECONDS,
  WINDOW_SECONDS,
} from './transport.ts';

/** How far ahead everything is given away, seconds. */
export const AHEAD_SECONDS = 1;

/** A transport as it was before it gave away a slice of time. */
interface Slice {
  readonly number: number;
  readonly before: Transport;
}

/** A transport and the slices that it may still take back, in order of time. */
export interface Ahead {
  readonly transport: Transport;
  readonly next: number;
  readonly slices: readonly Slice[];
}

/** What a slice gives away. */
export interface Given {
  readonly slice: number;
  readonly events: readonly Timed[];
  readonly marks: readonly Mark[];
}

/** Nothing given away yet. */
export const aheadOf = (transport: Transport): Ahead => ({ transport, next: 0, slices: [] });

function oneSlice(ahead: Ahead): { readonly ahead: Ahead; readonly given: Given } {
  const { transport, next, slices } = ahead;
  const step = advanceUntil(transport, transport.until + WAKE_SECONDS);
  return {
    ahead: {
      transport: step.transport,
      next: next + 1,
      slices: [...slices, { number: next, before: transport }],
    },
    given: { slice: next, events: step.events, marks: step.marks },
  };
}

/** Gives away everything up to a second after `now`, slice by slice. */
export function scheduleAhead(
  ahead: Ahead,
  now: number,
): { readonly ahead: Ahead; readonly given: readonly Given[] } {
  const given: Given[] = [];
  let at = ahead;
  while (!at.transport.done && at.transport.until < now + AHEAD_SECONDS) {
    const step = oneSlice(at);
    at = step.ahead;
    given.push(step.given);
  }
  const slices = at.slices.filter(({ before }) => before.until >= now);
  return { ahead: { ...at, slices }, given };
}

/**
 * Changes the transport so that it is heard within the window: slices that begin later are taken
 * back. `keep`: all slices with a lower number stay given. The same `ahead` if nothing changes.
 */
export function changeAhead(
  ahead: Ahead,
  now: number,
  change: (transport: Transport) => Transport,
): { readonly ahead: Ahead; readonly keep: number } {
  const index = ahead.slices.findIndex(
    ({ before }) => before.until > now + WINDOW_SECONDS - WAKE_SECONDS,
  );
  const slice = ahead.slices[index];
  const before = slice?.before ?? ahead.transport;
  const changed = change(before);
  if (changed === before) return { ahead, keep: ahead.next };
  const keep = slice?.number ?? ahead.next;
  const slices = index === -1 ? ahead.slices : ahead.slices.slice(0, index);
  return { ahead: { transport: changed, next: keep, slices }, keep };
}
