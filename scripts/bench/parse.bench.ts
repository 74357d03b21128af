import { parseProgression } from '#theory';
import { type Measure, timed } from './bench.ts';

const LINES = [
  '| Cmaj7 | A7b9 | Dm7 G7sus4 | C6/9 / F/G / |',
  '| F#m7b5 | B7alt | Em(maj7) | % |',
  '| Bb13#11 | Eb△7 Ab7 | N.C. | G/B Gm/Bb A7(#5) D9 |',
  '|: Am | Am/G | F#ø7 | F6 E7#9 :|',
];

/** A chart of so many bars, four to a line, with a section every sixteen. */
const chartOf = (bars: number): string =>
  Array.from({ length: bars / 4 }, (_, i) => {
    const line = LINES[i % LINES.length] ?? '';
    return i % 4 === 0 ? `[Part ${i / 4 + 1}]\n${line}` : line;
  }).join('\n');

export const measure: Measure = async () => {
  const short = chartOf(500);
  const long = chartOf(10_000);
  const cost = await timed({
    short: () => parseProgression(short),
    long: () => parseProgression(long),
  });
  return [
    { name: 'parse 500 bars', figure: cost('short'), unit: 'ms', limit: 10 },
    // Twenty times the bars at twenty times the cost is 1; caches and rubbish cost a little more.
    {
      name: 'parse 10,000 bars, cost a bar against 500',
      figure: cost('long') / (20 * cost('short')),
      unit: '×',
      limit: 1.5,
    },
  ];
};
