import { describe, expect, it } from 'vitest';
import { makeVoice, renderString, renderVoice, type StringNote, startNote } from '#sound';
import { midi } from '#theory';
import {
  cents,
  decibels,
  hertz,
  jumpOf,
  note,
  partialOf,
  peakOf,
  pitchBy,
  pitchByLag,
  played,
  RATES,
  rmsOf,
  same,
  TONES,
  tone,
} from './short.ts';

const RATE = 48_000;
/** D4 on string 3. */
const D = 62;
/** E4: open on string 1. */
const E = 64;

const at = (samples: Float32Array, from: number, to: number): Float32Array =>
  samples.subarray(Math.round(from * RATE), Math.round(to * RATE));

const level = (samples: Float32Array, from: number, to: number): number =>
  decibels(rmsOf(at(samples, from, to)));

/** Cents above D4 around a second, measured by pitchy. */
const above = (samples: Float32Array, second: number): number =>
  cents(pitchBy(samples, RATE, second, 2048), hertz(D));

describe('a plucked note', () => {
  it('begins at its sample, and not before', () => {
    const samples = played([note(D, { start: 0.5 })]);
    expect(peakOf(samples.subarray(0, 24_000))).toBe(0);
    expect(peakOf(samples.subarray(24_000, 24_048))).toBeGreaterThan(0.1);
  });

  it('is the same every time, and another with another seed', () => {
    const notes = [note(D), note(D + 2, { start: 0.5, rake: true })];
    expect(same(played(notes), played(notes))).toBe(true);
    expect(same(renderString(notes, tone(3), RATE, { seed: 2 }), played(notes))).toBe(false);
  });

  it('loses its upper partials first', () => {
    const samples = renderString([note(D, { length: 3 })], tone(3), RATE);
    const loss = (partial: number): number => {
      const early = partialOf(at(samples, 0.1, 0.4), RATE, partial * hertz(D));
      return decibels(partialOf(at(samples, 1.1, 1.4), RATE, partial * hertz(D)) / early);
    };
    expect(loss(1)).toBeLessThan(-3);
    expect(loss(6)).toBeLessThan(loss(1) - 6);
  });

  it('lacks the partials that have a node where it is picked', () => {
    const samples = renderString([note(55)], { ...tone(3), pickAt: 0.2 }, RATE);
    const strength = (partial: number): number =>
      decibels(partialOf(at(samples, 0.05, 0.55), RATE, partial * hertz(55)));
    expect(strength(5)).toBeLessThan(strength(4) - 15);
    expect(strength(5)).toBeLessThan(strength(6) - 15);
  });

  it('is louder and brighter the harder it is picked', () => {
    const [soft, hard] = [0.2, 1].map((force) => played([note(D, { force })]));
    if (soft === undefined || hard === undefined) throw new Error('two renderings');
    expect(level(hard, 0, 0.5)).toBeGreaterThan(level(soft, 0, 0.5) + 10);
    // Several, for one of them may have its node where the string is picked.
    const brightness = (samples: Float32Array): number =>
      [7, 8, 9, 10, 11]
        .map((partial) => partialOf(at(samples, 0.02, 0.2), RATE, partial * hertz(D)))
        .reduce((sum, one) => sum + one) / partialOf(at(samples, 0.02, 0.2), RATE, hertz(D));
    expect(brightness(hard)).toBeGreaterThan(1.5 * brightness(soft));
  });

  it('is duller at the same pitch and length the heavier its string, wound ones most', () => {
    const brightness = TONES.slice(0, 4).map((tone) => {
      // Picked at the same share of its length: else the picking place decides.
      const samples = renderString([note(E)], { ...tone, open: midi(E) }, RATE).slice(
        0.3 * RATE,
        0.8 * RATE,
      );
      return decibels(partialOf(samples, RATE, 6 * hertz(E)) / partialOf(samples, RATE, hertz(E)));
    });
    const steps = brightness.slice(1).map((one, i) => one - (brightness[i] ?? 0));
    expect(Math.max(...steps)).toBeLessThan(0);
    expect(Math.min(...steps)).toBe(steps[2]);
  });

  it('makes no sound with force 0', () => {
    expect(peakOf(played([note(D, { force: 0 })]))).toBe(0);
  });

  it('is damped at its end, unless it may ring', () => {
    const cut = played([note(D, { length: 0.5 })]);
    const rings = played([note(D, { length: 0.5, letRing: true })]);
    expect(level(cut, 0.65, 0.75)).toBeLessThan(level(cut, 0.4, 0.5) - 40);
    expect(level(rings, 0.65, 0.75)).toBeGreaterThan(level(rings, 0.4, 0.5) - 6);
  });

  it('is short and dull under the palm, and a knock when it is dead', () => {
    const open = played([note(D)]);
    const palm = played([note(D, { palmMute: true })]);
    const dead = played([note(D, { dead: true })]);
    expect(level(palm, 0.4, 0.6)).toBeLessThan(level(open, 0.4, 0.6) - 12);
    expect(level(palm, 0.02, 0.1)).toBeGreaterThan(level(open, 0.02, 0.1) - 12);
    expect(level(dead, 0.1, 0.2)).toBeLessThan(level(open, 0.1, 0.2) - 40);
  });
});

