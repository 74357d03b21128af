import { describe, expect, it } from 'vitest';
import { spelledTones } from '../../../src/ui/head/spell.ts';
import { chord } from '../neck/support.ts';

const spelled = (text: string, spelling: 'exact' | 'plain' = 'exact'): string =>
  spelledTones(chord(text), spelling)
    .map(({ degree, note }) => `${degree} ${note}`)
    .join(', ');

describe('spelledTones', () => {
  it('names every tone by degree and note, letter by letter from the root', () => {
    expect(spelled('Gb: R b3 5')).toBe('R G♭, ♭3 B𝄫, 5 D♭');
    expect(spelled('E: R 3 5 b7 #9')).toBe('R E, 3 G♯, 5 B, ♭7 D, ♯9 F𝄪');
  });

  it('marks the bass of a slash chord, and adds it when it is no tone of the chord', () => {
    const bass = (text: string, note: 'G' | 'F'): string => {
      const over = { ...chord(text), bass: { letter: note, alter: 0 } };
      return spelledTones(over, 'exact')
        .map(({ degree, note: name, bass: low }) => `${degree} ${name}${low ? ' bass' : ''}`)
        .join(', ');
    };
    expect(bass('D: R b3 5 b7', 'G')).toBe('R D, ♭3 F, 5 A, ♭7 C, 4 G bass');
    expect(bass('D: R b3 5 b7', 'F')).toBe('R D, ♭3 F bass, 5 A, ♭7 C');
  });

  it('names them plainly where that is asked for', () => {
    expect(spelled('Gb: R b3 5', 'plain')).toMatch(/♭3 A/);
  });
});
