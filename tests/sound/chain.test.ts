import { describe, expect, it } from 'vitest';
import {
  AMPS,
  amplify,
  CEILING,
  DRUMS,
  driveInPlace,
  limiterDelay,
  limitInPlace,
  makeAmp,
  makeDrive,
  makeLimiter,
  renderDrum,
} from '#sound';
import { decibels, partialOf, peakOf, RATES, rmsOf } from './short.ts';

const RATE = 48_000;

const sine = (frequency: number, level: number, count = RATE): Float32Array =>
  Float32Array.from(
    { length: count },
    (_, i) => level * Math.sin((2 * Math.PI * frequency * i) / RATE),
  );

describe('the drive', () => {
  /** Whole numbers of Hz, so that over a second every partial and every alias is a whole number too. */
  const driven = (frequency: number): Float32Array => {
    const samples = sine(frequency, 1, 2 * RATE);
    driveInPlace(makeDrive(9), samples, samples.length);
    return samples.subarray(RATE);
  };

  it.each([997, 1777, 2741, 3989])('keeps aliases of %i Hz below −60 dB', (frequency) => {
    const samples = driven(frequency);
    const main = partialOf(samples, RATE, frequency);
    const folded = Array.from({ length: 120 }, (_, i) => (i + 2) * frequency)
      .filter((partial) => partial > RATE / 2)
      .map((partial) => Math.abs(((partial + RATE / 2) % RATE) - RATE / 2))
      // Where an alias falls on a partial that belongs there, it cannot be told from it.
      .filter((hertz) => hertz > 20 && hertz < 20_000 && hertz % frequency > 3);
    expect(folded.length).toBeGreaterThan(50);
    const loudest = Math.max(...folded.map((hertz) => partialOf(samples, RATE, hertz)));
    expect(decibels(loudest / main)).toBeLessThan(-60);
  });

  it('adds partials, even ones too, and stays within full scale', () => {
    const samples = driven(500);
    const main = partialOf(samples, RATE, 500);
    expect(decibels(partialOf(samples, RATE, 1500) / main)).toBeGreaterThan(-20);
    expect(decibels(partialOf(samples, RATE, 1000) / main)).toBeGreaterThan(-50);
    expect(peakOf(samples)).toBeLessThan(1.3);
  });

  it('without oversampling would fold back more: the check can fail', () => {
    const samples = sine(2741, 1).map((x) => Math.tanh(9 * x));
    const main = partialOf(samples, RATE, 2741);
    const folded = Math.abs(RATE - 11 * 2741);
    expect(decibels(partialOf(samples, RATE, folded) / main)).toBeGreaterThan(-60);
  });
});

describe('an amplifier', () => {
  const through = (name: (typeof AMPS)[number], frequency: number, level = 0.01): number => {
    const samples = sine(frequency, level);
    amplify(makeAmp(name, RATE), samples, samples.length);
    return decibels(partialOf(samples.subarray(RATE / 2), RATE, frequency) / level);
  };

  it.each(AMPS)('%s lets through what an instrument sounds, and little above', (name) => {
    expect(through(name, 12_000)).toBeLessThan(through(name, 200) - 20);
    expect(through(name, 15)).toBeLessThan(through(name, 200) - 10);
  });

  it('is linear when it is clean, and not when it is driven', () => {
    expect(through('clean', 400, 1)).toBeCloseTo(through('clean', 400, 0.01), 1);
    expect(through('driven', 400, 1)).toBeLessThan(through('driven', 400, 0.01) - 6);
  });

  it('is silent when nothing goes in', () => {
    for (const name of AMPS) {
      const samples = new Float32Array(1000);
      amplify(makeAmp(name, RATE), samples, 1000);
      expect(peakOf(samples)).toBe(0);
    }
  });
});

describe('the limiter', () => {
  const limited = (make: (i: number) => number, rate = RATE): Float32Array => {
    const left = Float32Array.from({ length: rate }, (_, i) => make(i));
    limitInPlace(makeLimiter(rate), left, new Float32Array(rate), rate);
    return left;
  };

  it.each([
    ['a loud tone', (i: number) => 8 * Math.sin(i / 20)],
    ['one sample', (i: number) => (i === 5000 ? 50 : 0.1)],
    ['noise', (i: number) => 4 * Math.sin(i * i * 12.9898)],
    ['a rising tone', (i: number) => (i / 4000) * Math.sin(i / 7)],
  ])('never lets %s above −1 dBFS', (_, make) => {
    for (const rate of RATES) {
      const samples = limited(make, rate);
      expect(peakOf(samples)).toBeLessThanOrEqual(Math.fround(CEILING));
      expect(decibels(peakOf(samples))).toBeLessThanOrEqual(-0.999);
      expect(peakOf(samples)).toBeGreaterThan(0.05);
    }
  });

  it('leaves what is quiet as it is, a little later', () => {
    const samples = limited((i) => 0.5 * Math.sin(i / 20));
    const late = limiterDelay(RATE);
    expect(samples[late + 1000]).toBeCloseTo(0.5 * Math.sin(50), 6);
  });

  it('turns down rather than clips: a loud tone stays nearly a sine', () => {
    const samples = limited((i) => 3 * Math.sin((2 * Math.PI * 500 * i) / RATE)).subarray(RATE / 2);
    expect(decibels(partialOf(samples, RATE, 1500) / partialOf(samples, RATE, 500))).toBeLessThan(
      -60,
    );
  });

  it('recovers after a peak', () => {
    const samples = limited((i) => (i < 1000 ? 8 : 0.1) * Math.sin(i / 20));
    expect(peakOf(samples.subarray(RATE - 2000))).toBeCloseTo(0.1, 2);
  });
});

describe('drums', () => {
  it.each(DRUMS)('%s begins at once, dies away and stays within full scale', (name) => {
    const samples = renderDrum(name, RATE);
    expect(peakOf(samples)).toBeLessThan(1.3);
    expect(peakOf(samples.subarray(0, 240))).toBeGreaterThan(0.05);
    const end = samples.subarray(Math.round(0.9 * samples.length));
    expect(rmsOf(end)).toBeLessThan(0.05 * rmsOf(samples));
    expect(Math.abs(samples.at(-1) ?? 1)).toBe(0);
  });

  it('are not the same noise at every stroke, but the same every time', () => {
    expect(renderDrum('snare', RATE, 1)).not.toEqual(renderDrum('snare', RATE, 0));
    expect(renderDrum('snare', RATE, 1)).toEqual(renderDrum('snare', RATE, 1));
  });
});
