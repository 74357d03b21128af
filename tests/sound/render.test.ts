import { describe, expect, it } from 'vitest';
import { playedOf, studyNotes } from '#line';
import { gripsOf, STANDARD_GUITAR } from '#neck';
import {
  advanceRender,
  BLOCK,
  beginRender,
  beginRun,
  CEILING,
  DEFAULT_MIX,
  DEFAULT_SETTINGS,
  FEELS,
  type Mix,
  makeBand,
  makePerformance,
  onlyParts,
  PARTS,
  type RenderQuery,
  renderBand,
  renderDrum,
  renderPerformance,
  schedule,
  scheduleRun,
  setMix,
  silence,
  tonesOf,
  withMaster,
  withPart,
} from '#sound';
import { chart, lineNote } from '../line/short.ts';
import { chord } from '../neck/support.ts';
import { cents, decibels, hertz, note, peakOf, pitchByLag, RATES, rmsOf, same } from './short.ts';

const RATE = 48_000;

const query = (text: string, more: Partial<RenderQuery> = {}): RenderQuery => ({
  performance: makePerformance({
    chart: chart(text),
    instrument: STANDARD_GUITAR,
    feel: 'straight',
  }),
  instrument: STANDARD_GUITAR,
  mix: DEFAULT_MIX,
  settings: { ...DEFAULT_SETTINGS, tempo: 240, countInBars: 0 },
  rate: RATE,
  ...more,
});

const alone = (part: (typeof PARTS)[number]): Mix => withMaster(onlyParts(DEFAULT_MIX, [part]), 1);

/** First samples of sounds: where the level passes a threshold after a silence. */
function onsetsOf(samples: Float32Array, silent: number): readonly number[] {
  const onsets: number[] = [];
  let quiet = silent;
  for (const [i, value] of samples.entries()) {
    if (Math.abs(value) > 1e-5) {
      if (quiet >= silent) onsets.push(i);
      quiet = 0;
    } else quiet++;
  }
  return onsets;
}

describe('onsets in rendered audio', () => {
  /** So many samples after its beginning a click passes the threshold. */
  const rise = (rate: number): number => onsetsOf(renderDrum('click', rate), 0)[0] ?? 0;

  it.each(RATES)('are less than a sample from the ideal grid, at %i Hz', (rate) => {
    for (const tempo of [97, 240]) {
      const settings = { ...DEFAULT_SETTINGS, tempo, countInBars: 0 };
      const [left] = renderPerformance(
        query('| C | 3/4 F |', { mix: alone('click'), rate, settings }),
      );
      const onsets = onsetsOf(left, rate / 20);
      expect(onsets).toHaveLength(7);
      for (const [i, onset] of onsets.entries())
        expect(Math.abs(onset - rise(rate) - (i * 60 * rate) / tempo)).toBeLessThan(1);
    }
  });

  it('do not drift in ten minutes', () => {
    const rate = 8000;
    const settings = {
      ...DEFAULT_SETTINGS,
      tempo: 133,
      countInBars: 0,
      loop: { first: 1, last: 1 },
    };
    const click = query('| N.C. |', { mix: alone('click'), rate, settings, rounds: 333 });
    const parts = { ...click.performance.parts, drums: [] };
    const [left] = renderPerformance({ ...click, performance: { ...click.performance, parts } });
    const onsets = onsetsOf(left, rate / 20);
    expect(onsets).toHaveLength(4 * 333);
    expect((onsets.at(-1) ?? 0) / rate).toBeGreaterThan(600);
    const errors = onsets.map((onset, i) => Math.abs(onset - rise(rate) - (i * 60 * rate) / 133));
    expect(Math.max(...errors)).toBeLessThan(1);
  });

  it('come after the count-in', () => {
    const settings = { ...DEFAULT_SETTINGS, tempo: 240, countInBars: 1 };
    const [left] = renderPerformance(query('| C |', { mix: alone('bass'), settings }));
    expect(onsetsOf(left, RATE)[0]).toBeGreaterThanOrEqual(RATE);
    expect(onsetsOf(left, RATE)[0]).toBeLessThan(RATE + 48);
  });
});

