/** A string that is played: notes go in, samples come out, block by block. */
import { type Course, courseOf, movesBetween, semitonesAt } from './course.ts';
import { pluckFor, writePluck } from './pluck.ts';
import { type Random, randomFrom } from './random.ts';
import { delayFor, type Loop, loopFor, type StringTone } from './string.ts';
import type { StringNote } from './types.ts';
import { clearWave, makeWave, runMoving, runSteady, type Stretch, type Wave } from './waveguide.ts';

/** One string and what it is doing. Changed in place by `startNote`, `damp` and `renderVoice`. */
export interface Voice {
  readonly rate: number;
  readonly tone: StringTone;
  /** A string swings in two planes, which lose their sound at different speeds. */
  readonly waves: readonly [Wave, Wave];
  readonly random: Random;
  readonly blow: Float32Array;
  readonly scratch: Float32Array;
  readonly tail: Float32Array;
  readonly fade: Float32Array;
  sounding: boolean;
  midi: number;
  course: Course;
  loop: Loop;
  gains: readonly [number, number];
  /** Samples since the note began, and when the finger leaves it. */
  age: number;
  until: number;
  damped: boolean;
  blowLength: number;
  tailAt: number;
  delay: number;
  glide: number;
  /** Highest since the last look, and samples since anything was heard. */
  peak: number;
  quiet: number;
}

/** Samples between two looks at the pitch and the finger. */
const CONTROL = 32;
/** Seconds in which a string that is struck anew, or stopped dead, falls silent. */
const STOP_SECONDS = 0.005;
/** Seconds in which a finger's touch takes effect. */
const TOUCH_SECONDS = 0.003;
/** Below this (about −100 dB) nothing is heard, and nothing computed. */
const SILENCE = 1e-5;
/** Lower than the open string: transposed, or tuned down. */
const SEMITONES_BELOW = 12;
/** The second plane: how much of the blow it takes, and its sustain against the first. */
const SECOND_PLANE = { share: 0.55, sustain: 0.3 } as const;
const DAMPED_SECONDS = 0.07;
const PALM_MUTE = { sustain: 0.5, highs: 0.07 } as const;
const DEAD = { sustain: 0.035, highs: 0.02 } as const;
/** A shorter string loses its sound faster: so much with each fret (common practice). */
const SUSTAIN_BY_FRET = 0.97;

const hertz = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);

const STILL: Course = { base: 0, moves: [], vibrato: { depth: 0, from: 0, until: 0 } };

/** What becomes of a string's tone when a note is played on it. */
export function toneAt(
  tone: StringTone,
  note: Pick<StringNote, 'midi' | 'palmMute' | 'dead'>,
): StringTone {
  if (note.dead) return { ...tone, ...DEAD };
  if (note.palmMute) return { ...tone, ...PALM_MUTE };
  return { ...tone, sustain: tone.sustain * SUSTAIN_BY_FRET ** Math.max(0, note.midi - tone.open) };
}

/** A string at rest. `rate` in samples a second; the same seed gives the same sound. */
export function makeVoice(tone: StringTone, rate: number, seed = 1): Voice {
  const longest = rate / hertz(tone.open - SEMITONES_BELOW);
  const fadeLength = Math.round(STOP_SECONDS * rate);
  return {
    rate,
    tone,
    waves: [makeWave(longest), makeWave(longest)],
    random: randomFrom(seed * 7919),
    blow: new Float32Array(Math.ceil(longest * 1.1) + CONTROL),
    scratch: new Float32Array(CONTROL),
    tail: new Float32Array(fadeLength),
    fade: Float32Array.from(
      { length: fadeLength },
      (_, i) => 0.5 + 0.5 * Math.cos((Math.PI * i) / fadeLength),
    ),
    sounding: false,
    midi: tone.open,
    course: STILL,
    loop: loopFor(hertz(tone.open), rate, tone),
    gains: [0, 0],
    age: 0,
    until: 0,
    damped: true,
    blowLength: 0,
    tailAt: fadeLength,
    delay: 0,
    glide: 0,
    peak: 0,
    quiet: 0,
  };
}

const NO_BLOW = new Float32Array(4096);

/** What the old note leaves behind while the pick stops it: rendered ahead, fading. */
function keepTail(voice: Voice): void {
  const { tail, fade, waves } = voice;
  const before = tail.slice(voice.tailAt);
  tail.fill(0);
  tail.set(before);
  for (const wave of waves) {
    const stretch = stretchOf(voice, 0, tail.length, wave.gain);
    runSteady(wave, stretch, NO_BLOW, tail);
  }
  for (const [i, value] of fade.entries()) tail[i] = (tail[i] ?? 0) * value;
  voice.tailAt = 0;
}

function stretchOf(voice: Voice, from: number, count: number, gain: number): Stretch {
  const { delay, glide, loop, rate } = voice;
  return { from, count, delay, glide, pole: loop.pole, gain, haste: 1 / (TOUCH_SECONDS * rate) };
}

const isLegato = (note: StringNote): boolean => note.attack !== 'pick' && note.dead !== true;

/** Pitch at which the string sounds now, MIDI. */
const soundingAt = (voice: Voice): number =>
  voice.midi + semitonesAt(voice.course, voice.age / voice.rate);

