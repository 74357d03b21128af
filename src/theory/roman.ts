/** Roman numerals: what a chord does in a key. */
import { degreeOf, noteAt, sameDegree } from './degrees.ts';
import { scaleNotes } from './keys.ts';
import {
  type AccidentalStyle,
  makeAccidentals,
  pitchClass,
  pitchClassOf,
  sameNote,
} from './notes.ts';
import type { Chord, Degree, Key, NoteName } from './types.ts';

/** The step of a key that an applied chord leads to. */
export interface RomanTarget {
  readonly accidental: number;
  readonly numeral: string;
}

/** The parts of a Roman numeral, for setting in type. */
export interface RomanNumeral {
  /** Of the root against the key's scale (in minor the natural one), in semitones: ♭VII -1. */
  readonly accidental: number;
  /** `I` … `VII`; lower case for chords with a minor third. */
  readonly numeral: string;
  readonly quality: '' | '°' | 'ø' | '+';
  /** Sevenths, extensions and alterations as on lead sheets: `7`, `maj7`, `7♭9`, `sus4`, `add9`. */
  readonly extension: string;
  /** Figured bass of an inversion, from the top: `6`; `6 4`; `6 5`; `4 3`; `4 2`. */
  readonly figures: readonly string[];
  /** A bass that figures cannot express, as a degree of the chord. */
  readonly bass?: Degree;
  /** Present on V and vii° of another step: `V7/ii`. */
  readonly applied?: RomanTarget;
}

const NUMERALS = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'];
/** Cases of the triads on the steps; in minor with the major V (Open Music Theory, triads). */
const DIATONIC = {
  major: ['I', 'ii', 'iii', 'IV', 'V', 'vi', 'vii'],
  minor: ['i', 'ii', 'III', 'iv', 'V', 'VI', 'VII'],
} as const;
/** Steps whose own triad is diminished: to that no chord leads as to a tonic. */
const DIMINISHED_STEP = { major: 7, minor: 2 } as const;

const has = (chord: Chord, number: number, alter = 0): boolean =>
  chord.tones.some((tone) => sameDegree(tone, { number, alter }));

const hasThird = (chord: Chord): boolean => chord.tones.some(({ number }) => number === 3);
const isMinor = (chord: Chord): boolean => has(chord, 3, -1) && !has(chord, 3);
const isDiminished = (chord: Chord): boolean =>
  has(chord, 3, -1) && has(chord, 5, -1) && !has(chord, 5);
const isAugmented = (chord: Chord): boolean => has(chord, 3) && has(chord, 5, 1) && !has(chord, 5);
const isDominant = (chord: Chord): boolean => has(chord, 3) && has(chord, 7, -1);

function qualityOf(chord: Chord): RomanNumeral['quality'] {
  if (isDiminished(chord)) return has(chord, 7, -1) ? 'ø' : '°';
  return isAugmented(chord) ? '+' : '';
}

/** The name's degree in the key: 1 to 7, the alteration counted from the key's own scale. */
function stepOf(name: NoteName, key: Key): Degree {
  const scale = scaleNotes(key);
  const { number } = degreeOf(key.tonic, name);
  const natural = scale[number - 1] ?? key.tonic;
  const step = { number, alter: name.alter - natural.alter };
  const foreign =
    step.alter !== 0 && scale.some((note) => pitchClassOf(note) === pitchClassOf(name));
  return foreign || Math.abs(step.alter) > 1 ? simplestStep(name, scale) : step;
}

/** The step of a chord; a diminished one below the tonic is vii° however it is spelled. */
function stepOfChord(chord: Chord, key: Key): Degree {
  const leads = isDiminished(chord) && semitonesUp(chord.root, key.tonic) === 1;
  if (leads) return { number: 7, alter: key.mode === 'minor' ? 1 : 0 };
  return stepOf(chord.root, key);
}

const semitonesUp = (from: NoteName, to: NoteName): number =>
  pitchClass(pitchClassOf(to) - pitchClassOf(from));

/** For a name that the key would never spell so: the step it sounds as. */
function simplestStep(name: NoteName, scale: readonly NoteName[]): Degree {
  const sounding = pitchClassOf(name);
  const offsets = scale.map((note) => ((sounding - pitchClassOf(note) + 18) % 12) - 6);
  const exact = offsets.indexOf(0);
  const at = exact < 0 ? offsets.indexOf(-1) : exact;
  return { number: at + 1, alter: exact < 0 ? -1 : 0 };
}