describe('what is rendered', () => {
  it('starts quietly: with the usual mix the whole is far below full scale', () => {
    for (const feel of FEELS) {
      const performance = makePerformance({
        chart: chart('| C | F |'),
        instrument: STANDARD_GUITAR,
        feel,
      });
      const [left, right] = renderPerformance(query('', { performance }));
      expect(decibels(Math.max(peakOf(left), peakOf(right)))).toBeLessThan(-8);
      expect(decibels(rmsOf(left.subarray(0, RATE)))).toBeGreaterThan(-45);
    }
  });

  it('is never above −1 dBFS, with everything as loud as it goes', () => {
    const full = PARTS.reduce(
      (mix, part) => withPart(mix, part, { level: 1, mute: false }),
      DEFAULT_MIX,
    );
    const grip = gripsOf(chord('C'), STANDARD_GUITAR)[1];
    const played = playedOf(chart('| C | C |'));
    const line = studyNotes('strum', played, () => (grip ? { grip } : undefined), STANDARD_GUITAR);
    const performance = makePerformance({
      chart: chart('| C | C |'),
      instrument: STANDARD_GUITAR,
      feel: 'sixteen',
      line: line.map((one) => ({ ...one, force: 1 })),
    });
    const parts = {
      ...performance.parts,
      comp: performance.parts.comp.map((event) => ({ ...event, force: 1 })),
      bass: performance.parts.bass.map((event) => ({ ...event, force: 1 })),
      drums: performance.parts.drums.map((event) => ({ ...event, force: 1 })),
    };
    for (const sound of ['clean', 'driven'] as const) {
      const mix = { ...withMaster(full, 1), sound };
      const sides = renderPerformance(query('', { performance: { ...performance, parts }, mix }));
      for (const side of sides) {
        expect(peakOf(side)).toBeLessThanOrEqual(Math.fround(CEILING));
        expect(decibels(peakOf(side))).toBeGreaterThan(-6);
        expect(side.every(Number.isFinite)).toBe(true);
      }
    }
  });

  it('is each part alone, or all together', () => {
    const loud = PARTS.filter((part) => {
      const [left] = renderPerformance(query('| C |', { mix: alone(part) }));
      return peakOf(left) > 0.01;
    });
    expect(loud).toEqual(['comp', 'bass', 'drums', 'click']);
  });

  it('sounds transposed, and a half step down, without another tempo', () => {
    const line = [lineNote(3, 7, 0, { length: lineNote(1, 0, 3840).start })];
    const performance = makePerformance({
      chart: chart('| N.C. |'),
      instrument: STANDARD_GUITAR,
      feel: 'straight',
      line,
    });
    for (const semitones of [-1, 0, 5]) {
      const settings = { ...DEFAULT_SETTINGS, tempo: 120, countInBars: 0, semitones };
      const [left] = renderPerformance(query('', { performance, mix: alone('line'), settings }));
      const wanted = hertz(62 + semitones);
      expect(Math.abs(cents(pitchByLag(left, RATE, 0.5, wanted), wanted))).toBeLessThan(1);
    }
  });

  it('has the pitch of the note at any tempo', () => {
    const performance = makePerformance({
      chart: chart('| N.C. |'),
      instrument: STANDARD_GUITAR,
      feel: 'straight',
      line: [lineNote(1, 5, 0, { letRing: true })],
    });
    for (const tempo of [20, 300]) {
      const settings = { ...DEFAULT_SETTINGS, tempo, countInBars: 0 };
      const [left] = renderPerformance(query('', { performance, mix: alone('line'), settings }));
      expect(Math.abs(cents(pitchByLag(left, RATE, 0.3, 440), 440))).toBeLessThan(1);
    }
  });

  it('is the same in one go and piece by piece, and every time', () => {
    const [left] = renderPerformance(query('| C | F |'));
    const rendering = beginRender(query('| C | F |'));
    const shares: number[] = [];
    while ((shares.at(-1) ?? 0) < 1) shares.push(advanceRender(rendering, 10_000));
    expect(shares.length).toBeGreaterThan(5);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(same(rendering.left, left)).toBe(true);
  });

  it('is nothing but silence for an empty chart', () => {
    expect(renderPerformance(query('')).map(peakOf)).toEqual([0, 0]);
  });
});

