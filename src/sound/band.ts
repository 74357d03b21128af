/** The whole band: events go in, both sides of the sound come out, block by block. */
import { type Amp, type AmpName, amplify, makeAmp } from './amp.ts';
import { BASS_TONES } from './bass-tones.ts';
import { type DrumKit, makeKit } from './drums.ts';
import { type Limiter, limiterDelay, limitInPlace, makeLimiter } from './limiter.ts';
import { gainOfLevel, gainOfPart } from './mix.ts';
import { addRoom, makeRoom, type Room } from './room.ts';
import type { StringTone } from './string.ts';
import { type BandEvent, type Mix, PARTS, type PartName } from './types.ts';
import { damp, makeVoice, renderVoice, startNote, type Voice } from './voice.ts';

/** Samples computed at a time; also what a browser asks for. */
export const BLOCK = 128;

/** A stroke that is being played back. */
interface Hit {
  readonly samples: Float32Array;
  readonly level: number;
  at: number;
}

/** Where a part stands in the room: −1 left to 1 right, and how much of it the walls give back. */
interface Place {
  readonly pan: number;
  readonly room: number;
}

const PLACES: Readonly<Record<PartName, Place>> = {
  line: { pan: 0.12, room: 0.22 },
  comp: { pan: -0.28, room: 0.2 },
  bass: { pan: 0, room: 0.04 },
  drums: { pan: 0.05, room: 0.16 },
  click: { pan: 0, room: 0 },
  count: { pan: 0, room: 0 },
};

interface Part {
  readonly name: PartName;
  readonly voices: readonly Voice[];
  readonly buffer: Float32Array;
  amp: Amp | undefined;
  hits: Hit[];
  /** Present gain, on its way to that of the mix. */
  gain: number;
  wanted: number;
  /** Samples since the part made a sound. */
  quiet: number;
}

/** The band and all that it remembers. Changed in place by the functions of this file. */
export interface Band {
  readonly rate: number;
  readonly kit: DrumKit;
  readonly parts: readonly Part[];
  readonly room: Room;
  readonly limiter: Limiter;
  readonly send: Float32Array;
  queue: BandEvent[];
  mix: Mix;
  master: number;
  /** The next sample to be computed, from 0. */
  frame: number;
  strokes: number;
  /** Samples by which the run that is playing is later than it was meant. */
  late: number;
}

/** Samples by which what comes out of the band is late. */
export const bandDelay = limiterDelay;

const voicesOf = (tones: readonly StringTone[], rate: number, seed: number): readonly Voice[] =>
  tones.map((tone, i) => makeVoice(tone, rate, seed + i));

const isGuitar = (name: PartName): boolean => name === 'line' || name === 'comp';

function tonesFor(name: PartName, guitar: readonly StringTone[]): readonly StringTone[] {
  if (isGuitar(name)) return guitar;
  return name === 'bass' ? BASS_TONES : [];
}

function ampNameOf(name: PartName, mix: Mix): AmpName | undefined {
  if (name === 'line') return mix.sound;
  if (name === 'comp') return 'clean';
  return name === 'bass' ? 'bass' : undefined;
}

const ampOf = (name: PartName, mix: Mix, rate: number): Amp | undefined => {
  const amp = ampNameOf(name, mix);
  return amp === undefined ? undefined : makeAmp(amp, rate);
};

function makePart(
  name: PartName,
  index: number,
  guitar: readonly StringTone[],
  mix: Mix,
  rate: number,
): Part {
  const gain = gainOfPart(mix, name);
  return {
    name,
    voices: voicesOf(tonesFor(name, guitar), rate, 11 + 20 * index),
    buffer: new Float32Array(BLOCK),
    amp: ampOf(name, mix, rate),
    hits: [],
    gain,
    wanted: gain,
    quiet: Number.MAX_SAFE_INTEGER,
  };
}

/** A band at rest. `guitar`: the tones of the guitar's strings, string 1 first. */
export function makeBand(guitar: readonly StringTone[], mix: Mix, rate: number): Band {
  return {
    rate,
    kit: makeKit(rate),
    parts: PARTS.map((name, i) => makePart(name, i, guitar, mix, rate)),
    room: makeRoom(rate),
    limiter: makeLimiter(rate),
    send: new Float32Array(BLOCK),
    queue: [],
    mix,
    master: gainOfLevel(mix.master),
    frame: 0,
    strokes: 0,
    late: 0,
  };
}

/** Changes levels without a click; another amplifier takes over at once. */
export function setMix(band: Band, mix: Mix): void {
  const sounds = mix.sound !== band.mix.sound;
  band.mix = mix;
  for (const part of band.parts) {
    part.wanted = gainOfPart(mix, part.name);
    if (sounds && part.name === 'line') part.amp = ampOf('line', mix, band.rate);
  }
}

/**
 * Puts events in their place; those whose sample has passed are played at once, but for those that
 * would be over by then.
 */
export function schedule(band: Band, events: readonly BandEvent[]): void {
  band.queue.push(...events);
  band.queue.sort((a, b) => a.frame - b.frame);
}

/**
 * Begins a run that is meant to begin at a frame; gives the samples by which it is later. On a busy
 * machine its first notes may come too late to be whole: all of it is then played as much later.
 */
export function beginRun(band: Band, frame: number): number {
  band.late = Math.max(0, band.frame - frame);
  return band.late;
}

/** Puts events of a run in their place. */
export const scheduleRun = (band: Band, events: readonly BandEvent[]): void =>
  schedule(
    band,
    events.map((event) => ({ ...event, frame: event.frame + band.late })),
  );

