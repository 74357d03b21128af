import { describe, expect, it } from 'vitest';
import { type Chord, parseChord, parseProgression } from '#theory';
import {
  cellAt,
  cellAtOffset,
  cellsOf,
  momentOf,
  nextOf,
  nextWords,
  sameChord,
  withForms,
  withNumerals,
} from '../../../src/ui/store/lane.ts';

const chartOf = (text: string) => parseProgression(text).chart;
const cellsIn = (text: string) => cellsOf(chartOf(text), []);

function chord(symbol: string): Chord {
  const read = parseChord(symbol);
  if (!read.ok) throw new Error(`not a chord: ${symbol}`);
  return read.value;
}

describe('cells', () => {
  it('that are equal are taken over, those that moved are not', () => {
    const before = cellsIn('| C | G | Am |');
    const after = cellsOf(chartOf('| C | G7 | Am |'), before);
    expect(after.map((cell, i) => cell === before[i])).toEqual([true, false, false]);
  });

  it('that cannot be read carry the problem of the text as it is now', () => {
    const before = cellsIn('C\nHm');
    const [, after] = cellsOf(chartOf('C\nHm'), before);
    expect(after).not.toBe(before[1]);
    expect(after?.problem).toMatchObject({ line: 2, column: 1 });
  });

  it('begin at a moment that leads back to them', () => {
    const cells = cellsIn('6/8\n| C F G | Am / Dm / E / |\n3/4\n| N.C. | % |');
    expect(cells.map((cell) => cellAt(cells, momentOf(cell)))).toEqual(cells.map((_, i) => i));
  });

  it('are not written anew where numeral and form stay', () => {
    const cells = cellsIn('C G');
    const key = { tonic: { letter: 'C', alter: 0 }, mode: 'major' } as const;
    const numbered = withNumerals(cells, [1, -1], key);
    const again = withNumerals(numbered, [1, -1], { ...key });
    expect(again.map((cell, i) => cell === numbered[i])).toEqual([true, true]);
    expect(withNumerals(numbered, [1, -1], undefined)).toEqual(cells);
    expect(withForms(cells, () => ({}))).toBe(cells);
  });
});

describe('the cell at a caret', () => {
  it.each([
    ['| C G |', 0, -1],
    ['| C G |', 2, 0],
    ['| C G |', 3, 0],
    ['| C G |', 4, 1],
    ['| C G |', 99, 1],
    ['| C G | % |', 8, 2],
    ['', 0, -1],
  ])('in %j at %i is %i', (text, caret, index) => {
    expect(cellAtOffset(cellsIn(text), caret)).toBe(index);
  });
});

describe('the next other chord in playing order', () => {
  it.each([
    ['C G Am', [1, 2, -1]],
    ['C C G', [2, 2, -1]],
    ['C N.C. G', [2, 2, -1]],
    ['C Hm G', [2, 2, -1]],
    ['| C | % | G |', [2, 2, -1]],
    ['|: C | G :|', [1, 0]],
    ['|: C | G :| Am |', [1, 0, -1]],
    ['|: C |1. G :|2. F | Am |', [1, 0, 3, -1]],
    ['', []],
  ])('in %j', (text, next) => {
    expect(nextOf(chartOf(text), cellsIn(text))).toEqual(next);
  });
});

describe('how the next chord is come to', () => {
  const CHART =
    '|: C | G/B Am7 | Dm7 | G7sus4 G7b9 |1. Em7 | Ebdim7 :|2. C6 | N.C. | Bm7 | C | C | F |';

  it.each([
    ['C', 0, 'Next'],
    ['Ebdim7', 7, 'Next, by the repeat'],
    ['C6', 8, 'Next, after N.C.'],
    ['the first of two', 11, 'Next other chord'],
  ])('from %s', (_what, from, words) => {
    const cells = cellsIn(CHART);
    expect(nextWords(cells, from, nextOf(chartOf(CHART), cells)[from] ?? -1)).toBe(words);
  });

  it('is the next ending when it is played for the last time', () => {
    expect(nextWords(cellsIn(CHART), 5, 8)).toBe('Next, by the ending');
  });
});

describe('chords are the same', () => {
  it.each([
    ['Am7', 'A-7', true],
    ['C', 'C/C', true],
    ['C', 'C/E', false],
    ['C/E', 'C/G', false],
    ['C/E', 'C/E', true],
    ['C', 'Cm', false],
    ['C', 'C6', false],
    ['F#', 'Gb', false],
  ])('%s and %s: %s', (a, b, same) => {
    expect(sameChord(chord(a), { ...chord(b) })).toBe(same);
  });
});
