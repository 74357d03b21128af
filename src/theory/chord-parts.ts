/** A chord symbol taken apart for setting it in type. */
import { readFrame } from './chord-frame.ts';
import { typedOffset } from './chord-text.ts';
import { parseChord } from './chords.ts';

export const PART_ROLES = ['root', 'accidental', 'body', 'raised', 'slash', 'bass'] as const;
export type PartRole = (typeof PART_ROLES)[number];

/** A run of characters set alike. `accidental` follows a root or a bass. */
export interface SymbolPart {
  readonly text: string;
  readonly role: PartRole;
}

/** `b` and `#` as signs where they are accidentals: before a number, or doubled, or behind one. */
const withSigns = (text: string): string =>
  text
    .replace(/bb(?=\d)/g, '𝄫')
    .replace(/##(?=\d)/g, '𝄪')
    .replace(/b(?=\d)|(?<=\d)b(?!\w)/g, '♭')
    .replace(/#/g, '♯');

const accidentalSigns = (text: string): string =>
  text.replace(/bb/g, '𝄫').replace(/##|x/g, '𝄪').replace(/b/g, '♭').replace(/#/g, '♯');

/** Letters such as `m`, `maj`, `sus` stand on the line; from the first number on all is raised. */
function qualityTexts(quality: string): readonly [body: string, raised: string] {
  const raisedFrom = quality.search(/[\d#♯♭([{¹²³⁴-⁹₀-₉]|b(?=\d)/u);
  const at = raisedFrom < 0 ? quality.length : raisedFrom;
  return [quality.slice(0, at), withSigns(quality.slice(at))];
}

/** The runs of every symbol, those that one lacks too. */
const ROLES: readonly PartRole[] = [
  'body',
  'root',
  'accidental',
  'body',
  'raised',
  'slash',
  'bass',
  'accidental',
  'raised',
  'body',
];

/**
 * As `chordSymbolParts`, with the runs that a symbol lacks as empty ones: always as many, with the same
 * roles in the same order.
 */
export function chordSymbolSlots(symbol: string): readonly SymbolPart[] {
  const texts = textsOf(symbol);
  return ROLES.map((role, i) => ({ role, text: texts[i] ?? '' }));
}

/** The texts of the runs, as `ROLES` has them. */
function textsOf(symbol: string): readonly string[] {
  const frame = readFrame(symbol);
  if (!frame.ok || !parseChord(symbol).ok) return [symbol];
  const { plain, rootFrom, qualityFrom, qualityTo, bass, tail } = frame.value;
  const cut = (from: number, to = plain.text.length) =>
    symbol.slice(typedOffset(plain, from), typedOffset(plain, to));
  return [
    cut(0, rootFrom),
    cut(rootFrom, rootFrom + 1),
    accidentalSigns(cut(rootFrom + 1, qualityFrom)),
    ...qualityTexts(cut(qualityFrom, qualityTo)),
    bass ? cut(bass.slash, bass.from) : '',
    bass ? cut(bass.from, bass.from + 1) : '',
    bass ? accidentalSigns(cut(bass.from + 1, bass.to)) : '',
    bass && tail ? withSigns(cut(bass.to, tail.to)) : '',
    cut(tail?.to ?? bass?.to ?? qualityTo),
  ];
}

/**
 * The runs of a typed symbol, from left to right, accidentals as signs: `F#m7b5/E` → F (root),
 * ♯ (accidental), m (body), 7♭5 (raised), / (slash), E (bass). Nothing typed is lost; a symbol that
 * cannot be read is one run of `body`.
 */
export const chordSymbolParts = (symbol: string): readonly SymbolPart[] =>
  chordSymbolSlots(symbol).filter(({ text }) => text !== '');
