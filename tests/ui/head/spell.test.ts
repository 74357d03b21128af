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

  it('names them plainly where that is asked for', () => {
    expect(spelled('Gb: R b3 5', 'plain')).toMatch(/♭3 A/);
  });
});
