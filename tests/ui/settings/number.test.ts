import { expect, it } from 'vitest';
import {
  gaugesText,
  numberOf,
  readGauges,
  readNumber,
  stepped,
} from '../../../src/ui/settings/number.ts';

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

it('quotes what was typed instead of a number, and says what is expected', () => {
  const said = (text: string): number | string => {
    const result = readNumber(text, 'a fret');
    return result.ok ? result.value : result.error;
  };
  expect(['12', ' ', 'abc', '1x'].map(said)).toEqual([
    12,
    'Nothing is typed: expected a fret',
    '“abc”: expected a fret',
    '“1x”: expected a fret',
  ]);
});

it('takes gauges with the thickest string first and gives them with string 1 first', () => {
  expect(readGauges('46 36, 26', 3, '3 gauges')).toEqual({ ok: true, value: [26, 36, 46] });
  expect(gaugesText([26, 36, 46])).toBe('46 36 26');
});

it.each([
  ['46 x 26', '“x”: expected 3 gauges'],
  ['46 36', '“46 36”: expected 3 gauges'],
  ['', 'Nothing is typed: expected 3 gauges'],
])('refuses the gauges %j', (text, error) => {
  expect(readGauges(text, 3, '3 gauges')).toEqual({ ok: false, error });
});

it('steps from a number to the next within its range, and not from anything else', () => {
  const range = { min: 12, max: 27 };
  expect([stepped('22', 1, range), stepped('27', 1, range), stepped('3', -1, range)]).toEqual([
    '23',
    '27',
    '12',
  ]);
  expect(stepped('x', 1, range)).toBeUndefined();
});