/** Takes back what was given away with a slice from `keep` on and is still to come. */
export function takeBack(band: Band, keep: number): void {
  band.queue = band.queue.filter(({ slice }) => slice === undefined || slice < keep);
}

/** Forgets what is to come, and lays a hand on what sounds. */
export function silence(band: Band): void {
  band.queue = [];
  band.late = 0;
  for (const part of band.parts) {
    part.hits = [];
    for (const voice of part.voices) damp(voice);
  }
}

function play(band: Band, event: BandEvent): void {
  const part = band.parts[PARTS.indexOf(event.part)];
  if (part === undefined) return;
  part.quiet = 0;
  if (event.kind === 'note') {
    const voice = part.voices[event.string - 1];
    if (voice !== undefined) startNote(voice, event.note);
    return;
  }
  const takes = band.kit[event.drum];
  const samples = takes[band.strokes % takes.length];
  band.strokes += 1;
  if (samples !== undefined) part.hits.push({ samples, level: event.force ** 1.5, at: 0 });
}

/** A stroke that is later than this is no longer of its beat, seconds. */
const LATE_SECONDS = 0.05;

/** Too late to be of use: many strokes made up for at once would be a bang. */
function isOver(event: BandEvent, late: number): boolean {
  const length = event.kind === 'note' ? event.note.length : 0;
  return late > Math.max(LATE_SECONDS, length);
}

function playDue(band: Band, at: number): void {
  let due = 0;
  for (const event of band.queue) {
    const late = (band.frame + at - event.frame) / band.rate;
    if (late < 0) break;
    if (!isOver(event, late)) play(band, event);
    due += 1;
  }
  if (due > 0) band.queue.splice(0, due);
}

function renderHit(hit: Hit, out: Float32Array, from: number, to: number): void {
  const count = Math.min(to - from, hit.samples.length - hit.at);
  for (let i = 0; i < count; i++)
    out[from + i] = (out[from + i] ?? 0) + hit.level * (hit.samples[hit.at + i] ?? 0);
  hit.at += count;
}

function renderPart(part: Part, from: number, to: number): void {
  for (const voice of part.voices) renderVoice(voice, part.buffer, from, to);
  for (const hit of part.hits) renderHit(hit, part.buffer, from, to);
}

/** Computes the block from event to event. */
function renderParts(band: Band, count: number): void {
  let at = 0;
  playDue(band, 0);
  while (at < count) {
    const due = (band.queue[0]?.frame ?? Number.POSITIVE_INFINITY) - band.frame;
    const next = Math.min(count, due);
    for (const part of band.parts) renderPart(part, at, next);
    at = next;
    if (at < count) playDue(band, at);
  }
}

/** How long an amplifier may go on after the strings have stopped, seconds. */
const AMP_SECONDS = 0.2;
/** Seconds in which a fader moves. */
const FADER_SECONDS = 0.02;

function isIdle(part: Part, rate: number, count: number): boolean {
  const sounds = part.hits.length > 0 || part.voices.some((voice) => voice.sounding);
  part.quiet = sounds ? 0 : part.quiet + count;
  return part.quiet > AMP_SECONDS * rate;
}

function mixPart(
  band: Band,
  part: Part,
  left: Float32Array,
  right: Float32Array,
  count: number,
): void {
  const { buffer, wanted } = part;
  const { pan, room } = PLACES[part.name];
  const haste = 1 / (FADER_SECONDS * band.rate);
  // Equal power: as loud in the middle as at a side.
  const toLeft = Math.cos(((pan + 1) * Math.PI) / 4);
  const toRight = Math.sin(((pan + 1) * Math.PI) / 4);
  let gain = Math.abs(wanted - part.gain) < 1e-6 ? wanted : part.gain;
  for (let i = 0; i < count; i++) {
    gain += (wanted - gain) * haste;
    const x = gain * (buffer[i] ?? 0);
    left[i] = (left[i] ?? 0) + toLeft * x;
    right[i] = (right[i] ?? 0) + toRight * x;
    band.send[i] = (band.send[i] ?? 0) + room * x;
  }
  part.gain = gain;
}

function masterInPlace(band: Band, left: Float32Array, right: Float32Array, count: number): void {
  const wanted = gainOfLevel(band.mix.master);
  const haste = 1 / (FADER_SECONDS * band.rate);
  for (let i = 0; i < count; i++) {
    band.master += (wanted - band.master) * haste;
    left[i] = (left[i] ?? 0) * band.master;
    right[i] = (right[i] ?? 0) * band.master;
  }
}

function renderBlock(band: Band, left: Float32Array, right: Float32Array): void {
  const count = left.length;
  left.fill(0);
  right.fill(0);
  band.send.fill(0);
  for (const part of band.parts) part.buffer.fill(0);
  renderParts(band, count);
  for (const part of band.parts) {
    if (isIdle(part, band.rate, count)) {
      // A fader that nobody hears has nothing to glide for.
      part.gain = part.wanted;
      continue;
    }
    part.hits = part.hits.filter((hit) => hit.at < hit.samples.length);
    if (part.amp !== undefined) amplify(part.amp, part.buffer, count);
    mixPart(band, part, left, right, count);
  }
  addRoom(band.room, band.send, left, right, count);
  masterInPlace(band, left, right, count);
  limitInPlace(band.limiter, left, right, count);
  band.frame += count;
}

/** Computes the next samples of both sides, as many as the arrays are long. */
export function renderBand(band: Band, left: Float32Array, right: Float32Array): void {
  for (let at = 0; at < left.length; at += BLOCK) {
    const end = Math.min(left.length, at + BLOCK);
    renderBlock(band, left.subarray(at, end), right.subarray(at, end));
  }
}
