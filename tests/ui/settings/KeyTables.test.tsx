import { render, screen, within } from '@testing-library/react';
import { expect, it } from 'vitest';
import type { Pedal } from '#lesson';
import { KeyTables } from '../../../src/ui/settings/KeyTables.tsx';
import { createStudyStore, StudyStoreContext } from '../../../src/ui/store/index.ts';
import { workspace } from '../store/fixture.ts';

function listed(practising: boolean, pedal: Pedal = 'plays'): void {
  const store = createStudyStore(workspace('C G'));
  store.intents.setPedal(pedal);
  store.intents.setPractising(practising);
  render(
    <StudyStoreContext value={store}>
      <KeyTables />
    </StudyStoreContext>,
  );
}

const keysFor = (table: HTMLElement, label: string): string =>
  within(table)
    .getByRole('row', { name: new RegExp(`^${label}`) })
    .textContent?.slice(label.length) ?? '';

it('lists beside the usual keys those that mean something else on the practice screen', () => {
  listed(false);
  const cursor = screen.getByRole('table', { name: 'Cursor' });
  expect(keysFor(cursor, 'Next chord in the chart')).toBe('→Page down');
  const there = screen.getByRole('table', { name: /^On the practice screen/ });
  expect(keysFor(there, 'Play from the cursor, or stop')).toBe('SpacePage down→↓');
  expect(keysFor(there, 'Slower')).toBe('<-');
  expect(within(there).queryByText('Next chord in the chart')).toBeNull();
});

it('lists on the practice screen what holds there, and nothing that rests', () => {
  listed(true);
  const sound = screen.getByRole('table', { name: 'Sound' });
  expect(keysFor(sound, 'Play from the cursor, or stop')).toBe('SpacePage down→↓');
  expect(screen.queryByText('Next chord in the chart')).toBeNull();
  expect(screen.queryByRole('table', { name: 'Turns' })).toBeNull();
  expect(screen.getByText(/the others rest/)).toBeInTheDocument();
});

it('lists a pedal that steps as what it does', () => {
  listed(true, 'steps');
  const cursor = screen.getByRole('table', { name: 'Cursor' });
  expect(keysFor(cursor, 'Next chord in the chart')).toBe('→Page down');
});

it('says what the words of the reading mean', () => {
  listed(false);
  const words = screen.getAllByRole('term').map((term) => term.textContent);
  for (const word of ['Form', 'Place', 'Position', 'Best', 'Barred', 'Changed, added, left out'])
    expect(words).toContain(word);
});
