import { act, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { describe, expect, it } from 'vitest';
import { DEFAULT_WORKSPACE, type Workspace } from '#lesson';
import { RoutePanel } from '../../../src/ui/material/RoutePanel.tsx';
import {
  createStudyStore,
  type StudyStore,
  StudyStoreContext,
} from '../../../src/ui/store/index.ts';

function panel(more: Partial<Workspace>): StudyStore {
  const store = createStudyStore({ ...DEFAULT_WORKSPACE, position: 5, route: 'stay', ...more });
  render(
    <StudyStoreContext value={store}>
      <RoutePanel />
    </StudyStoreContext>,
  );
  return store;
}

const LONG = '| Am | D7 | G | C |'.repeat(100);

describe('RoutePanel', () => {
  it('shows how far a long plan is, stops it and plans again', async () => {
    panel({ progression: LONG });
    expect(screen.getByRole('progressbar', { name: 'Planning the route' })).toBeInTheDocument();
    expect(screen.getByText(/of 400 chords/)).toBeInTheDocument();
    await userEvent.click(screen.getByRole('button', { name: 'Stop planning' }));
    expect(screen.queryByRole('progressbar')).toBeNull();
    await userEvent.click(screen.getByRole('button', { name: 'Plan again' }));
    expect(screen.getByRole('progressbar')).toBeInTheDocument();
  });

  it('offers the best way and three others, and shows the one that is picked', async () => {
    const store = panel({ progression: '| Am | D7 | G | C |' });
    const ways = screen.getByRole('list', { name: 'Ways, best first' });
    expect(ways.querySelectorAll('button')).toHaveLength(4);
    await userEvent.click(screen.getByRole('button', { name: /^2\./ }));
    expect(store.cell.get().study.route?.chosen).toBe(1);
  });

  it('refuses a weight beyond its range at its field and keeps the last good one', async () => {
    const store = panel({ progression: '| Am | D7 |' });
    const field = screen.getByRole('textbox', { name: 'Moving the hand' });
    await userEvent.clear(field);
    await userEvent.type(field, '99{Enter}');
    act(() => field.blur());
    expect(field).toHaveAccessibleDescription(/99.*expected a number from 0 to 10/);
    expect(store.cell.get().workspace.weights.shift).toBe(DEFAULT_WORKSPACE.weights.shift);
  });

  it('says which pinned forms do not fit and lets go of them', async () => {
    const pins = [{ at: '1.1', form: 'E', anchor: 21 }];
    const store = panel({ progression: '| Am | D7 |', pins });
    expect(screen.getByRole('alert')).toHaveTextContent('E at 1.1 (fret 21)');
    await userEvent.click(screen.getByRole('button', { name: /pinned at 1\.1$/ }));
    expect(store.cell.get().workspace.pins).toEqual([]);
  });
});

describe('a route while a chord is turned', () => {
  it('says that it goes through the chords as written', () => {
    panel({ progression: 'Eb6/9 Cm7/Bb', turn: 'sus4' });
    expect(screen.getByText(/chords as written: E♭6\/9, not the E♭sus4/)).toBeInTheDocument();
  });
});
