import { render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { expect, it, vi } from 'vitest';
import { Choice } from '../../../src/ui/controls/Choice.tsx';

const OPTIONS = [
  ['best', 'best'],
  ['G', 'G'],
] as const;

it('tells what is chosen, and leaves the arrow keys to the workspace after a click', async () => {
  const onChange = vi.fn();
  const reached = vi.fn();
  render(<Choice label="Form" options={OPTIONS} value="best" onChange={onChange} />);
  expect(screen.getByRole('group', { name: 'Form' })).toBeInTheDocument();
  expect(screen.getByRole('button', { name: 'best' })).toHaveAttribute('aria-pressed', 'true');
  await userEvent.click(screen.getByRole('button', { name: 'G' }));
  expect(onChange.mock.calls).toEqual([['G']]);
  window.addEventListener('keydown', (event) => reached(event.key, event.defaultPrevented), {
    once: true,
  });
  await userEvent.keyboard('{ArrowRight}');
  expect(reached.mock.calls).toEqual([['ArrowRight', false]]);
  expect(onChange).toHaveBeenCalledTimes(1);
});
