import { describe, expect, it } from 'vitest';
import {
  formName,
  formPlace,
  lowestFret,
  shareInWords,
  shareUnder,
} from '../../src/ui/form-text.ts';
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

describe('formName', () => {
  it.each([
    ['E', 'E'],
    ['Eb', 'E♭'],
    ['F#', 'F♯'],
    ['Bbb', 'B♭♭'],
    ['Drop b', 'Drop b'],
  ])('writes %s as %s', (name, expected) => {
    expect(formName({ name })).toBe(expected);
  });
});

describe('shareInWords', () => {
  it('counts places', () => {
    const form = read('B: R b3 5 b7', 7).chosen;
    if (!form) throw new Error('no form at hand');
    expect(shareInWords({ ...form, under: 3, of: 6 })).toBe('3 of 6 places');
    expect(shareInWords({ ...form, under: 1, of: 1 })).toBe('1 of 1 place');
  });
});
