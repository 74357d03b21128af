import { act, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_WORKSPACE } from '#lesson';
import { Lane } from '../../../src/ui/lane/Lane.tsx';
import {
  createStudyStore,
  type StudyStore,
  StudyStoreContext,
} from '../../../src/ui/store/index.ts';
import { layOut } from '../page.ts';

beforeEach(() => {
  layOut(960);
});

const lane = (progression: string): StudyStore => {
  const store = createStudyStore({ ...DEFAULT_WORKSPACE, progression });
  render(
    <StudyStoreContext value={store}>
      <Lane />
    </StudyStoreContext>,
  );
  return store;
};

const cells = (): readonly HTMLElement[] => screen.getAllByRole('button');

describe('Lane', () => {
  it('shows each typed chord as a button that says where it is', () => {
    lane('| Am | F G |');
    expect(cells().map(({ dataset }) => `${dataset['at']} ${dataset['symbol']}`)).toEqual([
      '1.1 Am',
      '2.1 F',
      '2.3 G',
    ]);
    expect(cells()[0]).toHaveAccessibleName(/^Am, bar 1, beat 1, . form at /);
  });

  it('says on which part of a beat the chords of a shared bar stand', () => {
    lane('| C F G |');
    expect(cells().map((cell) => /beat [^,]+/.exec(cell.ariaLabel ?? '')?.[0])).toEqual([
      'beat 1',
      'beat 2⅓',
      'beat 3⅔',
    ]);
    expect(cells()[0]).toHaveAccessibleName(/of \d places under the hand$/);
  });

  it('changes two cells, its own mark, and nothing else when the cursor moves', async () => {
    const store = lane('| Am | F | G | C |'.repeat(16));
    const touched = new Set<Node>();
    const observer = new MutationObserver((records) => {
      for (const { target } of records) touched.add(target);
    });
    observer.observe(screen.getByRole('region', { name: 'Chords' }), {
      attributes: true,
      childList: true,
      characterData: true,
      subtree: true,
    });
    await act(() => store.intents.moveCursor(1));
    observer.disconnect();
    const [first, second] = cells();
    const mark = document.querySelector('.lane-mark');
    expect(touched).toEqual(new Set([first, second, mark]));
  });

  it('takes the focus along when it is in the lane, and leaves it alone when it is not', async () => {
    const store = lane('| Am | F | G |');
    await act(() => store.intents.moveCursor(1));
    expect(document.body).toHaveFocus();
    await userEvent.click(cells()[0] ?? document.body);
    await act(() => store.intents.moveCursor(1));
    await expect.poll(() => cells()[1]).toHaveFocus();
  });

  it('leaves the focus where it is while music plays, and takes it along when it is over', async () => {
    const store = lane('| Am | F | G |');
    await userEvent.click(cells()[0] ?? document.body);
    await act(() => store.intents.setPlaying(true));
    await act(() => store.intents.follow(1, 2));
    await act(() => new Promise((rest) => setTimeout(rest, 150)));
    expect(cells()[0]).toHaveFocus();
    await act(() => store.intents.setPlaying(false));
    await expect.poll(() => cells()[1]).toHaveFocus();
  });

  it('offers what was probably meant beside a chord that cannot be read', async () => {
    const store = lane('| Am | Hm |');
    await userEvent.click(screen.getByRole('button', { name: 'Bm?' }));
    expect(store.cell.get().workspace.progression).toBe('| Am | Bm |');
  });
});
