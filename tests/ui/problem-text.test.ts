import { describe, expect, it } from 'vitest';
import { type ChartProblem, parseProgression, slotsOf } from '#theory';
import { problemText, slotOf, withSuggestion } from '../../src/ui/problem-text.ts';

const PROBLEM: ChartProblem = {
  code: 'chord',
  line: 1,
  column: 7,
  span: { at: 6, length: 2 },
  found: 'Hm',
  expected: ['a root from A to G'],
  suggestion: 'Bm',
};

describe('problemText', () => {
  it('says what was found, why it is refused and what would have done', () => {
    expect(problemText(PROBLEM)).toBe('“Hm” is no chord symbol: expected a root from A to G');
    expect(problemText({ ...PROBLEM, expected: [] })).toBe('“Hm” is no chord symbol');
    expect(problemText({ ...PROBLEM, expected: ['a', 'b', 'c'] })).toMatch(/expected a or b$/);
  });

  it('names the whole symbol when only a part of it is wrong', () => {
    expect(problemText({ ...PROBLEM, found: 'xyz', expected: [] }, 'C7xyz')).toBe(
      '“xyz” in “C7xyz” is not understood',
    );
  });
});

describe('withSuggestion', () => {
  it('puts the suggestion in the place of what was found', () => {
    expect(withSuggestion('| Am | Hm | C |', { ...PROBLEM, span: { at: 7, length: 2 } })).toBe(
      '| Am | Bm | C |',
    );
  });

  it('leaves the text alone without a suggestion', () => {
    const { suggestion: _none, ...problem } = PROBLEM;
    expect(withSuggestion('| Hm |', problem)).toBe('| Hm |');
  });

  it('makes a chart that can be read from one that could not', () => {
    const text = '| Am | Hm | C |';
    const [problem] = parseProgression(text).problems;
    if (problem === undefined) throw new Error('nothing wrong with Hm');
    const slots = slotsOf(parseProgression(text).chart).map(({ slot }) => slot);
    const whole = slotOf(slots, problem)?.span;
    expect(withSuggestion(text, problem, whole)).toBe('| Am | Bm | C |');
  });
});
