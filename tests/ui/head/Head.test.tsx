import { act, render, screen, within } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { Head, Next } from '../../../src/ui/head/Head.tsx';
import { createStudyStore, StudyStoreContext } from '../../../src/ui/store/index.ts';
import { workspace } from '../store/fixture.ts';

const CHART =
  '|: C | G/B Am7 | Dm7 | G7sus4 G7b9 |1. Em7 | Ebdim7 :|2. C6 | N.C. | Bm7 | C | N.C. |';

function shown(progression: string) {
  const store = createStudyStore(workspace(progression));
  render(
    <StudyStoreContext value={store}>
      <Head />
      <Next />
    </StudyStoreContext>,
  );
  return store;
}

const next = () => screen.getByRole('region', { name: 'Next chord' });
const onward = () => within(next()).getByRole('button', { name: /^Next chord in the chart/ });

/** What is read of an element: marks without width are no part of it. */
const read = (element: HTMLElement): string => (element.textContent ?? '').replaceAll('\u200b', '');

describe('what is announced as next', () => {
  it('stands beside an arrow that leads there, without more words', () => {
    shown(CHART);
    expect(read(next())).toContain('NextG/B');
    expect(onward()).toHaveAccessibleName('Next chord in the chart');
  });

  it.each([
    [7, 'Next, by the repeatC', 'C6'],
    [8, 'Next, after N.C.Bm7', 'N.C.'],
    [11, 'NextN.C.no more chords', 'N.C.'],
  ])('from chord %i on says why the arrow leads elsewhere', (index, words, beside) => {
    const { intents } = shown(CHART);
    act(() => intents.moveCursorTo(index));
    expect(read(next())).toContain(words);
    expect(onward()).toHaveAccessibleName(`Next chord in the chart: ${beside}`);
    expect(onward()).toHaveTextContent(`→${beside}`);
  });

  it('is nothing at the end', () => {
    const { intents } = shown('C G');
    act(() => intents.moveCursor('end'));
    expect(read(next())).toContain('Next–no more chords');
    expect(onward()).toHaveAttribute('aria-disabled', 'true');
  });
});

describe('a turned chord', () => {
  it('is named with its own tones, and with what it was', () => {
    const { intents, cell } = shown('Eb6/9 Cm7/Bb');
    act(() => intents.turnForm('sus4'));
    const head = screen.getByRole('region', { name: 'Chord under the cursor' });
    expect(read(screen.getByRole('heading'))).toBe('E♭6/9 turned: E♭sus4');
    expect(
      within(head)
        .getAllByRole('term')
        .map((term) => term.textContent),
    ).toEqual(['R', '4', '5']);
    expect(cell.get().study.account).toMatch(/^E♭6\/9 turned: E♭sus4, position/);
    act(() => intents.turnForm(undefined));
    expect(read(screen.getByRole('heading'))).toBe('E♭6/9');
  });
});
