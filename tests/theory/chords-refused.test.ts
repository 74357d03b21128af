import { describe, expect, it } from 'vitest';
import { parseChord } from '#theory';
import { sounding } from './short.ts';

describe('Tokens that stay errors', () => {
  it.each([
    // Two chords at once are no chord over a bass.
    ['D/C7', 'bass', 2, 'D/C'],
    ['C/Gsus4', 'bass', 2, 'C/G'],
    ['C/E/G', 'bass', 2, 'C/E'],
    ['Am7/D/G', 'bass', 4, 'Am7/D'],
    ['C|D', 'quality', 2, undefined],
    ['/G', 'root', 0, undefined],
    // Note names of other languages, and small letters, which may mean minor or a lone bass.
    ['Fis', 'quality', 1, 'F#'],
    ['H7', 'root', 0, 'B7'],
    ['Asm', 'quality', 1, 'Abm'],
    ['Rém', 'root', 0, 'Dm'],
    ['am7', 'root', 0, 'Am7'],
    // A sharp written s, as in tags without #; As and Es are German flats.
    ['Fs', 'quality', 1, 'F#'],
    ['Csmin7', 'quality', 1, 'C#min7'],
    ['D/Fs', 'bass', 2, 'D/F#'],
    // Slips and leftovers.
    ['C7at', 'quality', 2, 'C7alt'],
    ['C%', 'quality', 1, undefined],
    ['C/E+', 'bass', 2, 'C/E'],
    ['CBass', 'quality', 1, undefined],
    ['Con', 'quality', 2, undefined],
    ['C::', 'quality', 2, undefined],
    ['C:maj(*1)', 'tension', 6, undefined],
    ['C:N', 'quality', 2, undefined],
    ['X', 'root', 0, undefined],
    ['None', 'root', 0, undefined],
    ['Bond', 'quality', 2, undefined],
    ['?', 'empty', 0, undefined],
    ['C7sus4-3', 'quality', 6, 'C7sus4'],
    ['C^7#', 'tension', 3, 'C^7'],
    ['Cm7(maj7)', 'conflict', 4, 'Cm(maj7)'],
    ['C7b10', 'tension', 3, 'C7b13'],
  ] as const)('%s fails as %s at %d', (token, code, at, suggestion) => {
    const result = parseChord(token);
    if (result.ok) throw new Error(`was read as ${sounding(token)}`);
    expect(result.error).toMatchObject({ code, at });
    expect(result.error.suggestion).toBe(suggestion);
    expect(result.error.expected.length).toBeGreaterThan(0);
  });
});
