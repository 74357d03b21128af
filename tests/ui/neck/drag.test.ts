import { expect, it } from 'vitest';
import { draggedTo } from '../../../src/ui/neck/drag.ts';

it.each([
  ['taken at the index', 9, 0, 9],
  ['taken at the little finger', 9, 3, 6],
  ['dragged beyond the nut', 1, 3, 1],
  ['dragged beyond the last fret', 30, 0, 22],
])('puts the hand where the pointer wants it: %s', (_, fret, grabbed, expected) => {
  expect(draggedTo(fret, grabbed, 22)).toBe(expected);
});
