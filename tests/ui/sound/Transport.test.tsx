import { act, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Caution } from '../../../src/ui/sound/Caution.tsx';
import { installPlayers } from '../../../src/ui/sound/players.ts';
import { Transport } from '../../../src/ui/sound/Transport.tsx';
import {
  createStudyStore,
  openStudyStore,
  type StudyStore,
  StudyStoreContext,
} from '../../../src/ui/store/index.ts';
import { LAYOUT } from '../neck/support.ts';
import { fakePage, workspace } from '../store/fixture.ts';
import { fakeEngine, fakeStage } from './fake.ts';

vi.mock('#sound/browser', () => ({}));

/** The transport over a store, on an engine that plays nothing. */
async function shown(store: StudyStore) {
  const { startPlayer } = await import('../../../src/ui/sound/player.ts');
  const { engine } = fakeEngine();
  installPlayers((of) => startPlayer(of, engine, fakeStage().stage));
  const { unmount } = render(
    <StudyStoreContext value={store}>
      <Transport />
      <Caution layout={LAYOUT} />
    </StudyStoreContext>,
  );
  return { unmount };
}

const press = (name: string) => userEvent.click(screen.getByRole('button', { name }));
const cautions = () => screen.queryAllByRole('note', { name: 'Hearing' });

describe('the caution about listening', () => {
  /** Opens the page, plays, and counts how often the caution has come by then. */
  async function visit({ page, pass }: ReturnType<typeof fakePage>): Promise<readonly number[]> {
    const store = openStudyStore(page);
    const { unmount } = await shown(store);
    const counted = [cautions().length];
    await press('Play');
    counted.push(cautions().length);
    await press('Stop');
    await press('Play');
    counted.push(cautions().length);
    if (cautions().length > 0) await press('Dismiss');
    await press('Stop');
    await act(() => store.intents.setPractising(true));
    await press('Play');
    counted.push(cautions().length);
    // What changed is written a moment later.
    pass();
    unmount();
    store.close();
    return counted;
  }

  it('comes with the first sound, names its source, and never comes again', async () => {
    const browser = fakePage();
    expect([await visit(browser), await visit(browser), await visit(browser)]).toEqual([
      [0, 1, 1, 0],
      [0, 0, 0, 0],
      [0, 0, 0, 0],
    ]);
  });

  it('comes once to a visit where nothing can be kept', async () => {
    const browser = fakePage();
    browser.made.refusal = 'SecurityError';
    expect(await visit(browser)).toEqual([0, 1, 1, 0]);
  });

  it('comes with the practice screen too, says where it is from, and is no step of undo', async () => {
    const store = createStudyStore(workspace('| C | G |'));
    await shown(store);
    await act(() => store.intents.setPractising(true));
    expect(cautions()[0]).toHaveTextContent(/Start quietly.*ITU-T H\.870/);
    expect(store.cell.get()).toMatchObject({ canUndo: false, workspace: { cautioned: true } });
  });
});

describe('where the neck is when the music begins', () => {
  const scrolled = vi.fn();
  const queries = new Set<string>();

  beforeEach(() => {
    scrolled.mockClear();
    queries.clear();
    document.body.innerHTML = '<div class="head-slot"></div><div data-neck></div>';
    const head = document.querySelector('.head-slot');
    if (head) head.scrollIntoView = scrolled;
    vi.stubGlobal('matchMedia', (query: string) => ({ matches: queries.has(query) }));
  });

  afterEach(() => {
    vi.unstubAllGlobals();
    document.body.innerHTML = '';
  });

  const neckAt = (top: number): void => {
    const neck = document.querySelector('[data-neck]');
    const box = { top, bottom: top + 260 };
    if (neck) vi.spyOn(neck, 'getBoundingClientRect').mockReturnValue(box as DOMRect);
  };

  it.each([
    ['low, out of sight', ['(max-height: 30em)'], 700, [{ block: 'start', behavior: 'smooth' }]],
    [
      'low, where nothing is to move',
      ['(max-height: 30em)', '(prefers-reduced-motion: reduce)'],
      700,
      [{ block: 'start', behavior: 'instant' }],
    ],
    ['low, in sight', ['(max-height: 30em)'], 60, []],
    ['high', [], 700, []],
  ])('in a window that is %s', async (_, matching, top, expected) => {
    for (const query of matching) queries.add(query);
    neckAt(top);
    await shown(createStudyStore(workspace('| C | G |')));
    expect(scrolled).not.toHaveBeenCalled();
    await press('Play');
    expect(scrolled.mock.calls.flat()).toEqual(expected);
  });
});
