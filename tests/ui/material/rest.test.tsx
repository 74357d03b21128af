import { act, render, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { useRested } from '../../../src/ui/material/rest.ts';

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