describe('the band', () => {
  const render = (band: ReturnType<typeof makeBand>, seconds: number): Float32Array => {
    const left = new Float32Array(Math.ceil((seconds * RATE) / BLOCK) * BLOCK);
    renderBand(band, left, new Float32Array(left.length));
    return left;
  };

  const begun = () => makeBand(tonesOf(STANDARD_GUITAR), withMaster(DEFAULT_MIX, 1), RATE);
  const event = {
    kind: 'note',
    frame: 0,
    part: 'line',
    string: 3,
    note: note(62, { length: 9 }),
  } as const;

  it('plays a note whose moment has passed at once', () => {
    const band = begun();
    render(band, 0.1);
    schedule(band, [event]);
    expect(peakOf(render(band, 0.01))).toBeGreaterThan(0.01);
  });

  it('leaves out what would be over by now: strokes made up for at once would be a bang', () => {
    const stroke = { kind: 'hit', frame: 0, part: 'drums', drum: 'snare', force: 1 } as const;
    const short = { ...event, note: note(62, { length: 0.2 }) };
    const late = (seconds: number, ...events: Parameters<typeof schedule>[1]): number => {
      const band = begun();
      render(band, seconds);
      schedule(band, events);
      return peakOf(render(band, 0.1));
    };
    expect(late(0.04, stroke)).toBeGreaterThan(0.01);
    expect(late(0.1, stroke)).toBe(0);
    expect(late(0.1, short)).toBeGreaterThan(0.01);
    expect(late(0.3, short)).toBe(0);
    expect(late(0.3, ...Array.from({ length: 20 }, () => stroke))).toBe(0);
  });

  it('plays a run that is given too late as much later, whole and with its distances', () => {
    const run = [event, { ...event, frame: 4000, string: 2, note: note(64) }];
    const begins = 960;
    const heard = (seconds: number) => {
      const band = begun();
      render(band, seconds);
      const late = beginRun(band, begins);
      scheduleRun(
        band,
        run.map((one) => ({ ...one, frame: one.frame + begins })),
      );
      const samples = render(band, 0.4);
      return { late, samples, from: samples.findIndex((x) => x !== 0) };
    };
    const onTime = heard(0);
    const tooLate = heard(0.05);
    expect([onTime.late, tooLate.late]).toEqual([0, Math.ceil(2400 / BLOCK) * BLOCK - begins]);
    expect(onTime.from - tooLate.from, 'at once').toBe(begins);
    const apart = Array.from({ length: RATE / 4 }, (_, i) =>
      Math.abs((tooLate.samples[tooLate.from + i] ?? 9) - (onTime.samples[onTime.from + i] ?? 9)),
    );
    expect(peakOf(onTime.samples)).toBeGreaterThan(0.05);
    expect(Math.max(...apart)).toBeLessThan(1e-6);
  });

  it('falls silent when a hand is laid on it, and forgets what was to come', () => {
    const band = begun();
    schedule(band, [event, { ...event, frame: RATE }]);
    expect(peakOf(render(band, 0.2))).toBeGreaterThan(0.05);
    silence(band);
    render(band, 0.7);
    expect(peakOf(render(band, 1))).toBeLessThan(1e-4);
  });

  it('changes levels without a click', () => {
    const band = begun();
    schedule(band, [event]);
    const before = render(band, 0.5);
    setMix(band, withPart(band.mix, 'line', { mute: true }));
    const after = render(band, 0.5);
    const jump = (samples: Float32Array): number =>
      peakOf(samples.slice(1).map((value, i) => value - (samples[i] ?? 0)));
    expect(jump(after)).toBeLessThanOrEqual(jump(before.slice(-4800)) * 1.1);
    expect(peakOf(after.subarray(-2400))).toBeLessThan(1e-3);
  });

  it('lets nothing through of a part that was muted while it was silent', () => {
    const band = begun();
    render(band, 0.1);
    setMix(band, withPart(band.mix, 'line', { mute: true }));
    render(band, 0.01);
    schedule(band, [event]);
    expect(peakOf(render(band, 0.3))).toBe(0);
  });

  it('stands in a room that answers from both sides and dies away, and counts without one', () => {
    const sides = (part: 'drums' | 'click', drum: 'stick' | 'click') => {
      const band = makeBand(tonesOf(STANDARD_GUITAR), alone(part), RATE);
      schedule(band, [{ kind: 'hit', frame: 0, part, drum, force: 1 }]);
      const left = new Float32Array(RATE);
      const right = new Float32Array(RATE);
      renderBand(band, left, right);
      return [left, right] as const;
    };
    const [left, right] = sides('drums', 'stick');
    const tail = (side: Float32Array, second: number): number =>
      decibels(peakOf(side.subarray(second * RATE, (second + 0.1) * RATE)) / peakOf(left));
    for (const side of [left, right]) {
      expect(tail(side, 0.15)).toBeGreaterThan(-50);
      expect(tail(side, 0.8)).toBeLessThan(-70);
    }
    expect(same(left.slice(0.15 * RATE), right.slice(0.15 * RATE))).toBe(false);
    expect(peakOf(sides('click', 'click')[0].subarray(0.15 * RATE))).toBe(0);
  });

  it('ignores strings that the instrument has not', () => {
    const band = begun();
    schedule(band, [{ ...event, string: 9 }]);
    expect(peakOf(render(band, 0.1))).toBe(0);
  });

  it('sounds driven when it is told to', () => {
    const clean = begun();
    const driven = begun();
    setMix(driven, { ...driven.mix, sound: 'driven' });
    schedule(clean, [event]);
    schedule(driven, [event]);
    const [a, b] = [render(clean, 1), render(driven, 1)];
    const evenness = (samples: Float32Array): number =>
      rmsOf(samples.subarray(RATE / 2)) / rmsOf(samples.subarray(0, RATE / 4));
    expect(evenness(b)).toBeGreaterThan(1.3 * evenness(a));
  });
});
