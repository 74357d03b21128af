import { expect, it } from 'vitest';
import { numberOf } from '../../../src/ui/settings/number.ts';

it('reads numbers as people type them, and nothing as no number', () => {
  expect([' 22 ', '647,7', '628.65', '', '  ', 'x'].map(numberOf)).toEqual([
    22,
    647.7,
    628.65,
    Number.NaN,
    Number.NaN,
    Number.NaN,
  ]);
});
