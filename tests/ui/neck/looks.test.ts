import { describe, expect, it } from 'vitest';
import { LABEL_LOOKS, LOOKS, labelling, outlinePaths } from '../../../src/ui/neck/looks.ts';
import { type ToneMark, toneMarks } from '../../../src/ui/neck/marks.ts';
import { LAYOUT, read } from './support.ts';

const BM7 = 'B: R b3 5 b7';
const marksAt = (position: number, colours = ''): readonly ToneMark[] =>
  toneMarks(read(BM7, position, colours), LAYOUT, 'degrees');

const outlinesIn = (path: string | undefined): number => path?.match(/Z/g)?.length ?? 0;
const mark = (change: Partial<ToneMark>): ToneMark => {
  const [first] = marksAt(7);
  if (first === undefined) throw new Error('no tones');
  return { ...first, away: false, bass: false, ...change };
};
const looksOf = (change: Partial<ToneMark>): readonly string[] =>
  Object.keys(outlinePaths([mark(change)]));

describe('outlinePaths', () => {
  it('draws the outlines of what is out of reach as one path, and no others', () => {
    const marks = marksAt(7);
    const quiet = marks.filter(({ reach }) => reach === 'out');
    expect(quiet.length).toBeGreaterThan(20);
    expect(outlinesIn(outlinePaths(marks)['mark quiet'])).toBe(quiet.length);
  });

  it('draws every tone once, and a ring around what only a stretch reaches', () => {
    const marks = marksAt(7, '9');
    const paths = outlinePaths(marks);
    const count = LOOKS.reduce((sum, look) => sum + outlinesIn(paths[look]), 0);
    const rings = marks.filter(({ reach }) => reach === 'stretch').length;
    expect(rings).toBeGreaterThan(0);
    expect(count).toBe(marks.length + rings);
  });

  it('leaves a tone of the chosen form a look of its own even out of reach', () => {
    expect(looksOf({ reach: 'out', kind: 'shape' })).toEqual(['mark shape out']);
    expect(looksOf({ reach: 'out', kind: 'colour' })).toEqual(['mark quiet']);
  });

  it.each(['hand', 'stretch', 'open', 'bend'] as const)(
    'tells shape, chord and colour apart where reach is %s',
    (reach) => {
      const looks = (['shape', 'chord', 'colour'] as const).map(
        (kind) => looksOf({ reach, kind })[0],
      );
      expect(new Set(looks).size).toBe(3);
    },
  );

  it('tells what is under the hand from what a stretch or a bend reaches, and open strings far away', () => {
    const looks = (['hand', 'stretch', 'bend', 'out'] as const).map(
      (reach) => looksOf({ reach, kind: 'chord' })[0],
    );
    expect(new Set(looks).size).toBe(4);
    const open = [true, false].map((away) => looksOf({ reach: 'open', kind: 'chord', away })[0]);
    expect(new Set(open).size).toBe(2);
  });
});

describe('labelling', () => {
  const pens = {
    label: (text: string) => `label ${text};`,
    quiet: (text: string) => (text === 'R' ? undefined : `quiet ${text};`),
  };

  it('sets every label as type while there are no pens', () => {
    const marks = marksAt(7);
    expect(labelling(marks, undefined)).toEqual({ paths: {}, rest: marks });
  });

  it('writes each label in its look, and sets as type what a pen cannot write', () => {
    const marks = marksAt(7);
    const { paths, rest } = labelling(marks, pens);
    expect(Object.keys(paths).sort()).toEqual([...LABEL_LOOKS].sort());
    const written = Object.values(paths).join('').match(/;/g);
    expect(written).toHaveLength(marks.length - rest.length);
    expect(rest.length).toBeGreaterThan(0);
    expect(rest.every(({ label, reach }) => label === 'R' && reach === 'out')).toBe(true);
  });

  it('writes nothing where there is no label', () => {
    expect(labelling([mark({ label: '' })], pens)).toEqual({ paths: {}, rest: [] });
  });
});