function strike(voice: Voice, note: StringNote): void {
  const frequency = hertz(note.midi);
  const stopped = 2 ** ((note.midi - voice.tone.open) / 12);
  const place = Math.min(0.5, voice.tone.pickAt * stopped);
  const { rate, blow, random } = voice;
  const pluck = pluckFor(note.attack, note.force, { period: rate / frequency, place, rate });
  blow.fill(0);
  voice.blowLength = writePluck(blow, pluck, random);
}

/** Starts a note with the next sample. What sounded on the string is stopped, or goes on in legato. */
export function startNote(voice: Voice, note: StringNote): void {
  const goesOn = isLegato(note) && voice.sounding && !voice.damped;
  const cameFrom = goesOn ? soundingAt(voice) - note.midi : 0;
  if (!goesOn && voice.sounding) keepTail(voice);
  if (!goesOn) for (const wave of voice.waves) clearWave(wave);
  voice.midi = note.midi;
  voice.course = courseOf(note, cameFrom);
  voice.loop = loopFor(hertz(note.midi), voice.rate, toneAt(voice.tone, note));
  strike(voice, note);
  voice.until = note.letRing ? Number.POSITIVE_INFINITY : Math.round(note.length * voice.rate);
  voice.age = 0;
  voice.damped = false;
  voice.sounding = true;
  voice.quiet = 0;
  voice.delay = delayAt(voice, 0);
  voice.gains = gainsOf(voice, false);
  if (!goesOn)
    for (const [plane, wave] of voice.waves.entries()) wave.gain = voice.gains[plane] ?? 0;
}

/** Lays a finger on the string. */
export function damp(voice: Voice): void {
  voice.until = Math.min(voice.until, voice.age);
}

const delayAt = (voice: Voice, seconds: number): number => {
  const frequency = hertz(voice.midi + semitonesAt(voice.course, seconds));
  const room = voice.waves[0].buffer.length - 8;
  return Math.min(room, delayFor(frequency, voice.rate, voice.loop.pole));
};

/** Every `CONTROL` samples: where the pitch is going, and whether the finger is still there. */
function look(voice: Voice): void {
  const { rate, age, course } = voice;
  const now = age / rate;
  const soon = (age + CONTROL) / rate;
  if (!voice.damped && age >= voice.until) {
    voice.damped = true;
    voice.gains = gainsOf(voice, true);
  }
  const moves = movesBetween(course, now, soon);
  if (moves || voice.glide !== 0) voice.delay = delayAt(voice, now);
  voice.glide = moves ? (delayAt(voice, soon) - voice.delay) / CONTROL : 0;
}

/** Gains of a round trip in both planes, with a finger on the string or without. */
function gainsOf(voice: Voice, damped: boolean): readonly [number, number] {
  const frequency = hertz(voice.midi);
  const finger = damped ? 10 ** (-3 / (DAMPED_SECONDS * frequency)) : 1;
  const faster = (1 / SECOND_PLANE.sustain - 1) / voice.tone.sustain;
  const first = voice.loop.gain * finger;
  return [first, first * 10 ** ((-3 * faster) / frequency)];
}

/** The share of the blow that a plane takes in the next samples. */
function blowNow(voice: Voice, share: number, count: number): Float32Array {
  if (voice.age >= voice.blowLength) return NO_BLOW;
  for (let i = 0; i < count; i++) {
    const at = voice.age + i;
    voice.scratch[i] = at < voice.blowLength ? share * (voice.blow[at] ?? 0) : 0;
  }
  return voice.scratch;
}

function addTail(voice: Voice, out: Float32Array, from: number, to: number): void {
  const count = Math.min(to - from, voice.tail.length - voice.tailAt);
  for (let i = 0; i < count; i++)
    out[from + i] = (out[from + i] ?? 0) + (voice.tail[voice.tailAt + i] ?? 0);
  voice.tailAt += count;
}

/** A string that has been below hearing for longer than its longest round trip is at rest. */
function rest(voice: Voice): void {
  voice.quiet = voice.peak < SILENCE && voice.age >= voice.blowLength ? voice.quiet + CONTROL : 0;
  voice.peak = 0;
  if (voice.quiet < voice.delay + CONTROL) return;
  voice.sounding = false;
  voice.glide = 0;
  for (const wave of voice.waves) clearWave(wave);
}

function renderStretch(voice: Voice, out: Float32Array, from: number, to: number): void {
  const run = voice.glide === 0 ? runSteady : runMoving;
  const count = to - from;
  const [first, second] = voice.waves;
  const one = run(
    first,
    stretchOf(voice, from, count, voice.gains[0]),
    blowNow(voice, 1, count),
    out,
  );
  const blow = blowNow(voice, SECOND_PLANE.share, count);
  const two = run(second, stretchOf(voice, from, count, voice.gains[1]), blow, out);
  voice.age += count;
  voice.delay += voice.glide * count;
  voice.peak = Math.max(voice.peak, one, two);
  if (voice.age % CONTROL === 0) rest(voice);
}

/** Adds the string's next samples to `out`, from index `from` up to but not including `to`. */
export function renderVoice(voice: Voice, out: Float32Array, from: number, to: number): void {
  addTail(voice, out, from, to);
  let at = from;
  while (at < to && voice.sounding) {
    const phase = voice.age % CONTROL;
    if (phase === 0) look(voice);
    const next = Math.min(to, at + CONTROL - phase);
    renderStretch(voice, out, at, next);
    at = next;
  }
}
