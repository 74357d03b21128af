import { act, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { useRested, useStudyAtRest } from '../../../src/ui/material/rest.ts';
import { createStudyStore, StudyStoreContext } from '../../../src/ui/store/index.ts';
import { workspace } from '../store/fixture.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const Rested = ({ value }: { readonly value: string }) => <p>{useRested(value, 120)}</p>;

describe('useRested', () => {
  it('follows a value only when it has stood still', () => {
    const { rerender } = render(<Rested value="a" />);
    for (const value of ['b', 'c', 'd']) {
      rerender(<Rested value={value} />);
      act(() => vi.advanceTimersByTime(80));
      expect(screen.getByText('a')).toBeInTheDocument();
    }
    act(() => vi.advanceTimersByTime(40));
    expect(screen.getByText('d')).toBeInTheDocument();
  });
});

const Symbols = ({ seen }: { readonly seen: boolean }) => (
  <p>{useStudyAtRest(({ study }) => study.symbol, seen)}</p>
);

describe('useStudyAtRest', () => {
  it.each([
    [true, 120],
    [false, 400],
  ])('follows the study where it is seen (%s) after %i ms', (seen, rest) => {
    const store = createStudyStore(workspace('C G'));
    render(
      <StudyStoreContext value={store}>
        <Symbols seen={seen} />
      </StudyStoreContext>,
    );
    act(() => store.intents.moveCursor(1));
    act(() => vi.advanceTimersByTime(rest - 1));
    expect(screen.getByText('C')).toBeInTheDocument();
    act(() => vi.advanceTimersByTime(1));
    expect(screen.getByText('G')).toBeInTheDocument();
  });

  it('has caught up as soon as it is seen', () => {
    const store = createStudyStore(workspace('C G'));
    const shown = (seen: boolean) => (
      <StudyStoreContext value={store}>
        <Symbols seen={seen} />
      </StudyStoreContext>
    );
    const { rerender } = render(shown(false));
    act(() => store.intents.moveCursor(1));
    rerender(shown(true));
    expect(screen.getByText('G')).toBeInTheDocument();
  });
});
