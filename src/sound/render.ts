/** A performance rendered without a browser, in one go or piece by piece. */
import type { Instrument } from '#neck';
import { type Band, BLOCK, bandDelay, makeBand, renderBand, schedule } from './band.ts';
import type { Performance } from './performance.ts';
import { frameOf } from './render-string.ts';
import { DEFAULT_SETTINGS, type TransportSettings } from './setup.ts';
import { tonesOf } from './tones.ts';
import { advanceUntil, startTransport, type Timed } from './transport.ts';
import type { BandEvent, Mix } from './types.ts';

/** What a scheduled event is to the band: its first sample at `rate`, its length, its pitch as heard. */
export function bandEventOf(timed: Timed, rate: number, semitones: number): BandEvent {
  const { event, part, seconds } = timed;
  const frame = frameOf(seconds, rate);
  if (event.kind === 'hit')
    return { kind: 'hit', frame, part, drum: event.drum, force: event.force };
  const { kind: _kind, late: _late, string, ...note } = event;
  const length = event.length * timed.secondsPerTick;
  const sounding = { ...note, start: 0, length, midi: event.midi + semitones };
  return { kind: 'note', frame, part, string, note: sounding };
}

/** What is rendered. */
export interface RenderQuery {
  readonly performance: Performance;
  readonly instrument: Instrument;
  readonly mix: Mix;
  readonly settings?: TransportSettings;
  readonly rate: number;
  /** With a loop: so many rounds. Otherwise the performance is rendered once. */
  readonly rounds?: number;
}

/** A rendering on its way. `left` and `right` are filled up to `at`. */
export interface Rendering {
  readonly rate: number;
  readonly left: Float32Array<ArrayBuffer>;
  readonly right: Float32Array<ArrayBuffer>;
  readonly band: Band;
  /** Samples that are computed and thrown away: by so many the band is late. */
  readonly late: number;
  at: number;
}

/** Seconds for which the last sounds are allowed to die away. */
const AFTER_SECONDS = 2;

/** All events, and the second at which the last round ends. */
function everything({ performance, settings = DEFAULT_SETTINGS, rounds = 1 }: RenderQuery): {
  readonly events: readonly Timed[];
  readonly end: number;
} {
  let transport = startTransport(performance, settings, 0, 0);
  const events: Timed[] = [];
  let end = 0;
  const isOver = (): boolean => transport.done || transport.pass.round >= rounds;
  while (!isOver()) {
    const { anchor, pass } = transport;
    end = anchor.seconds + (pass.to - anchor.tick) * anchor.perTick;
    const step = advanceUntil(transport, end + 1e-6);
    events.push(...step.events.filter(({ seconds }) => pass.round + 1 < rounds || seconds < end));
    transport = step.transport;
  }
  return { events, end };
}

/** Begins a rendering. */
export function beginRender(query: RenderQuery): Rendering {
  const { rate, settings = DEFAULT_SETTINGS } = query;
  const { events, end } = everything(query);
  const frames = frameOf(end + AFTER_SECONDS, rate);
  const band = makeBand(tonesOf(query.instrument), query.mix, rate);
  schedule(
    band,
    events.map((event) => bandEventOf(event, rate, settings.semitones)),
  );
  return {
    rate,
    left: new Float32Array(frames),
    right: new Float32Array(frames),
    band,
    late: bandDelay(rate),
    at: 0,
  };
}

/** Goes on by so many samples (rounded up to whole blocks). Gives the share that is done, 0 to 1. */
export function advanceRender(rendering: Rendering, samples: number): number {
  const { left, right, band, late } = rendering;
  const l = new Float32Array(BLOCK);
  const r = new Float32Array(BLOCK);
  const until = Math.min(left.length, rendering.at + samples);
  while (rendering.at < until) {
    const from = band.frame - late;
    renderBand(band, l, r);
    const skip = Math.max(0, -from);
    const count = Math.min(BLOCK, left.length - from);
    if (count > skip) {
      left.set(l.subarray(skip, count), from + skip);
      right.set(r.subarray(skip, count), from + skip);
    }
    rendering.at = Math.max(0, Math.min(left.length, from + BLOCK));
  }
  return left.length === 0 ? 1 : rendering.at / left.length;
}

/** Both sides of a performance as it is heard with this mix, full scale ±1. */
export function renderPerformance(
  query: RenderQuery,
): readonly [left: Float32Array<ArrayBuffer>, right: Float32Array<ArrayBuffer>] {
  const rendering = beginRender(query);
  advanceRender(rendering, Number.POSITIVE_INFINITY);
  return [rendering.left, rendering.right];
}
