import { act, render, screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { ReadingText } from '../../../src/ui/head/Head.tsx';
import { holding, StudyStoreContext } from '../../../src/ui/store/index.ts';
import { BAR, playing } from '../sound/fake.ts';

const SONG = '| Dm7 | G7 | Cmaj7 | A7 |';

describe('the reading in words', () => {
  const reading = (): HTMLElement => screen.getByRole('status', { name: 'Reading' });

  it('goes with the music and is not spoken while it plays; at rest it is', () => {
    const { store, player, at } = playing(SONG);
    render(
      <StudyStoreContext value={store}>
        <ReadingText />
      </StudyStoreContext>,
    );
    expect(reading()).toHaveAttribute('aria-live', 'polite');
    act(() => player.play());
    act(() => at(BAR + 10));
    expect(reading()).toHaveAttribute('aria-live', 'off');
    expect(reading()).toHaveTextContent(/^G7/);
    act(() => player.stop());
    expect(reading()).toHaveAttribute('aria-live', 'polite');
    expect(reading()).toHaveTextContent(/^G7/);
  });

  it('waits while a key is held down, and says where the cursor came to rest', () => {
    const { store } = playing(SONG);
    render(
      <StudyStoreContext value={store}>
        <ReadingText />
      </StudyStoreContext>,
    );
    act(() => store.cell.update((state) => holding(state, true)));
    act(() => store.intents.moveCursor(1));
    act(() => store.intents.moveCursor(1));
    expect(reading()).toHaveTextContent(/^Dm7/);
    act(() => store.cell.update((state) => holding(state, false)));
    expect(reading()).toHaveTextContent(/^Cmaj7/);
  });

  it('sets off why the form is called so, and says the whole all the same', () => {
    const { store } = playing(SONG);
    render(
      <StudyStoreContext value={store}>
        <ReadingText />
      </StudyStoreContext>,
    );
    const { account, reason } = store.cell.get().study;
    expect(reason).toMatch(/^Open [CAGED] shape/);
    expect(reading().querySelector('.reason')?.textContent).toBe(reason);
    expect(reading().textContent).toBe(account);
  });

  it('is spoken again when the sound fails', () => {
    const { store, player, become } = playing(SONG);
    player.play();
    expect(store.cell.get().playing).toBe(true);
    become({ phase: 'lost', message: 'No sound.' });
    expect(store.cell.get().playing).toBe(false);
  });
});
