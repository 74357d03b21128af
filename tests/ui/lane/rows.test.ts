import { describe, expect, it } from 'vitest';
import { parseProgression, slotsOf } from '#theory';
import {
  beatText,
  columnsFor,
  type LaneChord,
  type LaneRow,
  laneRows,
  longestRow,
  spotOf,
} from '../../../src/ui/lane/rows.ts';

function laneOf(text: string): {
  chart: ReturnType<typeof parseProgression>['chart'];
  chords: readonly LaneChord[];
} {
  const { chart } = parseProgression(text);
  const typed = slotsOf(chart).filter(({ slot }) => !slot.held);
  return { chart, chords: typed.map(({ slot, bar }, index) => ({ slot, bar, index })) };
}

function rowsOf(text: string, columns = 4): readonly LaneRow[] {
  const { chart, chords } = laneOf(text);
  return laneRows(chart, chords, columns);
}

/** `1[0+1] 2[1+0.5 2+0.5]` : bar number [chord index + share of the bar …] */
const drawn = (rows: readonly LaneRow[]): readonly string[] =>
  rows.map(({ section, bars }) =>
    [
      ...(section === undefined ? [] : [`(${section})`]),
      ...bars.map(
        ({ number, chords }) =>
          `${number}[${chords.map((c) => `${c.index}+${c.length}`).join(' ')}]`,
      ),
    ].join(' '),
  );

describe('laneRows', () => {
  it('wraps bars into rows and gives each chord its share of the bar', () => {
    expect(drawn(rowsOf('| C | F G | Am | F | C |'))).toEqual([
      '1[0+1] 2[1+0.5 2+0.5] 3[3+1] 4[4+1]',
      '5[5+1]',
    ]);
  });

  it('begins a new row with each section and names it', () => {
    expect(drawn(rowsOf('[Verse]\n| C | F |\n[Chorus]\n| G | C |'))).toEqual([
      '(Verse) 1[0+1] 2[1+1]',
      '(Chorus) 3[2+1] 4[3+1]',
    ]);
  });

  it('lets a chord that is held by slashes keep its room', () => {
    expect(drawn(rowsOf('| C / / G |'))).toEqual(['1[0+0.75 1+0.25]']);
  });

  it('shows the metre where it changes, and draws a shorter bar shorter', () => {
    const [row] = rowsOf('| C | 3/4 F | G |');
    expect(row?.bars.map((bar) => [bar.quarters, bar.metre?.beats])).toEqual([
      [4, undefined],
      [3, 3],
      [3, undefined],
    ]);
    expect(longestRow(rowsOf('| C | 3/4 F | G |'))).toBe(10);
  });

  it('keeps repeats and endings on their bars', () => {
    const [row] = rowsOf('|: C | F |1. G :|2. Am |');
    expect(row?.bars.map((bar) => bar.opensRepeat)).toEqual([true, false, false, false]);
    expect(row?.bars.map((bar) => bar.closesRepeat)).toEqual([undefined, undefined, 2, undefined]);
    expect(row?.bars.map((bar) => bar.ending)).toEqual([undefined, undefined, [1], [2]]);
  });

  it('has no rows for an empty text', () => {
    expect(rowsOf('')).toEqual([]);
    expect(longestRow([])).toBe(1);
  });
});

describe('columnsFor', () => {
  const columns = (text: string, ems: number): number => {
    const { chart, chords } = laneOf(text);
    return columnsFor(chart, chords, ems);
  };

  it('puts four bars on a wide row and fewer where chords would touch', () => {
    expect(columns('| C | F | G | C |', 60)).toBe(4);
    expect(columns('| C | F | G | C |', 22)).toBe(2);
    expect(columns('| F#m7b5 B7b9 Em7 A7 | C |', 30)).toBe(1);
  });
});

describe('beatText', () => {
  const four = { beats: 4, unit: 4 } as const;
  it.each([
    [0, '1'],
    [960, '2'],
    [1280, '2⅓'],
    [2560, '3⅔'],
    [480, '1½'],
    [768, '1⅘'],
    [549, '1.57'],
  ])('names the beat at %i ticks %s', (ticks, expected) => {
    expect(beatText(ticks, four)).toBe(expected);
  });

  it('counts the beats of the metre', () => {
    expect(beatText(960, { beats: 6, unit: 8 })).toBe('3');
  });
});

describe('spotOf', () => {
  const spot = (text: string, index: number): string => {
    const rows = rowsOf(text, 2);
    const found = spotOf(rows, longestRow(rows), index);
    return found ? `${found.row}: ${found.from} + ${found.width}` : '-';
  };

  it('says in which row a chord lies, where it begins and how wide it is, as shares of the lane', () => {
    const text = '| C | F G | % | Am |';
    const spots = ['0: 0 + 0.5', '0: 0.5 + 0.25', '0: 0.75 + 0.25'];
    expect([0, 1, 2].map((index) => spot(text, index))).toEqual(spots);
    expect(spot(text, 5)).toBe('1: 0.5 + 0.5');
  });

  it('keeps the scale of the longest row, and finds nothing that is not drawn', () => {
    expect(spot('3/4 | C | F |\n2/4 | G |', 2)).toBe(`1: 0 + ${2 / 6}`);
    expect(spot('| C |', 1)).toBe('-');
    expect(spot('', 0)).toBe('-');
  });
});
