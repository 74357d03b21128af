/** Finds the key that a progression most probably stands in. */
import { barsOf } from './chart-walk.ts';
import { semitonesOf } from './degrees.ts';
import { fifthsOf, keysAt, SCALES, sharpsOf } from './keys.ts';
import { pitchClass, pitchClassOf } from './notes.ts';
import type { Chart, Chord, Key, Mode, NoteName, PitchClass } from './types.ts';

export interface KeyScore {
  readonly key: Key;
  /** Comparable within one estimate only. */
  readonly score: number;
}

export interface KeyEstimate {
  readonly best: Key;
  readonly runnerUp: Key;
  /** 0 (no telling) to 1: how clearly the best leads. */
  readonly confidence: number;
  /** All 24 keys, best first. */
  readonly ranked: readonly KeyScore[];
}

/** What of a chord speaks for a key. */
interface Evidence {
  readonly root: NoteName;
  readonly pc: number;
  /** Semitones above the root, 0 to 11. */
  readonly tones: ReadonlySet<number>;
  /** Share of the whole time. */
  readonly weight: number;
}

type Third = 'major' | 'minor' | 'none';

const thirdOf = ({ tones }: Evidence): Third =>
  tones.has(4) ? 'major' : tones.has(3) ? 'minor' : 'none';

const isDominant = (chord: Evidence): boolean =>
  chord.tones.has(10) && (chord.tones.has(4) || (chord.tones.has(5) && !chord.tones.has(3)));

const isDiminished = ({ tones }: Evidence): boolean =>
  tones.has(3) && tones.has(6) && !tones.has(7);

function evidenceOf(chord: Chord, weight: number): Evidence {
  const tones = new Set<number>(chord.tones.map((tone) => pitchClass(semitonesOf(tone))));
  return { root: chord.root, pc: pitchClassOf(chord.root), tones, weight };
}

const sameRootAndTones = (a: Evidence, b: Evidence): boolean =>
  a.pc === b.pc && a.tones.size === b.tones.size && [...a.tones].every((t) => b.tones.has(t));

/** The chords in order with their shares of the time; a chord that goes on counts once. */
function chordsOf(chart: Chart): readonly Evidence[] {
  const found: Evidence[] = [];
  for (const { slots } of barsOf(chart)) {
    for (const { harmony, length } of slots) {
      if (harmony.kind !== 'chord') continue;
      const next = evidenceOf(harmony.chord, length);
      const last = found.at(-1);
      if (last !== undefined && sameRootAndTones(last, next)) {
        found[found.length - 1] = { ...last, weight: last.weight + next.weight };
      } else {
        found.push(next);
      }
    }
  }
  const whole = found.reduce((sum, { weight }) => sum + weight, 0);
  return found.map((chord) => ({ ...chord, weight: chord.weight / whole }));
}

interface Trial {
  readonly tonic: number;
  readonly mode: Mode;
}

const above = (tonic: number, pc: number): number => pitchClass(pc - tonic);

/** How much a tone fits that is not in the scale, by semitones above the tonic. */
const BORROWED: Readonly<Record<Mode, Readonly<Record<number, number>>>> = {
  // ♭7 and ♭6 of the parallel minor are frequent, ♭3 less.
  major: { 10: 0.3, 8: 0.3, 3: 0.2 },
  // The leading tone and the sixth of the melodic form.
  minor: { 11: 0.5, 9: 0.4 },
};

const DOMINANT_STEPS = [7, 11];
const BLUES_STEPS = [0, 5];
/** ♭9, ♯9, ♯11, ♭13: a dominant may bring them whatever the key. */
const ALTERATIONS = [1, 3, 6, 8];

/** Whether a foreign tone belongs to the style: the leading tone in V and vii°, blue sevenths. */
function isIdiomatic(chord: Evidence, step: number, tone: number, mode: Mode): boolean {
  const place = pitchClass(step + tone);
  if (mode === 'minor' && place === 11) return DOMINANT_STEPS.includes(step);
  if (step === 7 && isDominant(chord) && ALTERATIONS.includes(tone)) return true;
  return mode === 'major' && tone === 10 && BLUES_STEPS.includes(step) && isDominant(chord);
}

