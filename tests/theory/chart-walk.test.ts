import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  barsOf,
  makeAt,
  nextInPlay,
  parseAt,
  slotAtOffset,
  slotAtPlace,
  slotsOf,
  unfold,
} from '#theory';
import { chartOf, shownPlaces } from './chart-short.ts';
import { anyText } from './chart-texts.ts';

const shownNext = (text: string): string =>
  nextInPlay(chartOf(text))
    .map((next) => next?.slot.symbol ?? '-')
    .join(' ');

const symbolAt = (text: string, offset: number): string | undefined =>
  slotAtOffset(chartOf(text), offset)?.slot.symbol;

describe('slots', () => {
  it('are numbered by bar and beat across the sections', () => {
    expect(shownPlaces('[A]\n| C F | G |\n[B]\n| C F G |')).toBe('1.1 1.3 2.1 3.1 3.2.333 3.3.667');
  });

  it('know their place among all', () => {
    expect(slotsOf(chartOf('C G Am')).map(({ bar, index }) => [bar, index])).toEqual([
      [1, 0],
      [2, 1],
      [3, 2],
    ]);
  });
});

describe('places as text', () => {
  it.each([
    ['2.1', { bar: 2, beat: 1 }],
    ['3.2.5', { bar: 3, beat: 2.5 }],
    ['1.2.333', { bar: 1, beat: 2.333 }],
    ['4', { bar: 4, beat: 1 }],
    ['12.10', { bar: 12, beat: 10 }],
  ])('%s', (text, place) => expect(parseAt(text)).toEqual({ ok: true, value: place }));

  it.each(['', '0.1', '1.0', 'a', '1.', '-1.1', '1.1.1.1', '1e9', '99999999.1'])(
    '%j is an error',
    (text) => {
      const result = parseAt(text);
      expect(result).toMatchObject({ ok: false, error: { code: 'at', at: 0, found: text } });
    },
  );

  it('are made without trailing zeros', () => {
    expect(makeAt({ bar: 1, beat: 1 })).toBe('1.1');
    expect(makeAt({ bar: 1, beat: 7 / 3 })).toBe('1.2.333');
    expect(makeAt({ bar: 2, beat: 2.5 })).toBe('2.2.5');
  });

  it('lead back to the slot they came from', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const chart = chartOf(text);
        for (const { at, index } of slotsOf(chart)) {
          const place = parseAt(at);
          expect(place.ok && slotAtPlace(chart, place.value)?.index).toBe(index);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('between two slots lead to the one that sounds', () => {
    const chart = chartOf('| C F | G |');
    expect(slotAtPlace(chart, { bar: 1, beat: 2.9 })?.slot.symbol).toBe('C');
    expect(slotAtPlace(chart, { bar: 1, beat: 4.5 })?.slot.symbol).toBe('F');
    expect(slotAtPlace(chart, { bar: 1, beat: 5 })).toBeUndefined();
    expect(slotAtPlace(chart, { bar: 3, beat: 1 })).toBeUndefined();
  });
});

describe('the slot at a caret', () => {
  it.each([
    [0, 'C'],
    [2, 'C'],
    [3, 'C'],
    [5, 'Am'],
    [6, 'Am'],
    [9, 'F'],
    [99, 'G7'],
  ])('of "| C  Am | F | G7 |" at %d is %s', (offset, symbol) => {
    expect(symbolAt('| C Am | F | G7 |', offset)).toBe(symbol);
  });

  it('is none in a chart without slots', () => expect(symbolAt('', 0)).toBeUndefined());
});

describe('playing order', () => {
  it('is that of the text without repeats', () => {
    expect(unfold(chartOf('C G Am'))).toEqual([0, 1, 2]);
    expect(unfold(chartOf(''))).toEqual([]);
  });

  it('stops at 100,000 bars', () => {
    expect(unfold(chartOf('|: C | G :|x99 '.repeat(600)))).toHaveLength(100_000);
  });

  it('plays every bar of a chart without endings', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const chart = chartOf(text);
        const played = new Set(unfold(chart));
        const bars = barsOf(chart);
        if (bars.some(({ ending }) => ending !== undefined)) return;
        expect(played.size).toBe(bars.length);
      }),
      { numRuns: 300 },
    );
  });
});

describe('what comes next in play', () => {
  it.each([
    ['| C F | G |', 'F G -'],
    ['|: C | F :| G |', 'F C -'],
    ['|: C |1. F :|2. G | D |', 'F C D -'],
    ['| C | % | / / / F | G |', 'F F F G -'],
    ['| C | F | |: % :|', 'F - -'],
    ['| C G | % |', 'G C G -'],
    ['', ''],
  ])('of %s is %s', (text, next) => expect(shownNext(text)).toBe(next));
});