function numeralOf(chord: Chord, step: Degree, key: Key): string {
  const upper = NUMERALS[step.number - 1] ?? 'I';
  if (!hasThird(chord) && step.alter === 0) return DIATONIC[key.mode][step.number - 1] ?? upper;
  return isMinor(chord) ? upper.toLowerCase() : upper;
}

/** In minor vii° stands on the raised step as a matter of course. */
function accidentalOf(chord: Chord, step: Degree, key: Key): number {
  const leading = key.mode === 'minor' && step.number === 7 && step.alter === 1;
  return leading && isDiminished(chord) ? 0 : step.alter;
}

const seventhWord = (chord: Chord): string | undefined => {
  if (has(chord, 7)) return 'maj';
  return has(chord, 7, -1) || has(chord, 7, -2) ? '' : undefined;
};

const EXTENSIONS = [13, 11, 9];

const signed = ({ number, alter }: Degree): string => makeAccidentals(alter, 'sign') + number;

function suspension(chord: Chord): string {
  if (hasThird(chord)) return '';
  const fourth = chord.tones.find(({ number }) => number === 4);
  const second = chord.tones.find(({ number }) => number === 2);
  if (fourth !== undefined) return `sus${signed(fourth)}`;
  if (second !== undefined) return `sus${signed(second)}`;
  return chord.tones.length === 2 && has(chord, 5) ? '5' : '';
}

/** Altered fifths that the quality sign does not say already. */
const alteredFifths = (chord: Chord): readonly Degree[] =>
  chord.tones.filter(
    ({ number, alter }) =>
      number === 5 && alter !== 0 && !isDiminished(chord) && !isAugmented(chord),
  );

const alteredTensions = (chord: Chord): readonly Degree[] =>
  chord.tones.filter(({ number, alter }) => EXTENSIONS.includes(number) && alter !== 0);

function seventhChord(chord: Chord, word: string): string {
  const highest = EXTENSIONS.find((number) => has(chord, number)) ?? 7;
  const altered = [...alteredFifths(chord), ...alteredTensions(chord)].map(signed);
  return word + highest + suspension(chord) + altered.join('');
}

function addedTones(chord: Chord): string {
  const ninth = has(chord, 6) && has(chord, 9);
  const sixth = chord.tones.find(({ number }) => number === 6);
  const tensions = chord.tones.filter(({ number }) => EXTENSIONS.includes(number));
  const others = tensions.filter((tone) => !(ninth && sameDegree(tone, { number: 9, alter: 0 })));
  const first = sixth === undefined ? '' : `add${signed(sixth)}${ninth ? '/9' : ''}`;
  return first + others.map((tone) => `add${signed(tone)}`).join('');
}

function extensionOf(chord: Chord): string {
  const word = seventhWord(chord);
  if (word !== undefined) return seventhChord(chord, word);
  const fifths = alteredFifths(chord).map(signed);
  return suspension(chord) + fifths.join('') + addedTones(chord);
}

const TRIAD_FIGURES: Readonly<Record<number, readonly string[]>> = {
  3: ['6'],
  5: ['6', '4'],
  7: ['4', '2'],
};
const SEVENTH_FIGURES: Readonly<Record<number, readonly string[]>> = {
  3: ['6', '5'],
  5: ['4', '3'],
  7: ['4', '2'],
};

type BassParts = Pick<RomanNumeral, 'extension' | 'figures' | 'bass'>;

const soundsIn = (chord: Chord, bass: NoteName): boolean =>
  chord.tones.some((tone) => sameNote(noteAt(chord.root, tone), bass));

/** A triad over its seventh is the seventh chord in third inversion: G/F is V 4 2 in C. */
function figuresFor(
  chord: Chord,
  degree: Degree,
  extension: string,
): readonly string[] | undefined {
  const seventh = degree.number === 7 && (degree.alter === 0 || degree.alter === -1);
  if (extension === '') {
    const fits = seventh || (chord.bass !== undefined && soundsIn(chord, chord.bass));
    return fits ? TRIAD_FIGURES[degree.number] : undefined;
  }
  const plain = extension === '7' || extension === 'maj7';
  const fits = plain && chord.bass !== undefined && soundsIn(chord, chord.bass);
  return fits ? SEVENTH_FIGURES[degree.number] : undefined;
}