function toneFit(chord: Evidence, step: number, tone: number, mode: Mode): number {
  const place = pitchClass(step + tone);
  if (SCALES[mode].includes(place)) return 1;
  if (isIdiomatic(chord, step, tone, mode)) return 0.85;
  return BORROWED[mode][place] ?? 0;
}

const ROOT_WEIGHT = 2.5;

function fitOf(chord: Evidence, { tonic, mode }: Trial): number {
  const step = above(tonic, chord.pc);
  let sum = 0;
  let whole = 0;
  for (const tone of chord.tones) {
    const weight = tone === 0 ? ROOT_WEIGHT : 1;
    sum += weight * toneFit(chord, step, tone, mode);
    whole += weight;
  }
  return sum / whole;
}

/** How much a chord on a step, with its usual third, is heard as belonging to the key. */
const PLACES: Readonly<Record<Mode, Readonly<Record<string, number>>>> = {
  major: {
    '0major': 0.6,
    '7major': 0.3,
    '5major': 0.3,
    '2minor': 0.2,
    '9minor': 0.2,
    '4minor': 0.12,
    '0none': 0.45,
    '7none': 0.25,
    '5none': 0.2,
    '10major': 0.05,
    '5minor': 0.08,
  },
  minor: {
    '0minor': 0.6,
    '7major': 0.3,
    '7minor': 0.15,
    '5minor': 0.3,
    '8major': 0.2,
    '10major': 0.2,
    '3major': 0.15,
    '2minor': 0.05,
    '11minor': 0.1,
    '0none': 0.4,
    '7none': 0.2,
    '5none': 0.2,
    '5major': 0.18,
  },
};

/** A dominant seventh at rest is a tonic in the blues only, which has its own bonus. */
const RESTLESS_SHARE = 0.5;

function placeOf(chord: Evidence, { tonic, mode }: Trial): number {
  const step = above(tonic, chord.pc);
  const place = PLACES[mode][step + thirdOf(chord)] ?? 0;
  return step === 0 && isDominant(chord) ? place * RESTLESS_SHARE : place;
}

/** How well a chord serves as the tonic, 0 to 1. */
function tonicShare(chord: Evidence | undefined, { tonic, mode }: Trial): number {
  if (chord === undefined || chord.pc !== tonic || isDiminished(chord)) return 0;
  const third = thirdOf(chord);
  if (third !== mode && third !== 'none') return 0;
  return isDominant(chord) ? RESTLESS_SHARE : 1;
}

const FIRST_BONUS = 0.14;
const LAST_BONUS = 0.18;
const CADENCE_BONUS = 0.2;
const PREPARED_BONUS = 0.16;
const MOST_CADENCES = 3;
/** Of a cadence from the last chord to the first, and of a dominant that goes elsewhere. */
const LOOP_SHARE = 0.6;
const UNRESOLVED_SHARE = 0.25;

/** V or vii° to the tonic; a dominant seventh says more than a triad. */
function cadenceWeight(from: Evidence, trial: Trial): number {
  const step = above(trial.tonic, from.pc);
  if (step === 7 && thirdOf(from) !== 'minor') return isDominant(from) ? 1 : 0.6;
  if (step === 11 && isDiminished(from)) return 0.7;
  return 0;
}

const preparesDominant = (chord: Evidence | undefined, { tonic, mode }: Trial): boolean => {
  if (chord === undefined) return false;
  const step = above(tonic, chord.pc);
  if (step === 5) return thirdOf(chord) === mode;
  return step === 2 && chord.tones.has(3) && (mode === 'major') === chord.tones.has(7);
};

