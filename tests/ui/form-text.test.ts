import { describe, expect, it } from 'vitest';
import { formReason, STANDARD_GUITAR } from '#neck';
import {
  formName,
  formPlace,
  lowestFret,
  shareInWords,
  shareUnder,
  stringsInWords,
} from '../../src/ui/form-text.ts';
import { whyInWords } from '../../src/ui/why-words.ts';
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

describe('whyInWords', () => {
  const why = (text: string, position: number): string => {
    const { chosen } = read(text, position);
    return chosen ? whyInWords(chosen, formReason(chosen, STANDARD_GUITAR)) : '';
  };

  it.each([
    ['A: R 3 5', 5, 'open E shape 5 frets up, barred, root on strings 6, 4 and 1'],
    ['C: R 3 5', 1, 'open C shape, root on strings 5 and 2'],
    ['B: R 3 5 b7 9', 1, 'open C shape 1 fret down, root on string 5'],
    ['C: R 3 b7 #9', 2, 'open C shape, no string open, root on string 5'],
    ['F: R 3 5', 1, 'open E shape 1 fret up, barred, root on strings 6, 4 and 1'],
    ['E: R 3 b7 #9', 6, 'open C shape 4 frets up, its nut IV unused, root on string 5'],
    ['G: R 3 5 b7 b9', 9, 'open C shape 7 frets up, its nut VII unused, root on string 5'],
  ])('of %s at %i says %s', (text, position, words) => {
    expect(why(text, position)).toBe(words);
  });

  it('says of a form of one’s own only where its root is', () => {
    const { chosen } = read('A: R 3 5', 5);
    if (!chosen) throw new Error('no form at hand');
    const bass = { number: 1, alter: 0 };
    const own = { ...chosen, form: { ...chosen.form, own: { bass, rootless: false } } };
    expect(whyInWords(own, formReason(own, STANDARD_GUITAR))).toBe('root on strings 6, 4 and 1');
  });
});

describe('stringsInWords', () => {
  it('counts them', () => {
    const words = [[5], [5, 2], [6, 4, 1]].map(stringsInWords);
    expect(words).toEqual(['string 5', 'strings 5 and 2', 'strings 6, 4 and 1']);
  });
});
