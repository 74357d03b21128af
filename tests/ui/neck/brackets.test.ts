import { describe, expect, it } from 'vitest';
import { bracketExtent, bracketRow } from '../../../src/ui/neck/Brackets.tsx';
import { fretRange } from '../../../src/ui/neck/layout.ts';
import { type Bracket, brackets } from '../../../src/ui/neck/places.ts';
import { LAYOUT, read } from './support.ts';

const places = (text: string): readonly Bracket[] => brackets(read(text, 5).forms, 3);

describe('bracketExtent', () => {
  it('reaches over the frets that the grip holds', () => {
    const [grip] = places('B: R b3 5 b7').filter(({ first }) => first === 7);
    if (grip === undefined) throw new Error('no grip at fret 7');
    const { from, to } = fretRange(LAYOUT, grip.first, grip.last);
    const extent = bracketExtent(LAYOUT, grip);
    expect(extent.from).toBeCloseTo(from + 1);
    expect(extent.to).toBeCloseTo(to - 1);
  });

  it('takes in the open strings of an open form', () => {
    const [open] = places('C: R 3 5').filter(({ first }) => first === 0);
    if (open === undefined) throw new Error('no open form');
    expect(bracketExtent(LAYOUT, open).from).toBeLessThan(LAYOUT.open);
  });
});

describe('bracketRow', () => {
  it('lies above the strings, each level above the one before, high enough to be hit', () => {
    const [bracket] = places('C: R 3 5');
    if (bracket === undefined) throw new Error('no form');
    const rows = [0, 1, 2].map((level) => bracketRow(LAYOUT, { ...bracket, level }));
    expect(rows[0]?.to).toBeLessThan(LAYOUT.lines[0] ?? 0);
    expect(rows.map(({ from, to }) => to - from >= 24)).toEqual([true, true, true]);
    expect(rows[1]?.to).toBeCloseTo(rows[0]?.from ?? 0);
    expect(rows[2]?.from).toBeGreaterThanOrEqual(-8);
  });
});