/** Cadences on the tonic, also the half cadence at the end that leads back to the start. */
function cadencesOf(chords: readonly Evidence[], trial: Trial): number {
  let sum = 0;
  for (const [i, from] of chords.entries()) {
    const to = chords[i + 1] ?? chords[0];
    const weight = cadenceWeight(from, trial);
    if (weight === 0) continue;
    const loops = i + 1 === chords.length ? LOOP_SHARE : 1;
    const arrives = Math.max(tonicShare(to, trial) * loops, UNRESOLVED_SHARE);
    const prepared = preparesDominant(chords[i - 1], trial) ? PREPARED_BONUS : 0;
    sum += weight * arrives * (CADENCE_BONUS + prepared);
  }
  const most = MOST_CADENCES * (CADENCE_BONUS + PREPARED_BONUS);
  return Math.min(sum, most) / Math.sqrt(Math.max(chords.length / 4, 1));
}

const BLUES_BONUS = 0.3;

/** A blues: dominant sevenths on I and IV, and V where there is one. */
function bluesOf(chords: readonly Evidence[], { tonic, mode }: Trial): number {
  const sevenths = chords.filter(isDominant);
  const on = (step: number): number =>
    sevenths.reduce((sum, c) => (above(tonic, c.pc) === step ? sum + c.weight : sum), 0);
  const [one, four, five] = [on(0), on(5), on(7)];
  return mode === 'major' && one > 0 && four > 0 ? BLUES_BONUS * (one + four + five) : 0;
}

function scoreOf(chords: readonly Evidence[], trial: Trial): number {
  const fit = chords.reduce(
    (sum, chord) => sum + chord.weight * (fitOf(chord, trial) + placeOf(chord, trial)),
    0,
  );
  const first = FIRST_BONUS * tonicShare(chords[0], trial);
  const last = LAST_BONUS * tonicShare(chords.at(-1), trial);
  return fit + first + last + cadencesOf(chords, trial) + bluesOf(chords, trial);
}

/** How far the key lies from the chords' roots as typed, on the line of fifths. */
const strangeness = (key: Key, chords: readonly Evidence[]): number =>
  chords.reduce(
    (sum, { root, weight }) => sum + weight * Math.abs(fifthsOf(root) - sharpsOf(key) - 1),
    0,
  );

/** Of the spellings of a key the one nearest to what was typed, then with the fewest accidentals. */
function spelled(pc: PitchClass, mode: Mode, chords: readonly Evidence[]): Key {
  const keys = keysAt(pc, mode).map((key) => ({ key, far: strangeness(key, chords) }));
  const [best] = keys.toSorted(
    (a, b) => a.far - b.far || Math.abs(sharpsOf(a.key)) - Math.abs(sharpsOf(b.key)),
  );
  return best?.key ?? { tonic: { letter: 'C', alter: 0 }, mode };
}

const CLEAR_LEAD = 0.15;

/**
 * The most probable key with its runner-up, from how long each chord lasts, how well its tones fit
 * (in minor with the leading tone of V and vii°, in major with blue sevenths on I and IV), where the
 * piece begins and ends, and its cadences. Spelled as the chords are typed. Undefined for a chart
 * without a readable chord.
 */
export function estimateKey(chart: Chart): KeyEstimate | undefined {
  const chords = chordsOf(chart);
  if (chords.length === 0) return undefined;
  const trials = Array.from({ length: 24 }, (_, i): Trial => {
    return { tonic: i % 12, mode: i < 12 ? 'major' : 'minor' };
  });
  const ranked = trials
    .map((trial): KeyScore => {
      const key = spelled(pitchClass(trial.tonic), trial.mode, chords);
      return { key, score: scoreOf(chords, trial) };
    })
    .toSorted((a, b) => b.score - a.score);
  const [best, second] = ranked;
  if (best === undefined || second === undefined) return undefined;
  const confidence = 1 - Math.exp(-(best.score - second.score) / CLEAR_LEAD);
  return { best: best.key, runnerUp: second.key, confidence, ranked };
}
