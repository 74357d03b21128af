import { describe, expect, it } from 'vitest';
import { chordDictionary, degreeOfInterval, lookUpQuality, makeDegree } from '#theory';
import { shownTones } from './short.ts';

describe('The dictionary behind its adapter', () => {
  it.each([
    ['M', 'R 3 5'],
    ['m7b5', 'R b3 b5 b7'],
    ['dim7', 'R b3 b5 bb7'],
    ['7#9', 'R 3 5 b7 #9'],
  ])('has %s as %s', (name, tones) => {
    const found = lookUpQuality(name);
    if (!found.ok) throw new Error(name);
    expect(shownTones(found.value)).toBe(tones);
  });

  it.each(['nonsense', 'm7xyz', '?'])('says that %s is unknown', (name) => {
    expect(lookUpQuality(name)).toMatchObject({
      ok: false,
      error: { code: 'quality', at: 0, length: name.length, found: name },
    });
  });

  it('has the root first in every type, and is a copy', () => {
    const [first, again] = [chordDictionary(), chordDictionary()];
    for (const { degrees } of first) expect(degrees[0]).toEqual({ number: 1, alter: 0 });
    expect(first[0]?.aliases).toEqual(again[0]?.aliases);
    expect(first[0]?.aliases).not.toBe(again[0]?.aliases);
  });

  it.each([
    ['1P', 'R'],
    ['3m', 'b3'],
    ['5d', 'b5'],
    ['5A', '#5'],
    ['7d', 'bb7'],
    ['9A', '#9'],
    ['11A', '#11'],
    ['13m', 'b13'],
  ])('reads the interval %s as %s', (interval, degree) => {
    const found = degreeOfInterval(interval);
    expect(found && makeDegree(found)).toBe(degree);
  });

  it.each(['', '3', 'M', '3Mxyz', 'fooP5', '3X', '0P'])('refuses the interval %j', (interval) => {
    expect(degreeOfInterval(interval)).toBeUndefined();
  });
});
