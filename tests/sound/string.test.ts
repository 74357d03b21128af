import { describe, expect, it } from 'vitest';
import { BASS_TONES, loopFor, pitchOf, renderString, toneAt } from '#sound';
import { cents, hertz, note, pitchBy, pitchByLag, RATES, TONES, tone } from './short.ts';

const FRETS = Array.from({ length: 28 }, (_, fret) => fret);

describe('the loop of a string', () => {
  it.each(RATES)('is exact at every fret of every string at %i Hz', (rate) => {
    const errors = [...TONES, ...BASS_TONES].flatMap((one) =>
      FRETS.map((fret) => {
        const midi = one.open + fret;
        const loop = loopFor(hertz(midi), rate, toneAt(one, { midi }));
        return Math.abs(cents(pitchOf(loop, rate, hertz(midi)), hertz(midi)));
      }),
    );
    expect(errors).toHaveLength(280);
    expect(Math.max(...errors)).toBeLessThan(0.01);
  });

  it('would be out of tune with a whole number of samples: the check can fail', () => {
    const loop = loopFor(hertz(76), 44_100, toneAt(tone(1), { midi: 76 }));
    const whole = { ...loop, delay: Math.round(loop.delay) };
    expect(Math.abs(cents(pitchOf(whole, 44_100, hertz(76)), hertz(76)))).toBeGreaterThan(1);
  });

  it('loses at every round trip, whatever the tone asks for', () => {
    for (const sustain of [0.01, 1, 1e9])
      for (const highs of [0.001, 1, 1e9]) {
        const { gain, pole } = loopFor(82.4, 48_000, { open: 40, pickAt: 0.1, sustain, highs });
        expect(gain).toBeLessThan(1);
        expect(gain).toBeGreaterThan(0);
        expect(pole).toBeGreaterThanOrEqual(0);
        expect(pole).toBeLessThan(1);
      }
  });

  it('has room for any pitch that an instrument may have', () => {
    const loop = loopFor(hertz(123), 44_100, { open: 96, pickAt: 0.1, sustain: 4, highs: 1 });
    expect(loop.delay).toBeGreaterThanOrEqual(1);
  });
});

describe('a rendered string', () => {
  const frets = FRETS.filter((fret) => fret <= 22);

  it.each(RATES)('is within a cent at every fret of every string at %i Hz', (rate) => {
    const errors = TONES.flatMap((one) =>
      frets.map((fret) => {
        const midi = one.open + fret;
        const samples = renderString([note(midi)], one, rate, { seconds: 0.6 });
        const byLag = cents(pitchByLag(samples, rate, 0.2, hertz(midi)), hertz(midi));
        const byPitchy = cents(pitchBy(samples, rate, 0.2, 8192), hertz(midi));
        return Math.max(Math.abs(byLag), Math.abs(byPitchy));
      }),
    );
    expect(errors).toHaveLength(138);
    expect(Math.max(...errors)).toBeLessThan(1);
  });
});
