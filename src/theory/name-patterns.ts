/** What can sound under the name of a chord quality, and how far-fetched that name is then. */
import { parseChord } from './chords.ts';
import { semitonesOf } from './degrees.ts';
import { pitchClass } from './notes.ts';
import type { Degree } from './types.ts';

/** Qualities that notes may be named by, the more usual first. */
const USUAL = (
  ' m 7 m7 maj7 sus4 sus2 5 6 m6 7sus4 9 m9 maj9 add9 madd9 dim aug m7b5 dim7 69 13 7b9 7#9 m11 ' +
  '9sus4 m(maj7) 7#5 7b5 m69 13sus4 11 maj7#11 9#11 7#11 7b13 7b9b13 7#9b13 7#5b9 7#5#9 7b5b9 ' +
  'maj13 m13 13b9 13#11 9#5 9b5 maj7#5 maj7b5 dim(maj7) maj9#11 7b9sus4 m9b5 m(maj9)'
).split(' ');

/** Qualities that are written where nothing else fits; as a rule a slash chord says it more plainly. */
const RARE = (
  'maj11 m(maj11) add11 madd11 (b5) 69#11 13#9 7#9#11 7b9#11 maj13#11 maj9#5 9#5#11 9#11b13 ' +
  'sus24 7sus2 maj7sus4 maj7sus2 maj9sus4 6sus4 m7#5 addb9 add#9 add#11 6#11 augadd9 ' +
  '7#11b13 7b9b13sus4 7#5sus4 maj7b9 maj7#9#11 7b9#9 13b9#11 13#9#11 7b9#11b13 7#9#11b13 7#5b9#11'
).split(' ');

/**
 * All of a chord's tones but those that a grip does without, as a set of pitch classes: its plain
 * fifth, the eleventh of a thirteenth, the ninth of both (common practice).
 */
export interface NamePattern {
  readonly suffix: string;
  /** One bit for each pitch class above the root: bit 0 the root, bit 7 the fifth. */
  readonly mask: number;
  /** Nothing is left out. */
  readonly whole: boolean;
  readonly hasThird: boolean;
  /** Worth naming without its root: it has a third and a seventh or sixth. */
  readonly full: boolean;
  /** 0 = as plain as can be; a usual quality with all its tones costs less than 1.5, a rare one more. */
  readonly cost: number;
}

/**
 * What the figures bring about (common practice):
 * - the order of the lists decides only between names that are otherwise equally far-fetched;
 * - three notes that are a triad or suspended chord of another root, C E A, are that chord, Am/C,
 *   rather than C6 without its fifth;
 * - a dominant thirteenth is played without its eleventh as a matter of course, a minor eleventh or a
 *   thirteenth without its ninth less readily: C E♭ F B♭ is F7sus4/C before it is Cm11.
 */
const COST = {
  later: 0.028,
  rare: 1.7,
  noFifth: 0.7,
  otherTriad: 0.8,
  noNinth: 0.45,
} as const;

/** The bit of a tone so many semitones above the root. */
export const bitOf = (semitones: number): number => 1 << pitchClass(semitones);

const maskOf = (tones: readonly Degree[]): number =>
  tones.reduce((all, tone) => all | bitOf(semitonesOf(tone)), 0);

const natural = (tones: readonly Degree[], number: number): boolean =>
  tones.some((tone) => tone.number === number && tone.alter === 0);

const anyOf = (tones: readonly Degree[], ...numbers: readonly number[]): boolean =>
  tones.some((tone) => numbers.includes(tone.number));

/**
 * The sets of tensions that a grip may leave out, the empty one first: the eleventh of a thirteenth,
 * and the ninth of both (common practice).
 */
function omissions(tones: readonly Degree[]): readonly (readonly number[])[] {
  if (!anyOf(tones, 7)) return [[]];
  const eleven = natural(tones, 11) && natural(tones, 13);
  const nine = natural(tones, 9) && (natural(tones, 11) || natural(tones, 13));
  const both = nine && eleven;
  return [[], ...(eleven ? [[11]] : []), ...(nine ? [[9]] : []), ...(both ? [[9, 11]] : [])];
}

function without(
  numbers: readonly number[],
  suffix: string,
  own: number,
  tones: readonly Degree[],
): NamePattern {
  const kept = tones.filter((tone) => !numbers.includes(tone.number));
  return {
    suffix,
    mask: maskOf(kept),
    whole: numbers.length === 0,
    hasThird: anyOf(kept, 3),
    full: anyOf(kept, 3) && anyOf(kept, 6, 7),
    cost: own + (numbers.includes(9) ? COST.noNinth : 0),
  };
}

/** The same without its plain fifth, where enough is left to tell it by. */
function withoutFifth(pattern: NamePattern, tones: readonly Degree[]): readonly NamePattern[] {
  const tellable = anyOf(tones, 3) || (anyOf(tones, 4) && anyOf(tones, 7));
  if (!natural(tones, 5) || tones.length < 4 || !tellable) return [];
  const otherTriad = tones.length === 4 && anyOf(tones, 4, 6) ? COST.otherTriad : 0;
  const cost = pattern.cost + COST.noFifth + otherTriad;
  return [{ ...pattern, mask: pattern.mask & ~bitOf(7), whole: false, cost }];
}

function patternsOf(suffix: string, own: number): readonly NamePattern[] {
  const chord = parseChord(`C${suffix}`);
  if (!chord.ok) return [];
  const { tones } = chord.value;
  return omissions(tones).flatMap((numbers) => {
    const pattern = without(numbers, suffix, own, tones);
    return [pattern, ...withoutFifth(pattern, tones)];
  });
}

const allPatterns = (): readonly NamePattern[] => [
  ...USUAL.flatMap((suffix, rank) => patternsOf(suffix, rank * COST.later)),
  ...RARE.flatMap((suffix, rank) => patternsOf(suffix, COST.rare + rank * COST.later)),
];

const byMask = new Map<number, NamePattern[]>();

/** Read by the parser itself, once, when the first notes are named. */
function fill(): void {
  for (const pattern of allPatterns()) {
    const alike = byMask.get(pattern.mask);
    if (alike) alike.push(pattern);
    else byMask.set(pattern.mask, [pattern]);
  }
}

/** Every pattern that sounds exactly as `mask` does, one bit for each pitch class above the root. */
export function patternsOn(mask: number): readonly NamePattern[] {
  if (byMask.size === 0) fill();
  return byMask.get(mask) ?? [];
}
