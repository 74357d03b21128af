import { describe, expect, it } from 'vitest';
import { barAt, harmoniesOf, loopApart, playedOf, slotAt, tickOfSlot } from '#line';
import { chart, quarters } from './short.ts';

/** `1@0 2@4`: written bars as they are played, and where they begin, in quarters. */
const bars = (text: string): string =>
  playedOf(chart(text))
    .bars.map(({ written, start }) => `${written}@${quarters(start)}`)
    .join(' ');

/** `0@0+4`: written slots as they sound, where they begin and how long they last, in quarters. */
const harmonies = (text: string): string =>
  harmoniesOf(playedOf(chart(text)))
    .map(({ index, start, length }) => `${index}@${quarters(start)}+${quarters(length)}`)
    .join(' ');

describe('a chart as it is played', () => {
  it.each([
    ['| C | F | G |', '1@0 2@4 3@8'],
    ['|: C | F :| G |', '1@0 2@4 1@8 2@12 3@16'],
    ['|: C |1. F :|2. G | Am |', '1@0 2@4 1@8 3@12 4@16'],
    ['3/4 | C | F | 4/4 G | C |', '1@0 2@3 3@6 4@10'],
    ['6/8 | C | F |', '1@0 2@3'],
    ['', ''],
  ])('%s is %s', (text, expected) => {
    expect(bars(text)).toBe(expected);
  });

  it('lasts as long as its bars', () => {
    expect(quarters(playedOf(chart('|: C | 3/4 F :|')).length)).toBe(14);
    expect(playedOf(chart('')).length).toBe(0);
  });

  it.each([
    ['| C | F G |', '0@0+4 1@4+2 2@6+2'],
    ['| C | % | F |', '0@0+8 2@8+4'],
    ['| C / F / | / / G / |', '0@0+2 1@2+4 3@6+2'],
    ['|: C | F :|', '0@0+4 1@4+4 0@8+4 1@12+4'],
  ])('%s sounds as %s', (text, expected) => {
    expect(harmonies(text)).toBe(expected);
  });

  it('tells the bar at a tick', () => {
    const played = playedOf(chart('|: C | F :|'));
    expect([0, 3839, 3840, 7680, 15_359, 15_360, -1].map((t) => barAt(played, t)?.written)).toEqual(
      [1, 1, 2, 1, 2, undefined, undefined],
    );
  });

  it('tells the written chord at a tick, and when a written chord is played first', () => {
    const played = playedOf(chart('|: C | F G :| Am |'));
    const indices = [0, 3840, 5760, 7680, 15_360, 99_999].map((t) => slotAt(played, t)?.index);
    expect(indices).toEqual([0, 1, 2, 0, 3, undefined]);
    expect([0, 1, 2, 3, 9].map((index) => quarters(tickOfSlot(played, index)))).toEqual([
      0, 4, 6, 16, 0,
    ]);
  });

  it('appends bars to loop that endings part, and begins them anew', () => {
    const text = '|: C | / / / / |1. G :|2. Am |';
    const looped = (first: number, last: number) => {
      const { bars, length, slots } = playedOf(chart(text), { first, last });
      const beyond = slots.filter(({ start }) => start >= length);
      return [bars.map(({ written }) => written).join(' '), beyond.map(({ held }) => held)];
    };
    expect(looped(2, 4)).toEqual(['1 2 3 1 2 4 2 3 4', [false, false, false]]);
    expect(looped(1, 3)).toEqual(['1 2 3 1 2 4', []]);
    expect(looped(1, 9)).toEqual(['1 2 3 1 2 4', []]);
    expect(loopApart(chart(text), { first: 2, last: 4 })).toEqual({ first: 2, last: 4 });
    expect(loopApart(chart(text), { first: 1, last: 3 })).toBeUndefined();
  });
});
