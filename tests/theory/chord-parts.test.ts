import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chordSymbolParts } from '#theory';

/** `root:C raised:7`. */
const shown = (symbol: string): string =>
  chordSymbolParts(symbol)
    .map(({ text, role }) => `${role}:${text}`)
    .join(' ');

/** Signs and letters of accidentals taken as one. */
const plain = (text: string): string =>
  text
    .replaceAll('♭', 'b')
    .replaceAll('♯', '#')
    .replaceAll('𝄫', 'bb')
    .replaceAll('𝄪', '##')
    .replaceAll('x', '##');

describe('A symbol taken apart for setting', () => {
  it.each([
    ['C', 'root:C'],
    ['F#m7b5/E', 'root:F accidental:♯ body:m raised:7♭5 slash:/ bass:E'],
    ['Bbmaj7#11', 'root:B accidental:♭ body:maj raised:7♯11'],
    ['C7sus4', 'root:C raised:7sus4'],
    ['Csus4', 'root:C body:sus raised:4'],
    ['Gsus', 'root:G body:sus'],
    ['E7(b9,#11)', 'root:E raised:7(♭9,♯11)'],
    ['Am/G#', 'root:A body:m slash:/ bass:G accidental:♯'],
    ['D/f#', 'root:D slash:/ bass:f accidental:♯'],
    ['Ebb', 'root:E accidental:𝄫'],
    ['F##m', 'root:F accidental:𝄪 body:m'],
    ['C79b', 'root:C raised:79♭'],
    ['C6/9', 'root:C raised:6/9'],
    ['C°7', 'root:C body:° raised:7'],
    ['A♭Δ', 'root:A accidental:♭ body:Δ'],
    ['Csusb9', 'root:C body:sus raised:♭9'],
    ['C:(b3,bb7)', 'root:C body:: raised:(♭3,𝄫7)'],
    ['(Dm7)', 'body:( root:D body:m raised:7 body:)'],
    ['C*', 'root:C body:*'],
    ['D/F#(addb9)', 'root:D slash:/ bass:F accidental:♯ raised:(add♭9)'],
    ['B flat7', 'root:B accidental: flat raised:7'],
    ['Hm7', 'body:Hm7'],
    ['N.C.', 'body:N.C.'],
    ['', ''],
  ])('%s is %s', (symbol, parts) => {
    expect(shown(symbol)).toBe(parts);
  });

  it('loses nothing that was typed', () => {
    const pieces = 'C F# Bb m maj 7 b9 #11 sus4 /E / ( ) add x ° ♭5 \t*'.split(' ');
    fc.assert(
      fc.property(fc.array(fc.constantFrom(...pieces), { maxLength: 6 }), (words) => {
        const symbol = words.join('');
        const text = chordSymbolParts(symbol)
          .map((part) => part.text)
          .join('');
        expect(plain(text)).toBe(plain(symbol));
      }),
    );
  });

  it('has no empty part', () => {
    for (const symbol of ['C', 'Cm', 'C/E', 'C7', '(C)']) {
      expect(chordSymbolParts(symbol).every((part) => part.text !== '')).toBe(true);
    }
  });
});
