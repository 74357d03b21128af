import { beforeAll, describe, expect, it } from 'vitest';
import { amplify, makeAmp, renderString } from '#sound';
import { type Character, characterOf, fromOnset, recordedNotes } from './recorded.ts';
import { hertz, note, TONES, tone } from './short.ts';

const RATE = 44_100;
const SECONDS = 3;
const LOWEST = 40;
const HIGHEST = 76;

type Measure = Exclude<keyof Character, 'midi'>;

const MEASURES: readonly Measure[] = ['bright', 'brightLater', 'fall', 'fallMiddle', 'fallHigh'];

/** The octaves of a guitar's first twelve frets, MIDI. */
const REGISTERS = [
  { name: 'E2 to D♯3', from: 40, to: 51 },
  { name: 'E3 to D♯4', from: 52, to: 63 },
  { name: 'E4 to E5', from: 64, to: 76 },
] as const;
type Register = (typeof REGISTERS)[number];

/** Every second semitone that a guitar has in its first twelve frets. */
const MIDIS = Array.from({ length: (HIGHEST - LOWEST) / 2 + 1 }, (_, i) => LOWEST + 2 * i);

/** What the loudspeaker gives of a note picked on the highest string that has it, played clean. */
function heard(midi: number): Float32Array {
  const string = 1 + TONES.findIndex(({ open }) => open <= midi);
  const samples = renderString([note(midi, { length: SECONDS })], tone(string), RATE);
  amplify(makeAmp('clean', RATE), samples, samples.length);
  return samples;
}

/** The loop as it was first published: noise that goes round and is averaged with what came before. */
function bareLoop(midi: number): Float32Array {
  // The minimal standard generator of S. Park and K. Miller (Communications of the ACM 31(10), 1988).
  let noise = midi;
  const next = (): number => {
    noise = (16_807 * noise) % 2_147_483_647;
    return noise / 1_073_741_823.5 - 1;
  };
  const period = Math.round(RATE / hertz(midi) - 0.5);
  const samples = new Float32Array(SECONDS * RATE);
  for (let i = 0; i < samples.length; i++) {
    const before = (samples[i - period] ?? 0) + (samples[i - period - 1] ?? 0);
    samples[i] = i <= period ? next() : before / 2;
  }
  return samples;
}

const charactersOf = (sound: (midi: number) => Float32Array): readonly Character[] =>
  MIDIS.map((midi) => characterOf({ midi, rate: RATE, samples: fromOnset(sound(midi)) }));

const sorted = (all: readonly Character[], { from, to }: Register, measure: Measure) =>
  all
    .filter(({ midi }) => midi >= from && midi <= to)
    .map((character) => character[measure])
    .sort((a, b) => a - b);

/** The value below which a share of sorted values lies. */
const quantile = (values: readonly number[], share: number): number =>
  values[Math.round(share * (values.length - 1))] ?? Number.NaN;

describe('our string, beside guitars that were recorded', () => {
  let recorded: readonly Character[] = [];
  beforeAll(async () => {
    recorded = (await recordedNotes(LOWEST, HIGHEST)).map(characterOf);
  });

  /** Where the median of a register is outside what eight in ten of the recorded notes do. */
  const outside = (all: readonly Character[], register: Register): readonly string[] =>
    MEASURES.filter((measure) => {
      const theirs = sorted(recorded, register, measure);
      const middle = quantile(sorted(all, register, measure), 0.5);
      return !(middle >= quantile(theirs, 0.1) && middle <= quantile(theirs, 0.9));
    });

  it('is held against enough of them', () => {
    for (const register of REGISTERS)
      expect(sorted(recorded, register, 'fall').length).toBeGreaterThanOrEqual(15);
  });

  it('is as bright, and loses its lower, middle and upper partials as fast', () => {
    const ours = charactersOf(heard);
    for (const register of REGISTERS) expect(outside(ours, register), register.name).toEqual([]);
  });

  it('could fail: the bare loop of 1983 rings too long below and dies too soon above', () => {
    const bare = charactersOf(bareLoop);
    const [low, , high] = REGISTERS;
    expect(outside(bare, low)).toEqual(MEASURES);
    expect(quantile(sorted(bare, low, 'fall'), 0.5)).toBeLessThan(1);
    expect(outside(bare, high)).toContain('fallHigh');
    expect(quantile(sorted(bare, high, 'fallHigh'), 0.5)).toBeGreaterThan(70);
  });
});
