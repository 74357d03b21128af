/** Symbols, degrees and notes as one says them, for names that are heard and not seen. */
import { chordSymbolParts, type Degree, isSilent, type NoteName } from '#theory';

/** A chord symbol with its accidentals as signs: `Bbm7b5` is `B♭m7♭5`. */
export const symbolInSigns = (symbol: string): string =>
  isSilent(symbol)
    ? symbol
    : chordSymbolParts(symbol)
        .map((part) => part.text)
        .join('');

const NUMBERS: Readonly<Record<number, string>> = {
  1: 'one',
  2: 'two',
  3: 'three',
  4: 'four',
  5: 'five',
  6: 'six',
  7: 'seven',
  8: 'eight',
  9: 'nine',
  10: 'ten',
  11: 'eleven',
  12: 'twelve',
  13: 'thirteen',
};

type Row = readonly [sign: RegExp, words: string];

/** Directly after the root: before a number these are qualities, further on they alter it. */
const FIRST: readonly Row[] = [
  [/^[-–−](?!5)/u, 'minor'],
  [/^\+(?!5)/u, 'augmented'],
];

/** What the signs of a symbol are called; the first row that fits is taken. */
const SIGNS: readonly Row[] = [
  [/^(?:[Δ△∆^]|j)(?=9|1)/u, 'major'],
  [/^(?:[Δ△∆^]|j)7?/u, 'major seven'],
  [/^(?:major|maj|ma(?!dd))/iu, 'major'],
  [/^M/u, 'major'],
  [/^(?:minor|min|mi|m)/u, 'minor'],
  [/^[-–−](?!\d)/u, 'minor'],
  [/^(?:no|omit)/u, 'no'],
  [/^(?:ø|Ø|h)7?/u, 'half-diminished'],
  [/^(?:dim|[°ºo])/u, 'diminished'],
  [/^(?:aug|\+(?!\d))/u, 'augmented'],
  [/^sus/u, 'sus'],
  [/^add/u, 'add'],
  [/^alt/u, 'altered'],
  [/^(?:##|♯♯|𝄪|x)/u, 'double sharp'],
  [/^(?:bb|♭♭|𝄫)/u, 'double flat'],
  [/^(?:[#♯]|\+(?=\d))/u, 'sharp'],
  [/^(?:[b♭]|[-–−](?=\d))/u, 'flat'],
];

const NUMBER = /^(?:1[0-3]|[1-9])/;
const BASS = /^[/\\]([A-Ga-g].*)$/u;
const ROOT = /^([A-Ga-g])((?:[#♯b♭x]|𝄪|𝄫)*)(.*)$/u;

function bodyAloud(rest: string, rows: readonly Row[]): readonly string[] {
  if (rest === '') return [];
  const bass = BASS.exec(rest)?.[1];
  if (bass !== undefined) return ['over', ...rootAloud(bass)];
  const number = NUMBER.exec(rest)?.[0];
  if (number)
    return [NUMBERS[Number(number)] ?? number, ...bodyAloud(rest.slice(number.length), SIGNS)];
  for (const [sign, words] of rows) {
    const found = sign.exec(rest)?.[0];
    if (found) return [words, ...bodyAloud(rest.slice(found.length), SIGNS)];
  }
  return bodyAloud(rest.slice(1), rows);
}

function rootAloud(text: string): readonly string[] {
  const [, letter = '', accidentals = '', body = ''] = ROOT.exec(text) ?? [];
  if (letter === '') return [text];
  return [
    letter.toUpperCase(),
    ...bodyAloud(accidentals, SIGNS),
    ...bodyAloud(body, [...FIRST, ...SIGNS]),
  ];
}

/** A speakable name for a chord symbol: `Bm7` is “B minor seven”. What cannot be spoken stays as typed. */
export function symbolAloud(symbol: string): string {
  if (isSilent(symbol)) return 'no chord';
  return rootAloud(symbol.trim().replace(/^[([{]/u, '')).join(' ');
}

const ALTERATIONS: Readonly<Record<number, string>> = {
  [-3]: 'triple flat',
  [-2]: 'double flat',
  [-1]: 'flat',
  1: 'sharp',
  2: 'double sharp',
  3: 'triple sharp',
};

/** “flat three”, “sharp nine”, “root”. */
export function degreeAloud({ number, alter }: Degree): string {
  if (number === 1 && alter === 0) return 'root';
  return `${ALTERATIONS[alter] ?? ''} ${NUMBERS[number] ?? number}`.trim();
}

/** “F sharp”, “B double flat”. */
export const noteAloud = ({ letter, alter }: NoteName): string =>
  `${letter} ${ALTERATIONS[alter] ?? ''}`.trim();
