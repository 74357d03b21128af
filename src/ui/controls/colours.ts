import { type Degree, parseDegree, sameDegree } from '#theory';

/** A colour degree that can be switched on, with the name players give it. */
export interface Colour {
  readonly degree: Degree;
  readonly name: string;
}

/** Colour tones players lean on, from the root up (common practice). */
const NAMES: readonly (readonly [degree: string, name: string])[] = [
  ['b9', '♭9'],
  ['9', '2/9'],
  ['#9', '♯9'],
  ['4', '4/11'],
  ['#4', '♯4'],
  ['b5', '♭5'],
  ['#5', '♯5'],
  ['b6', '♭6'],
  ['6', '6'],
  ['b7', '♭7'],
  ['7', '7'],
];

export const COLOURS: readonly Colour[] = NAMES.flatMap(([text, name]) => {
  const degree = parseDegree(text);
  return degree.ok ? [{ degree: degree.value, name }] : [];
});

/** The shown degree that a button stands for: itself, or the same step an octave away (2 for 9). */
export const shownAs = (shown: readonly Degree[], degree: Degree): Degree | undefined =>
  shown.find((other) => sameDegree(other, degree)) ??
  shown.find((o) => o.alter === degree.alter && (o.number - degree.number) % 7 === 0);