function bassParts(chord: Chord, key: Key): BassParts {
  const extension = extensionOf(chord);
  if (chord.bass === undefined) return { extension, figures: [] };
  const degree = degreeOf(chord.root, chord.bass);
  const figures = figuresFor(chord, degree, extension);
  if (figures === undefined) return { extension, figures: [], bass: degree };
  const expected = isDiatonic(chord, key) || extension !== 'maj7';
  return { extension: expected ? '' : 'maj', figures };
}

const isDiatonic = (chord: Chord, key: Key): boolean => {
  const scale = scaleNotes(key);
  return chord.tones.every((tone) => {
    const note = noteAt(chord.root, tone);
    return scale.some((other) => sameNote(other, note));
  });
};

/** The step that a chord can lead to as to a passing tonic. */
function targetOf(next: Chord, key: Key): RomanTarget | undefined {
  const { number, alter } = stepOf(next.root, key);
  const diminished = number === DIMINISHED_STEP[key.mode] && isDiminished(next);
  if (alter !== 0 || number === 1 || diminished) return undefined;
  return { accidental: 0, numeral: DIATONIC[key.mode][number - 1] ?? 'I' };
}

type Leading = 'V' | 'vii';

function leadingTo(chord: Chord, next: Chord): Leading | undefined {
  const up = semitonesUp(chord.root, next.root);
  if (up === 5 && has(chord, 3) && !has(chord, 7)) return 'V';
  return up === 1 && isDiminished(chord) ? 'vii' : undefined;
}

/** In a blues I7 goes to IV7 without being its dominant. */
const isBlues = (chord: Chord, next: Chord, key: Key): boolean =>
  sameNote(chord.root, key.tonic) && isDominant(chord) && isDominant(next);

function appliedOf(
  chord: Chord,
  key: Key,
  next: Chord | undefined,
): Pick<RomanNumeral, 'numeral' | 'applied'> | undefined {
  if (next === undefined || isDiatonic(chord, key) || isBlues(chord, next, key)) return undefined;
  const numeral = leadingTo(chord, next);
  const applied = targetOf(next, key);
  return numeral === undefined || applied === undefined ? undefined : { numeral, applied };
}

/**
 * The Roman numeral of a chord in a key. Upper case for major and augmented, lower for minor and
 * diminished; in minor III, VI and VII without flats and vii° on the leading tone (Open Music
 * Theory, "Roman numerals"). Sevenths are written as on lead sheets, so the major seventh on I is
 * `Imaj7` where textbooks of common-practice harmony leave it at I7. A chord foreign to the key that
 * goes on to `next` as V or vii° goes to its tonic is named after that: `V7/ii`.
 */
export function romanNumeral(chord: Chord, key: Key, next?: Chord): RomanNumeral {
  const step = stepOfChord(chord, key);
  const parts = { quality: qualityOf(chord), ...bassParts(chord, key) };
  const applied = appliedOf(chord, key, next);
  if (applied !== undefined) return { accidental: 0, ...applied, ...parts };
  const accidental = accidentalOf(chord, step, key);
  return { accidental, numeral: numeralOf(chord, step, key), ...parts };
}

const RAISED: Readonly<Record<string, string>> = { 2: '²', 3: '³', 4: '⁴', 5: '⁵', 6: '⁶' };
const LOWERED: Readonly<Record<string, string>> = { 2: '₂', 3: '₃', 4: '₄', 5: '₅', 6: '₆' };

function makeFigures([top, low]: readonly string[], style: AccidentalStyle): string {
  if (top === undefined) return '';
  if (style === 'ascii') return low === undefined ? top : `${top}/${low}`;
  return (RAISED[top] ?? top) + (low === undefined ? '' : (LOWERED[low] ?? low));
}

function plainSigns(text: string, style: AccidentalStyle): string {
  if (style === 'sign') return text;
  return text.replaceAll('♭', 'b').replaceAll('♯', '#').replaceAll('𝄫', 'bb').replaceAll('𝄪', '##');
}

/** `♭VII`, `vii°7`, `V⁶₅/V`, `Imaj7`; in style `ascii` `bVII`, `V6/5/V`. */
export function makeRoman(roman: RomanNumeral, style: AccidentalStyle = 'sign'): string {
  const { accidental, numeral, quality, extension, figures, bass, applied } = roman;
  const target =
    applied === undefined ? '' : `/${makeAccidentals(applied.accidental, style)}${applied.numeral}`;
  const under = bass === undefined ? '' : `/${plainSigns(signed(bass), style)}`;
  const head = makeAccidentals(accidental, style) + numeral + quality;
  return head + plainSigns(extension, style) + makeFigures(figures, style) + under + target;
}