describe('a new note on the same string', () => {
  it('takes the place of the old one', () => {
    const samples = played([note(D, { letRing: true }), note(D + 7, { start: 0.5 })]);
    const old = partialOf(at(samples, 0.6, 0.9), RATE, hertz(D));
    const now = partialOf(at(samples, 0.6, 0.9), RATE, hertz(D + 7));
    expect(decibels(old / now)).toBeLessThan(-40);
  });

  it.each<[string, Partial<StringNote>]>([
    ['picked', {}],
    ['hammered on', { attack: 'hammer' }],
    ['pulled off', { midi: D - 2, attack: 'pull' }],
    ['reached by a slide', { attack: 'slide' }],
    ['an octave lower', { midi: D - 12, attack: 'pull' }],
    ['dead', { dead: true }],
  ])('does not click when it is %s', (_, more) => {
    const first = note(D, { force: 1 });
    const alone = played([first]);
    // A pick makes an edge of its own; nothing may be sharper than a pluck from rest.
    const edge = jumpOf(alone, RATE, 0, 0.05);
    for (const start of [0.2501, 0.2513, 0.2527]) {
      const samples = played([first, note(D + 2, { ...more, start, force: 0.05 })]);
      const calm = jumpOf(alone, RATE, start - 0.01, start);
      expect(jumpOf(samples, RATE, start - 0.01, start + 0.05)).toBeLessThan(
        1.5 * calm + 0.1 * edge,
      );
    }
  });

  it('does not click when a note is damped', () => {
    const samples = played([note(D, { length: 0.3, force: 1 })]);
    const calm = jumpOf(samples, RATE, 0.27, 0.3);
    expect(jumpOf(samples, RATE, 0.29, 0.4)).toBeLessThan(1.2 * calm);
  });

  it.each(['hammer', 'pull', 'slide'] as const)('sounds at its own pitch after a %s', (attack) => {
    const samples = played([note(D), note(D + 2, { start: 0.5, attack })]);
    const pitch = pitchByLag(samples, RATE, 0.6, hertz(D + 2));
    expect(Math.abs(cents(pitch, hertz(D + 2)))).toBeLessThan(1);
  });

  it('is softer hammered on than picked', () => {
    const hammered = played([note(D, { attack: 'hammer' })]);
    expect(level(hammered, 0, 0.3)).toBeLessThan(level(played([note(D)]), 0, 0.3) - 5);
  });
});

