import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDegree } from '#theory';
import { degreeAloud, noteAloud, symbolAloud, symbolInSigns } from '../../src/ui/words-aloud.ts';

function degree(text: string) {
  const read = parseDegree(text);
  if (!read.ok) throw new Error(`not a degree: ${text}`);
  return read.value;
}

describe('symbols as one says them', () => {
  it.each([
    ['Bm7', 'B minor seven'],
    ['E7#9', 'E seven sharp nine'],
    ['Bbmaj7/D', 'B flat major seven over D'],
    ['B♭Δ', 'B flat major seven'],
    ['CΔ9', 'C major nine'],
    ['C-7b5', 'C minor seven flat five'],
    ['C7-9', 'C seven flat nine'],
    ['C+7', 'C augmented seven'],
    ['C7+9', 'C seven sharp nine'],
    ['Fø7', 'F half-diminished'],
    ['F#°7', 'F sharp diminished seven'],
    ['C6/9', 'C six nine'],
    ['C7sus4b9', 'C seven sus four flat nine'],
    ['Cm(add9)', 'C minor add nine'],
    ['AmMaj7', 'A minor major seven'],
    ['G7alt', 'G seven altered'],
    ['Ebb', 'E double flat'],
    ['A7(b9,13)', 'A seven flat nine thirteen'],
    ['Cno3', 'C no three'],
    ['N.C.', 'no chord'],
    ['Hm', 'Hm'],
    ['', ''],
  ])('%s is “%s”', (symbol, spoken) => {
    expect(symbolAloud(symbol)).toBe(spoken);
  });

  it('say something about any text and never hang', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        expect(symbolAloud(text).length).toBeLessThanOrEqual(20 * text.length + 10);
      }),
    );
  });
});

describe('symbols with signs', () => {
  it.each([
    ['Bbm7b5', 'B♭m7♭5'],
    ['F#7#9/A#', 'F♯7♯9/A♯'],
    ['N.C.', 'N.C.'],
    ['Hm', 'Hm'],
  ])('%s is set as %s', (symbol, set) => {
    expect(symbolInSigns(symbol)).toBe(set);
  });
});

describe('degrees and notes as one says them', () => {
  it.each([
    ['R', 'root'],
    ['b3', 'flat three'],
    ['5', 'five'],
    ['#11', 'sharp eleven'],
    ['bb7', 'double flat seven'],
  ])('%s is “%s”', (text, spoken) => {
    expect(degreeAloud(degree(text))).toBe(spoken);
  });

  it('name notes', () => {
    expect(noteAloud({ letter: 'F', alter: 1 })).toBe('F sharp');
    expect(noteAloud({ letter: 'B', alter: -2 })).toBe('B double flat');
    expect(noteAloud({ letter: 'C', alter: 0 })).toBe('C');
  });
});
