import { describe, expect, it } from 'vitest';
import { formPlace, lowestFret, shareUnder } from '../../src/ui/form-text.ts';
import { read } from './neck/support.ts';

describe('formPlace', () => {
  it('says at which fret a form begins, or that it is open', () => {
    const placed = read('B: R b3 5 b7', 7).chosen;
    const open = read('C: R 3 5', 1).forms.find(({ anchor }) => Number(anchor) === 0);
    if (!placed || !open) throw new Error('no form at hand');
    expect([lowestFret(placed), formPlace(placed)]).toEqual([7, 'VII']);
    expect([lowestFret(open), formPlace(open)]).toEqual([0, 'open']);
  });
});

describe('shareUnder', () => {
  it('is the part of the grip that the hand has, and nothing of no grip', () => {
    const form = read('B: R b3 5 b7', 7).chosen;
    if (!form) throw new Error('no form at hand');
    expect(shareUnder({ ...form, under: 3, of: 6 })).toBe(0.5);
    expect(shareUnder({ ...form, under: 0, of: 0 })).toBe(0);
  });
});
