import { type Chord, type Degree, degreeOf, pitchClass, pitchClassOf, semitonesOf } from '#theory';

/** One tone that a grip may hold: its degree, its semitones above the root (0–11), and how dear it is. */
export interface ToneDemand {
  readonly degree: Degree;
  readonly offset: number;
  /** A grip without it is another chord. */
  readonly required: boolean;
  /** What leaving it out costs where it may be left out. */
  readonly absence: number;
}

/** What a chord asks of a grip. `key` is equal for chords that ask the same above their roots. */
export interface Demands {
  readonly key: string;
  readonly tones: readonly ToneDemand[];
  readonly byOffset: readonly (ToneDemand | undefined)[];
  /** Semitones of the lowest tone above the root; 0 unless the symbol names another bass. */
  readonly bass: number;
}

const has = (chord: Chord, number: number, alter = 0): boolean =>
  chord.tones.some((tone) => tone.number === number && tone.alter === alter);

const hasSeventh = (chord: Chord): boolean => chord.tones.some((tone) => tone.number === 7);

/** The natural extension that gives the chord its name: 13 of a thirteenth, 9 of an add9. */
const topExtension = (chord: Chord): number =>
  Math.max(0, ...chord.tones.flatMap((t) => (t.number > 8 && t.alter === 0 ? [t.number] : [])));

/**
 * Third or its replacement, sixth or seventh, every alteration and the naming extension make the
 * chord what it is; a plain fifth may go first (common practice). In a chord named by its eleventh
 * that tone stands for the major third, which is usually left out, being a half step from it; in a
 * thirteenth it is the eleventh that goes (common practice).
 */
function isRequired(chord: Chord, degree: Degree): boolean {
  const { number, alter } = degree;
  if (chord.tones.length <= 2) return true;
  if (number === 1 || alter !== 0) return !(number === 5 && alter === 0);
  if (number === 3) return alter !== 0 || topExtension(chord) !== 11;
  if (number === 5) return false;
  return number < 8 || number === topExtension(chord) || !hasSeventh(chord);
}

/** The eleventh of a thirteenth, a minor ninth above its major third. */
const isAvoided = (chord: Chord, { number, alter }: Degree): boolean =>
  number === 11 && alter === 0 && has(chord, 3) && topExtension(chord) === 13;

/** Beside a tension a half step away the fifth goes first of all (common practice). */
const isCrowded = (chord: Chord): boolean => has(chord, 11, 1) || has(chord, 13, -1);

function absenceOf(chord: Chord, degree: Degree): number {
  if (degree.number === 5 && degree.alter === 0) return isCrowded(chord) ? 1.5 : 4.7;
  if (degree.number === 3) return 0.5;
  return isAvoided(chord, degree) ? 0 : 0.7;
}

function demandOf(chord: Chord, degree: Degree): ToneDemand {
  return {
    degree,
    offset: pitchClass(semitonesOf(degree)),
    required: chord.bass !== undefined && degree.number === 1 ? false : isRequired(chord, degree),
    absence: degree.number === 1 ? 3 : absenceOf(chord, degree),
  };
}

function bassDemand(chord: Chord, tones: readonly ToneDemand[]): ToneDemand | undefined {
  if (chord.bass === undefined) return undefined;
  const offset = pitchClass(pitchClassOf(chord.bass) - pitchClassOf(chord.root));
  if (tones.some((tone) => tone.offset === offset)) return undefined;
  return { degree: degreeOf(chord.root, chord.bass), offset, required: true, absence: 0 };
}

function compute(chord: Chord): Demands {
  const own = chord.tones.map((degree) => demandOf(chord, degree));
  const foreign = bassDemand(chord, own);
  const tones = foreign === undefined ? own : [...own, foreign];
  const byOffset = Array.from({ length: 12 }, (_, offset) =>
    tones.find((tone) => tone.offset === offset),
  );
  const bass =
    chord.bass === undefined ? 0 : pitchClass(pitchClassOf(chord.bass) - pitchClassOf(chord.root));
  const key = `${tones.map((t) => `${t.degree.number},${t.degree.alter}`).join(' ')}/${bass} `;
  return { key, tones, byOffset, bass };
}

const cache = new WeakMap<Chord, Demands>();

/** What a grip of the chord must and may hold; a foreign bass counts as one of its tones. */
export function demandsOf(chord: Chord): Demands {
  const known = cache.get(chord);
  if (known !== undefined) return known;
  const demands = compute(chord);
  cache.set(chord, demands);
  return demands;
}
