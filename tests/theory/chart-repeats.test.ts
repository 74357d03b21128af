import { describe, expect, it } from 'vitest';
import { barsOf } from '#theory';
import { chartOf, shownBars, shownPlay, shownProblems } from './chart-short.ts';

describe('repeats', () => {
  it.each([
    ['|: C | F :| G |', 'C F C F G'],
    ['| C |: F | G :|', 'C F G F G'],
    ['| C | F :| G |', 'C F C F G'],
    ['| C :| F :| G', 'C C F F G'],
    ['|: C :|: F :|', 'C C F F'],
    ['||: C | F :||', 'C F C F'],
    ['𝄆 C ┃ F 𝄇', 'C F C F'],
    ['‖: C | F :‖', 'C F C F'],
    ['| : C | F : |', 'C F C F'],
    ['|: C :| x3', 'C C C'],
    ['|: C :|x3 F |', 'C C C F'],
    ['|: C :| 3x', 'C C C'],
    ['|:C:|3x', 'C C C'],
    ['|: C :| ×3', 'C C C'],
    ['|: C :| (x3)', 'C C C'],
    ['|: C :| 3 times', 'C C C'],
    ['|: C x3 :|', 'C C C'],
    ['C G x2\nF', 'C G C G F'],
    ['| C | G | x2\n| F |', 'C G C G F'],
    ['| A |\n| C | G | x2', 'A C G C G'],
  ])('%j is played %s', (text, play) => {
    expect(shownPlay(text)).toBe(play);
    expect(shownProblems(text)).toBe('');
  });

  it.each([
    ['|: C |: F :|', 'repeat 1:6 |:', 'C | F'],
    ['|: C |1. F |: G :|', 'repeat 1:12 |:', 'C | F | G'],
    ['|: C | F', 'repeat 1:1 |:', 'C | F'],
    ['| C |\n|:', 'repeat 2:1 |:', 'C'],
    [':| C |', 'repeat 1:1 :|', 'C'],
    ['|: C :|x1 F', 'repeat 1:8 x1', 'C | F'],
    ['|: C :|x100 F', 'repeat 1:8 x100', 'C | F'],
    ['| C x2 F |', 'repeat 1:5 x2', 'C 3:F'],
  ])('%j: %s', (text, problems, bars) => {
    expect(shownProblems(text)).toBe(problems);
    expect(shownBars(text)).toBe(bars);
  });
});

describe('endings', () => {
  it.each([
    ['|: C | F |1. G :|2. Am |', 'C F G C F Am'],
    ['|: C | F |1 G :|2 Am |', 'C F G C F Am'],
    ['|: C | F |[1. G :|[2. Am |', 'C F G C F Am'],
    ['|: C | F | 1. G :| 2. Am |', 'C F G C F Am'],
    ['|: C | F |1st G :|2nd Am |', 'C F G C F Am'],
    ['|: C |1.F :|2.G |', 'C F C G'],
    ['| C |1. F :|2. G |', 'C F C G'],
    ['|: C |1. F :|2. G :| D', 'C F C G D'],
    ['|: C |1. F |2. G | D', 'C F C G D'],
    ['|: C |1,2. F :|3. G |', 'C F C F C G'],
    ['|: C |1, 2. F :|3. G |', 'C F C F C G'],
    ['|: C |1-3. F :|4. G |', 'C F C F C F C G'],
    ['|: C |1. F :| G |', 'C F C G'],
    ['|: C |1. F :|2. G || D | E :|', 'C F C G D E D E'],
    ['| C |1. F :|2. G || D |1. E :|2. A |', 'C F C G D E D A'],
    ['|: C |1. F || G :|2. A |', 'C F G C A'],
    ['|: C |1. F | Bb :|2. G | A || D |', 'C F Bb C G A D'],
  ])('%s is played %s', (text, play) => {
    expect(shownPlay(text)).toBe(play);
    expect(shownProblems(text)).toBe('');
  });

  it.each([
    ['|: C |2. F :|', 'ending 1:7 2.'],
    ['|: C |1. F :|3. G |', 'ending 1:14 3.'],
    ['|: C |1. F :|1. G |', 'ending 1:14 1.'],
    ['|: C |2,1. F :|', 'ending 1:7 2,1.'],
    ['| C |1. |', 'ending 1:6 1.'],
    ['C 2. F', 'ending 1:3 2.'],
  ])('%j: %s', (text, problems) => expect(shownProblems(text)).toBe(problems));

  it('stand on the bar with which they begin', () => {
    const endings = barsOf(chartOf('|: C |1,2. F | G :|3. A |')).map(({ ending }) => ending);
    expect(endings).toEqual([undefined, [1, 2], undefined, [3]]);
  });
});
