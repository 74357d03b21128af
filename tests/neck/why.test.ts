import { describe, expect, it } from 'vitest';
import {
  bassBeyondHand,
  formReason,
  formsOf,
  formWithoutGrip,
  mutedWithin,
  sameGripAs,
} from '#neck';
import { GUITAR, gripOf, instrument, reading } from './support.ts';

const reasonAt = (symbol: string, position: number, form: string, on = GUITAR) => {
  const { chosen } = reading(symbol, position, { form, on });
  if (chosen === undefined) throw new Error(`no ${form} form of ${symbol}`);
  return formReason(chosen, on);
};

describe('why a form is called so', () => {
  it.each([
    ['C', [5, 2]],
    ['A', [5, 3]],
    ['G', [6, 3, 1]],
    ['E', [6, 4, 1]],
    ['D', [4, 2]],
  ])('the %s form has its root on strings %j (DOMAIN, the five forms)', (form, roots) => {
    expect(reasonAt(form, 1, form)).toEqual({ roots, up: 0, barre: false });
  });

  it('counts the frets from the open shape and tells of a barre in the place of its nut', () => {
    expect(reasonAt('C', 8, 'E')).toEqual({ roots: [6, 4, 1], up: 8, barre: true });
    expect(reasonAt('A', 7, 'D')).toEqual({ roots: [4, 2], up: 7, barre: false });
  });

  it('names only the strings that hold the root in this very grip', () => {
    expect(reasonAt('E7#9', 6, 'C').roots).toEqual([5]);
  });

  it('counts from the capo, where the shape is open again', () => {
    const capo = instrument({ capo: 3 });
    expect(reasonAt('Eb', 4, 'C', capo)).toEqual({ roots: [5, 2], up: 0, barre: false });
    expect(reasonAt('F', 5, 'C', capo)).toMatchObject({ up: 2 });
  });

  it('holds in another tuning for its own open chords', () => {
    const openG = instrument({ tuning: 'D2-G2-D3-G3-B3-D4' });
    expect(formsOf(openG).some(({ name }) => name === 'G')).toBe(true);
    expect(reasonAt('A', 2, 'G', openG)).toEqual({ roots: [5, 3], up: 2, barre: true });
  });
});

describe('the strings within a grip that must not sound', () => {
  it('are those between its outermost', () => {
    expect(mutedWithin(gripOf('Dm7', 'G', 7))).toEqual([2]);
    expect(mutedWithin(gripOf('E7#9', 'C', 4))).toEqual([]);
    expect(mutedWithin(gripOf('D9sus4', 'G', 7))).toEqual([5]);
  });
});

describe('a form under the hand without a grip', () => {
  it('is told apart from the one that is shown', () => {
    const a = reading('A7#9#5', 7);
    expect(a.chosen?.form.name).toBe('E');
    expect(formWithoutGrip(a)?.form.name).toBe('D');
    expect(formWithoutGrip(reading('A7', 7))).toBeUndefined();
    expect(formWithoutGrip(reading('A7#9#5', 7, { form: 'D' }))).toBeUndefined();
  });
});

describe('a named bass', () => {
  it('is beyond the hand where its place in the grip is', () => {
    expect(bassBeyondHand(reading('C13/E', 7, { form: 'E' }))).toMatchObject({
      string: 6,
      fret: 12,
    });
    expect(bassBeyondHand(reading('C13/E', 8, { form: 'E' }))).toBeUndefined();
    expect(bassBeyondHand(reading('C7/E', 7, { form: 'E' }))).toBeUndefined();
    expect(bassBeyondHand(reading('C/E', 7))).toBeUndefined();
  });

  it('is no other bass than the one in the symbol', () => {
    const c = reading('C', 12, { form: 'E' });
    expect(c.tones.find(({ string, fret }) => string === 6 && fret === 8)?.reach).toBe('out');
    expect(bassBeyondHand(c)).toBeUndefined();
  });
});

describe('a form whose grip is the chosen one’s place for place', () => {
  it('is told apart from one that shares some places', () => {
    expect(sameGripAs(reading('F#9sus4', 9))?.form.name).toBe('C');
    expect(sameGripAs(reading('Bm7', 7))).toBeUndefined();
  });

  it('is none that has more places besides', () => {
    const part = reading('C/E', 5, { form: 'A' });
    expect(part.chosen?.overlaps.some(({ shared }) => shared.length === part.chosen?.of)).toBe(
      true,
    );
    expect(sameGripAs(part)).toBeUndefined();
  });
});
