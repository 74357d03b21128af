import { describe, expect, it } from 'vitest';
import type { Stop } from '#neck';
import { ladderOf, ladderRoom, namedRungs, stepAtDepth } from '../../../src/ui/material/ladder.ts';
import { layoutNeck } from '../../../src/ui/neck/layout.ts';
import { LAYOUT } from '../neck/support.ts';
import { study } from './fixture.ts';

const way = (text: string): readonly (Stop | undefined)[] =>
  study(text, 7, { route: 'stay' }).route?.routes[0]?.stops ?? [];

describe('ladderOf', () => {
  const stops = way('| Bm7 | N.C. | E7 | Amaj7 |');
  const ladder = ladderOf(stops, LAYOUT, LAYOUT.width);

  it('has a rung under the four frets of every position, and none where no chord sounds', () => {
    expect(ladder.rungs.map(({ step }) => step)).toEqual([0, 2, 3]);
    const [rung] = ladder.rungs;
    const position = stops[0]?.position ?? 0;
    expect(rung?.from).toBeCloseTo(LAYOUT.wires[position - 1] ?? 0, 0);
    expect(rung?.to).toBeCloseTo(LAYOUT.wires[position + 3] ?? 0, 0);
  });

  it('goes down chord by chord', () => {
    const depths = ladder.rungs.map(({ y }) => y);
    expect(depths).toEqual([...depths].sort((a, b) => a - b));
    expect(ladder.path.match(/[ML]/g)).toHaveLength(3);
  });

  it('is mirrored for the left hand', () => {
    const left = layoutNeck({ ...LAYOUT.spec, leftHanded: true });
    const [rung] = ladder.rungs;
    const [mirrored] = ladderOf(stops, left, left.width).rungs;
    expect((mirrored?.from ?? 0) + (rung?.to ?? 0)).toBeCloseTo(LAYOUT.width, 0);
  });

  it('takes the same room for a short way as for one of many chords', () => {
    const room = Math.ceil(ladderRoom(LAYOUT));
    const many = Array.from({ length: 20 }, () => stops[0]);
    expect([ladder.height, ladderOf(many, LAYOUT, LAYOUT.width).height]).toEqual([room, room]);
  });

  it('keeps a long way within a few ems, without letters', () => {
    const long = ladderOf(
      Array.from({ length: 30 }, () => stops[0]),
      LAYOUT,
      LAYOUT.width,
    );
    expect(long.height).toBeLessThanOrEqual(6 * LAYOUT.em + 1);
    expect([ladder.lettered, long.lettered]).toEqual([true, false]);
  });
});

describe('namedRungs', () => {
  it('are where the hand comes to another position, with room for each name', () => {
    const text = '| C | F | G | Am | Dm | E7 | A | D | B7 | Em | Bb | Eb | C | F |';
    const ladder = ladderOf(way(text), LAYOUT, LAYOUT.width);
    const named = namedRungs(ladder, LAYOUT.em);
    expect(named[0]).toBe(ladder.rungs[0]);
    expect(named.length).toBeLessThan(ladder.rungs.length);
    for (const [i, rung] of named.entries()) {
      const last = named[i - 1];
      if (last) expect(rung.y - last.y).toBeGreaterThanOrEqual(0.85 * LAYOUT.em);
    }
  });
});

describe('stepAtDepth', () => {
  it('finds every step again from the depth of its rung, and stays on the ladder', () => {
    const ladder = ladderOf(way('| Bm7 | E7 | Amaj7 |'), LAYOUT, LAYOUT.width);
    expect(ladder.rungs.map(({ y }) => stepAtDepth(ladder, y, 3))).toEqual([0, 1, 2]);
    expect([stepAtDepth(ladder, -50, 3), stepAtDepth(ladder, 9999, 3)]).toEqual([0, 2]);
  });
});
