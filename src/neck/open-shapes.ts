import { makeNoteName, pitchClass, plainName } from '#theory';
import { type Frets, fingeringOf } from './fingers.ts';
import type { Form } from './types.ts';

/** Frets of the open position within which a triad is looked for. */
const OPEN_POSITION = 4;
const MAJOR_TRIAD = [0, 4, 7] as const;
const FORMS_WANTED = 5;

interface Shape {
  readonly frets: Frets;
  readonly cost: number;
}

/** Frets from 0 at which a string sounds one of the triad's tones. */
function triadFrets(open: number, root: number): readonly number[] {
  const frets: number[] = [];
  for (let f = 0; f <= OPEN_POSITION; f++) {
    const above = (((open + f - root) % 12) + 12) % 12;
    if (MAJOR_TRIAD.some((tone) => tone === above)) frets.push(f);
  }
  return frets;
}

const product = (options: readonly (readonly (number | null)[])[]): readonly Frets[] =>
  options.reduce<readonly Frets[]>(
    (shapes, own) => shapes.flatMap((shape) => own.map((f) => [...shape, f])),
    [[]],
  );

/** The sounding part of a shape: MIDI numbers with the root lowest and every triad tone present. */
function soundsTriad(frets: Frets, midis: readonly number[], root: number): boolean {
  const sounding = frets.flatMap((f, i) => (f === null ? [] : [(midis[i] ?? 0) + f]));
  const above = new Set(sounding.map((note) => (((note - root) % 12) + 12) % 12));
  const lowest = Math.min(...sounding);
  return MAJOR_TRIAD.every((tone) => above.has(tone)) && (lowest - root) % 12 === 0;
}

/** Open triads are liked for many strings, few fingers and low frets; none is muted in the middle. */
function shapeCost(frets: Frets): number | undefined {
  const fingering = fingeringOf(frets, 0);
  const sounding = frets.filter((f) => f !== null).length;
  const inner = frets.slice(frets.findIndex((f) => f !== null));
  const gap = inner
    .slice(
      0,
      inner.findLastIndex((f) => f !== null),
    )
    .includes(null);
  const opens = frets.includes(0);
  if (fingering === undefined || sounding < Math.min(4, frets.length - 1) || gap || !opens) {
    return undefined;
  }
  const height = frets.reduce<number>((sum, f) => sum + (f ?? 0), 0);
  const fretted = frets.filter((f) => f !== null && f > 0).length;
  return 1.5 * (frets.length - sounding) + fingering.count + 0.5 * fretted + 0.2 * height;
}

function bestTriad(midis: readonly number[], root: number): Shape | undefined {
  const options = midis.map((open, i) => {
    const frets = triadFrets(open, root);
    const mayRest = i === 0 || i >= midis.length / 2 || frets.length === 0;
    return mayRest ? [...frets, null] : frets;
  });
  let best: Shape | undefined;
  for (const frets of product(options)) {
    if (!soundsTriad(frets, midis, root)) continue;
    const cost = shapeCost(frets);
    if (cost !== undefined && (best === undefined || cost < best.cost)) best = { frets, cost };
  }
  return best;
}

/**
 * The open major triads that lie best in a tuning (`midis`: open strings, string 1 first), at most
 * five, in the order in which they follow each other up the neck for one chord. Root lowest, all
 * three tones, at most four fingers, at least one open string.
 */
export function openShapes(midis: readonly number[]): readonly Form[] {
  const found = Array.from({ length: 12 }, (_, root) => ({ root, shape: bestTriad(midis, root) }));
  return found
    .flatMap(({ root, shape }) => (shape === undefined ? [] : [{ root, ...shape }]))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, FORMS_WANTED)
    .sort((a, b) => b.root - a.root)
    .map(({ root, frets }) => {
      const name = plainName(pitchClass(root));
      return { name: makeNoteName(name), root: name, frets };
    });
}
