import { expect, it } from 'vitest';
import { roman } from '../../src/ui/roman.ts';

it('writes every position of a neck as notation does', () => {
  const numerals = 'I II III IV V VI VII VIII IX X XI XII XIII XIV XV XVI XVII XVIII XIX XX XXI';
  expect(
    numerals
      .split(' ')
      .map((_, i) => roman(i + 1))
      .join(' '),
  ).toBe(numerals);
  expect([24, 27, 39].map(roman)).toEqual(['XXIV', 'XXVII', 'XXXIX']);
});

it('writes what is no position in digits', () => {
  expect([0, -1, 40, 1.5].map(roman)).toEqual(['0', '-1', '40', '1.5']);
});
