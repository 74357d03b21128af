import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '#lesson';
import { type Chord, makeProgression, parseProgression, slotsOf, unfold } from '#theory';

const chartOf = (index: number) => parseProgression(EXAMPLES[index]?.progression ?? '').chart;

const symbolsOf = (index: number): readonly string[] =>
  slotsOf(chartOf(index)).map(({ slot }) => slot.symbol);

const chordsOf = (index: number): readonly Chord[] =>
  slotsOf(chartOf(index)).flatMap(({ slot }) =>
    slot.harmony.kind === 'chord' ? [slot.harmony.chord] : [],
  );

describe('the examples', () => {
  it.each(EXAMPLES.map((example) => [example.title, example] as const))(
    '%s is read without a problem and is written as our own charts are',
    (_title, { progression }) => {
      const { chart, problems } = parseProgression(progression);
      expect(problems).toEqual([]);
      expect(makeProgression(parseProgression(makeProgression(chart)).chart)).toBe(
        makeProgression(chart),
      );
    },
  );

  it('have titles of their own', () => {
    expect(new Set(EXAMPLES.map(({ title }) => title)).size).toBe(4);
  });

  it('name their passages', () => {
    expect(EXAMPLES.map((_, i) => chartOf(i).sections.map(({ name }) => name))).toEqual([
      ['Verse', 'Chorus'],
      ['Riff', 'Verse', 'Chorus', 'Ending'],
      ['Blues in A'],
      ['A', 'B', 'A'],
    ]);
  });

  it('are as long as they should be when played', () => {
    expect(EXAMPLES.map((_, i) => unfold(chartOf(i)).length)).toEqual([20, 38, 12, 34]);
  });

  it('have a blues of twelve bars with a quick change and a turnaround', () => {
    const written = chartOf(2).sections.flatMap(({ bars }) => bars);
    expect(written).toHaveLength(12);
    expect(written[1]?.slots.map(({ symbol }) => symbol)).toEqual(['D7']);
    expect(written.slice(10).map(({ slots }) => slots.map(({ symbol }) => symbol))).toEqual([
      ['A7', 'F#7'],
      ['Bm7', 'E7'],
    ]);
  });

  it('have slash, sus and altered chords in the jazz one', () => {
    const symbols = symbolsOf(3);
    for (const symbol of ['Bbmaj7/D', 'C9sus4', 'F7alt', 'C7b9']) expect(symbols).toContain(symbol);
    expect(chordsOf(3).some(({ bass }) => bass?.letter === 'D')).toBe(true);
  });
});
