/**
 * The only door to the tonal library: its chord dictionary, as degrees.
 *
 * What tonal keeps silent about comes out as a Result here (it answers an unknown name with an empty
 * object), and its intervals are read strictly (its own reader takes `3Mxyz` for a third).
 */
import { ChordType } from 'tonal';
import { ok, type Result, type TextError } from './result.ts';
import { textError } from './text-error.ts';
import type { Degree } from './types.ts';

/** One chord type of the dictionary: all the names it goes by, and its degrees, root first. */
export interface DictionaryEntry {
  readonly aliases: readonly string[];
  readonly degrees: readonly Degree[];
}

/** Diminished or minor, perfect or major, augmented: semitones against the major scale. */
const ALTERS: Readonly<Record<string, number>> = { P: 0, M: 0, m: -1, A: 1 };
const PERFECT = new Set([1, 4, 5, 8, 11, 12]);

/** `3m` → ♭3, `7d` → 𝄫7, `11A` → ♯11. Undefined for anything that is not such an interval. */
export function degreeOfInterval(interval: string): Degree | undefined {
  const [, digits, quality] = /^([1-9]\d?)([PMmAd])$/.exec(interval) ?? [];
  if (digits === undefined || quality === undefined) return undefined;
  const number = Number(digits);
  const alter = quality === 'd' ? (PERFECT.has(number) ? -1 : -2) : ALTERS[quality];
  return alter === undefined ? undefined : { number, alter };
}

function degreesOf(intervals: readonly string[]): readonly Degree[] {
  return intervals.map((interval) => {
    const degree = degreeOfInterval(interval);
    if (degree === undefined) throw new Error(`tonal gave an interval unknown here: ${interval}`);
    return degree;
  });
}

/**
 * The degrees that tonal's dictionary has under a quality name (`m7b5`, `maj7`, `sus4`; `M` is the
 * major triad). Error code: `quality`.
 */
export function lookUpQuality(name: string): Result<readonly Degree[], TextError<'quality'>> {
  const type = ChordType.get(name);
  if (type.empty)
    return textError('quality', name, 0, name.length, ['a chord type of the dictionary']);
  return ok(degreesOf(type.intervals));
}

/** The whole dictionary as tonal has it (106 types in version 6.4.3, from Wikibooks). */
export const chordDictionary = (): readonly DictionaryEntry[] =>
  ChordType.all().map(({ aliases, intervals }) => ({
    aliases: [...aliases],
    degrees: degreesOf(intervals),
  }));
