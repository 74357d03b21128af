import { describe, expect, it } from 'vitest';
import { shownBars, shownProblems, shownSections } from './chart-short.ts';

describe('names of passages', () => {
  it.each([
    ['[Verse]\n| C | F |\n[Chorus]\n| G |', 'Verse: 2, Chorus: 1'],
    ['Verse:\n| C |\nCHORUS\n| G |', 'Verse: 1, CHORUS: 1'],
    ['Verse 2\nC G\nPre-Chorus\nF', 'Verse 2: 2, Pre-Chorus: 1'],
    ["A\n| C |\nB'\n| G |\nA1\n| F |", "A: 1, B': 1, A1: 1"],
    ['A: | C | F |\n[B] | G |', 'A: 2, B: 1'],
    ['Verse: C G Am F', 'Verse: 4'],
    ['Intro | C | F |', 'Intro: 2'],
    ['Solo C G', 'Solo: 2'],
    ['(Intro)\n| C |', 'Intro: 1'],
    ['== Bridge ==\n| C |', 'Bridge: 1'],
    ['Guitar solo\nAm G', 'Guitar solo: 2'],
    ['Slow blues\n| C7 |', 'Slow blues: 1'],
    ['Swing feel | C | F |', 'Swing feel: 2'],
    ['Verse 1 (quiet)\nC G', 'Verse 1 (quiet): 2'],
    ['| C |\n[Coda]\n| F |', '-: 1, Coda: 1'],
    ['Coda\n| F |', 'Coda: 1'],
    ['A section\n| C |\nB section\n| F |', 'A section: 1, B section: 1'],
    ['A)\n| C |', 'A: 1'],
    ['Waltz 3/4\n| C |', 'Waltz: 1'],
    ['[Solo]', 'Solo: 0'],
    ['[Verse] | C |', 'Verse: 1'],
  ])('%j has %s', (text, sections) => {
    expect(shownSections(text)).toBe(sections);
    expect(shownProblems(text)).toBe('');
  });

  it('are not found in chords', () => {
    expect(shownBars('A\nC F')).toBe('A | C | F');
    expect(shownBars('[A] [D] [E]')).toBe('A | D | E');
    expect(shownBars('| A | D |')).toBe('A | D');
    expect(shownBars('Am: | C |')).toBe('Am | C');
    expect(shownBars('C# | C |')).toBe('C# | C');
    expect(shownBars('C#\n| C |')).toBe('C# | C');
    expect(shownBars('B-\n| C |')).toBe('B- | C');
    expect(shownBars('F#: C')).toBe('F# | C');
  });
});

describe('lines that are no bars', () => {
  it.each([
    ['Chorus x2\nC G', 'Chorus: 2', 'repeat 1:8 x2'],
    ['[C]Row the boat and [G]sing', '-: 2', 'word 1:1 [C]Row the boat and [G]sing'],
    ['{title: Mine}\nC', '-: 1', 'word 1:1 {title: Mine}'],
    ['Tempo 120\nC', '-: 1', 'word 1:1 Tempo 120'],
    ['Capo 2\nC', '-: 1', 'word 1:1 Capo 2'],
  ])('%j: %s', (text, sections, problems) => {
    expect(shownSections(text)).toBe(sections);
    expect(shownProblems(text)).toBe(problems);
  });
});