describe('the course of a pitch', () => {
  const bend = (...points: readonly (readonly [number, number])[]): Partial<StringNote> => ({
    bend: points.map(([share, semitones]) => ({ at: share, semitones })),
  });

  it.each(RATES)('arrives within 3 cents of what is bent to, at %i Hz', (rate) => {
    for (const steps of [0.5, 1, 2, 3, 4])
      for (const string of [1, 2, 3, 6])
        for (const fret of [3, 12, 17]) {
          const midi = tone(string).open + fret;
          const bent = note(midi, bend([0, 0], [0.2, 0], [0.4, steps], [1, steps]));
          const samples = renderString([bent], tone(string), rate);
          const pitch = pitchByLag(samples, rate, 0.5, hertz(midi + steps));
          expect(Math.abs(cents(pitch, hertz(midi + steps)))).toBeLessThan(3);
        }
  });

  it('is where it was before a bend rises, and between while it does', () => {
    const samples = played([note(D, { ...bend([0, 0], [0.4, 0], [0.8, 2], [1, 2]), length: 2 })]);
    expect(above(samples, 0.4)).toBeCloseTo(0, 0);
    expect(above(samples, 1.2)).toBeGreaterThan(40);
    expect(above(samples, 1.2)).toBeLessThan(160);
  });

  it('begins above with a pre-bend, and comes back when it is let go', () => {
    const samples = played([note(D, { ...bend([0, 2], [0.4, 2], [0.6, 0], [1, 0]), length: 2 })]);
    expect(Math.abs(above(samples, 0.3) - 200)).toBeLessThan(3);
    expect(Math.abs(above(samples, 1.5))).toBeLessThan(3);
  });

  it('swings above the note, about five times a second, with vibrato', () => {
    const samples = played([note(D, { vibrato: 0.5, length: 2 })]);
    const course = Array.from({ length: 100 }, (_, i) => above(samples, 0.5 + i * 0.01));
    expect(Math.max(...course)).toBeGreaterThan(40);
    expect(Math.max(...course)).toBeLessThan(53);
    expect(Math.min(...course)).toBeGreaterThan(-3);
    const ups = course.filter((value, i) => i > 0 && (course[i - 1] ?? 0) < 25 && value >= 25);
    expect(ups.length).toBeGreaterThanOrEqual(4);
    expect(ups.length).toBeLessThanOrEqual(6);
  });

  it('slides in from below, away at the end, and on to the next note', () => {
    const into = played([note(D, { slideIn: -2 })]);
    expect(Math.abs(above(into, 0.3))).toBeLessThan(1);
    const early = cents(pitchBy(into, RATE, 0.005, 1024), hertz(D));
    expect(early).toBeLessThan(-60);
    const away = played([note(D, { slideOut: 3, letRing: true })]);
    expect(Math.abs(above(away, 1.05) - 300)).toBeLessThan(3);
    const on = played([note(D, { slideOn: 4 }), note(D + 4, { start: 1, attack: 'slide' })]);
    expect(Math.abs(above(on, 1.01) - 400)).toBeLessThan(6);
  });
});

describe('a string, block by block', () => {
  it('sounds the same as in one go', () => {
    const notes = [
      note(D, { slideIn: -2 }),
      note(D + 3, { start: 0.3, attack: 'hammer', vibrato: 0.3 }),
    ];
    const whole = played(notes);
    const voice = makeVoice(tone(3), RATE, 1);
    const out = new Float32Array(whole.length);
    const starts = notes.map(({ start }) => Math.round(start * RATE));
    for (let from = 0; from < out.length; ) {
      const index = starts.indexOf(from);
      const first = notes[index];
      if (first !== undefined) startNote(voice, first);
      const soon = starts.find((start) => start > from) ?? out.length;
      const to = Math.min(out.length, soon, from + 97);
      renderVoice(voice, out, from, to);
      from = to;
    }
    expect(same(out, whole)).toBe(true);
  });

  it('costs nothing once it is silent', () => {
    const voice = makeVoice(tone(3), RATE, 1);
    startNote(voice, note(D, { length: 0.1 }));
    expect(voice.sounding).toBe(true);
    renderVoice(voice, new Float32Array(RATE), 0, RATE);
    expect(voice.sounding).toBe(false);
  });
});
