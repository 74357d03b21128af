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
function qualityParts(quality: string): readonly SymbolPart[] {
  const raisedFrom = quality.search(/[\d#♯♭([{¹²³⁴-⁹₀-₉]|b(?=\d)/u);
  const at = raisedFrom < 0 ? quality.length : raisedFrom;
  return [
    { text: quality.slice(0, at), role: 'body' },
    { text: withSigns(quality.slice(at)), role: 'raised' },
  ];
}

/**
 * The runs of a typed symbol, from left to right, accidentals as signs: `F#m7b5/E` → F (root),
 * ♯ (accidental), m (body), 7♭5 (raised), / (slash), E (bass). Nothing typed is lost; a symbol that
 * cannot be read is one run of `body`.
 */
export function chordSymbolParts(symbol: string): readonly SymbolPart[] {
  const frame = readFrame(symbol);
  if (!frame.ok || !parseChord(symbol).ok)
    return symbol === '' ? [] : [{ text: symbol, role: 'body' }];
  const { plain, rootFrom, qualityFrom, qualityTo, bass, tail } = frame.value;
  const cut = (from: number, to = plain.text.length) =>
    symbol.slice(typedOffset(plain, from), typedOffset(plain, to));
  const parts: readonly SymbolPart[] = [
    { text: cut(0, rootFrom), role: 'body' },
    { text: cut(rootFrom, rootFrom + 1), role: 'root' },
    { text: accidentalSigns(cut(rootFrom + 1, qualityFrom)), role: 'accidental' },
    ...qualityParts(cut(qualityFrom, qualityTo)),
    { text: bass ? cut(bass.slash, bass.from) : '', role: 'slash' },
    { text: bass ? cut(bass.from, bass.from + 1) : '', role: 'bass' },
    { text: bass ? accidentalSigns(cut(bass.from + 1, bass.to)) : '', role: 'accidental' },
    { text: bass && tail ? withSigns(cut(bass.to, tail.to)) : '', role: 'raised' },
    { text: cut(tail?.to ?? bass?.to ?? qualityTo), role: 'body' },
  ];
  return parts.filter(({ text }) => text !== '');
}
