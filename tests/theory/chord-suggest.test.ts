import { describe, expect, it } from 'vitest';
import { parseChord } from '#theory';

const suggestion = (symbol: string): string | undefined => {
  const result = parseChord(symbol);
  if (result.ok) throw new Error(`${symbol} can be read`);
  return result.error.suggestion;
};

describe('What was probably meant', () => {
  it.each([
    // Other languages' note names (common practice).
    ['Hm', 'Bm'],
    ['H7', 'B7'],
    ['As', 'Ab'],
    ['Es', 'Eb'],
    ['Cis7', 'C#7'],
    ['Fism', 'F#m'],
    ['Ges', 'Gb'],
    ['do', 'C'],
    ['solm7', 'Gm7'],
    ['lam', 'Am'],
    ['♭B7', 'Bb7'],
    ['#Fm', 'F#m'],
    // Small letters.
    ['am', 'Am'],
    ['em7', 'Em7'],
    ['f#m7b5', 'F#m7b5'],
    // Slips of the pen.
    ['B°b', 'Bb°'],
    ['Csuz4', 'Csus4'],
    ['Cmaaj7', 'Cmaj7'],
    ['Cmjaor', 'Cmajor'],
    ['Cmjaor7', 'Cmajor7'],
    ['Dmi nor', 'Dminor'],
    ['Gdmi7', 'Gdim7'],
    ['Amm7', 'Am7'],
    ['Ebmja7/G', 'Ebmaj7/G'],
    // Too much, too little.
    ['C7xyz', 'C7'],
    ['Cmaj7foo', 'Cmaj7'],
    ['Amin7xx/G', 'Amin7/G'],
    ['C7(b9', 'C7(b9)'],
    ['C7b9)', 'C7b9'],
    ['C7()', 'C7'],
    ['C/H', 'C/B'],
    ['C/', 'C'],
    ['C,D', 'C'],
    ['C4-3', 'C4'],
    ['C7-4', 'C7'],
    ['BB7', 'Bb7'],
    ['C7B9', 'C7b9'],
  ])('by %s is %s', (symbol, meant) => {
    expect(suggestion(symbol)).toBe(meant);
    expect(parseChord(meant).ok).toBe(true);
  });

  it.each([
    '',
    'Xm',
    'C3',
    'C8',
    'Chorus',
    'Coda',
    'Dal',
    'Bridge',
    'The',
    'and',
    'End',
    'Fine',
    '?',
  ])('by %j is not known', (symbol) => {
    expect(suggestion(symbol)).toBeUndefined();
  });
});
