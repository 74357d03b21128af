import { render, screen } from '@testing-library/react';
import { expect, it } from 'vitest';
import { parseChord, parseProgression } from '#theory';
import { CHORDS, ChartGuide } from '../../../src/ui/field/ChartGuide.tsx';

it('every chord that the guide spells can be read, and those of one row mean one kind', () => {
  const samples = CHORDS.flatMap(([row]) => row.split(' '));
  expect(samples.filter((symbol) => !parseChord(symbol).ok)).toEqual([]);
  expect(parseProgression(samples.join(' ')).problems).toEqual([]);
  for (const row of ['Am A- Ami', 'Cmaj7 CM7', 'Am7 A-7', 'Bm7b5 Bø', 'Bdim7 B°7', 'C+ Caug']) {
    const [first, ...others] = row.split(' ').map((symbol) => parseChord(symbol));
    for (const other of others) expect(other).toEqual(first);
  }
});

it('the guide lists bars and chords', () => {
  render(<ChartGuide />);
  expect(screen.getByText('half-diminished')).toBeInTheDocument();
  expect(screen.getByText('chords in a bar share it evenly')).toBeInTheDocument();
});
