import { describe, expect, it } from 'vitest';
import {
  ASIDE_KEY,
  DEFAULT_WORKSPACE,
  makeAddress,
  makeWorkspace,
  parseWorkspace,
  UNREAD_KEY,
  WORK_KEY,
  type Workspace,
} from '#lesson';
import { openStudyStore } from '../../../src/ui/store/index.ts';
import { PATIENCE } from '../../../src/ui/store/keeping.ts';
import { fakePage, workspace } from './fixture.ts';

const MINE = workspace('Am F C G', { position: 5, theme: 'dark' });

const asText = (work: Workspace): string => JSON.stringify(makeWorkspace(work));

/** A page on which work was kept, opened at an address. */
function opened(hash = '', kept: Readonly<Record<string, string>> = { [WORK_KEY]: asText(MINE) }) {
  const fake = fakePage(hash, kept);
  const store = openStudyStore(fake.page);
  const state = () => store.cell.get();
  const notices = () => state().notices.map(({ id }) => id);
  const keptAt = (key: string): string | undefined => {
    const read = parseWorkspace(JSON.parse(fake.kept.get(key) ?? 'null'));
    return read.ok ? read.value.workspace.progression : undefined;
  };
  return { ...fake, ...store, state, notices, keptText: () => keptAt(WORK_KEY) };
}

describe('opening the page', () => {
  it('the first time begins with our example', () => {
    const { state, notices } = opened('', {});
    expect(state().workspace).toBe(DEFAULT_WORKSPACE);
    expect([state().canUndo, notices()]).toEqual([false, []]);
  });

  it('again begins with what one was doing', () => {
    const { state } = opened();
    expect(state().workspace).toEqual(MINE);
    expect(state().canUndo).toBe(false);
  });

  it('again at the address that it left there is nothing new', () => {
    const { state, notices } = opened(`#${makeAddress(MINE)}`);
    expect(state().workspace).toEqual(MINE);
    expect([state().canUndo, notices()]).toEqual([false, []]);
  });

  it('at a link shows the work of the link, and undo leads to the own', () => {
    const { state, notices, intents } = opened('#progression=D+A&position=2');
    expect(state().workspace).toMatchObject({ progression: 'D A', position: 2, theme: 'dark' });
    expect(notices()).toEqual(['aside']);
    intents.undo();
    expect(state().workspace).toEqual(MINE);
  });

  it('at a link for the first time needs no undo', () => {
    const { state, notices } = opened('#progression=D+A', {});
    expect(state().workspace.progression).toBe('D A');
    expect([state().canUndo, notices()]).toEqual([false, []]);
  });

  it('says what it left out of a link', () => {
    const { state } = opened('#progression=D&position=99');
    expect(state().notices[0]).toEqual({
      id: 'link',
      tone: 'error',
      text: 'Left out of the link: position “99”: expected a fret from 1 to 22.',
    });
  });

  it('never throws at an address, whatever it says', () => {
    for (const hash of ['#', '#%', '#progression=%E0%A4%A', '#=&&=', '#at=-1.0', '#tuning=']) {
      expect(opened(hash, {}).state().study.account).not.toBe('');
    }
  });
});

describe('work that a link took the place of', () => {
  it('is still there after the page was closed and opened again', () => {
    const first = opened('#progression=D+A');
    first.pass();
    first.close();
    const again = fakePage(first.made.hash, Object.fromEntries(first.kept));
    const store = openStudyStore(again.page);
    expect(store.cell.get().workspace.progression).toBe('D A');
    store.intents.undo();
    expect(store.cell.get().workspace).toEqual(MINE);
  });

  it('is no longer set aside once it is taken up again', () => {
    const { intents, pass, kept } = opened('#progression=D+A');
    expect(kept.get(ASIDE_KEY)).toContain('Am F C G');
    intents.undo();
    pass();
    expect(kept.get(ASIDE_KEY)).toBe('[]');
  });
});

describe('keeping', () => {
  it('waits a moment, then writes address and storage once', () => {
    const { intents, pass, made, waiting, keptText } = opened('', {});
    pass();
    const before = made.writes;
    intents.setProgression('E');
    intents.setProgression('Em');
    expect([...waiting.values()]).toEqual([PATIENCE]);
    pass();
    expect(new URLSearchParams(made.hash.slice(1)).get('progression')).toBe('Em');
    expect([keptText(), made.writes - before]).toEqual(['Em', 1]);
  });

  it('writes the cursor too', () => {
    const { intents, pass, made } = opened();
    intents.moveCursor(1);
    pass();
    expect(new URLSearchParams(made.hash.slice(1)).get('at')).toBe('2.1');
  });

  it.each(['pagehide', 'visibilitychange'] as const)('writes at once at %s', (event) => {
    const { intents, fire, keptText, waiting } = opened();
    intents.setProgression('Em');
    fire(event);
    expect([keptText(), waiting.size]).toEqual(['Em', 0]);
  });

  it('writes nothing that is written', () => {
    const { fire, pass, made } = opened();
    pass();
    const before = made.writes;
    fire('pagehide');
    expect(made.writes).toBe(before);
  });

  it('ends with close', () => {
    const { intents, close, waiting, listeners } = opened();
    close();
    intents.setProgression('Em');
    expect([waiting.size, listeners.size]).toEqual([0, 0]);
  });
});

describe('an address that comes while the page is open', () => {
  it('is taken over, and undo leads back', () => {
    const { made, fire, state, intents, notices } = opened();
    made.hash = '#progression=E7&position=9';
    fire('hashchange');
    expect(state().workspace).toMatchObject({ progression: 'E7', position: 9, theme: 'dark' });
    expect(notices()).toEqual(['aside']);
    intents.undo();
    expect(state().workspace).toEqual(MINE);
  });

  it('sets aside what one was doing, until that is taken up again', () => {
    const { made, fire, intents, pass, kept, keptText } = opened();
    made.hash = '#progression=E7';
    fire('hashchange');
    pass();
    expect([keptText(), kept.get(ASIDE_KEY)?.includes('Am F C G')]).toEqual(['E7', true]);
    intents.undo();
    pass();
    expect([keptText(), kept.get(ASIDE_KEY)]).toEqual(['Am F C G', '[]']);
  });

  it('that moves only the cursor takes the place of nothing', () => {
    const { made, fire, state, kept } = opened();
    made.hash = `#${makeAddress({ ...MINE, at: { bar: 3, beat: 1 } })}`;
    fire('hashchange');
    expect([state().study.symbol, state().canUndo]).toEqual(['C', false]);
    expect(kept.has(ASIDE_KEY)).toBe(false);
  });

  it('that is what it was, or empty, changes nothing', () => {
    const { made, fire, state } = opened();
    const before = state();
    for (const hash of ['', '#', `#${makeAddress(MINE)}`]) {
      made.hash = hash;
      fire('hashchange');
      expect(state()).toBe(before);
    }
  });

  it('wins over what was not written yet', () => {
    const { made, fire, pass, state, intents } = opened();
    intents.setProgression('Em');
    made.hash = '#progression=E7';
    fire('hashchange');
    pass();
    expect(state().workspace.progression).toBe('E7');
    expect(new URLSearchParams(made.hash.slice(1)).get('progression')).toBe('E7');
  });
});

describe('storage that fails', () => {
  it('is told once, work goes on, and the address is kept all the same', () => {
    const { made, intents, pass, notices, state } = opened();
    made.refusal = 'QuotaExceededError';
    intents.setProgression('Em');
    pass();
    expect(notices()).toEqual(['storage']);
    expect(state().notices[0]?.text).toContain('no room left');
    expect(new URLSearchParams(made.hash.slice(1)).get('progression')).toBe('Em');
    intents.dismissNotice('storage');
    intents.setProgression('Em7');
    pass();
    expect([notices(), state().study.symbol]).toEqual([[], 'Em7']);
  });

  it('is no longer told once it works again', () => {
    const { made, intents, pass, notices } = opened();
    made.refusal = 'SecurityError';
    intents.setProgression('Em');
    pass();
    made.refusal = '';
    intents.setProgression('Em7');
    pass();
    expect(notices()).toEqual([]);
  });

  it('from the start does not keep anyone from working', () => {
    const { page } = fakePage('#progression=D');
    const openStorage = () => {
      throw new DOMException('no', 'SecurityError');
    };
    const { cell } = openStudyStore({ ...page, openStorage });
    expect(cell.get().workspace.progression).toBe('D');
    expect(cell.get().notices.map(({ id }) => id)).toEqual(['storage']);
  });

  it('does not stop at an address that cannot be written', () => {
    const fake = fakePage();
    const replaceHash = () => {
      throw new DOMException('too often', 'SecurityError');
    };
    const { intents } = openStudyStore({ ...fake.page, replaceHash });
    intents.setProgression('Em');
    fake.pass();
    expect(fake.kept.get(WORK_KEY)).toContain('Em');
  });
});

describe('kept work that cannot be read', () => {
  it('is copied before it is written over, and said', () => {
    const { kept, notices, intents, pass, state } = opened('', { [WORK_KEY]: '{"version":9}' });
    expect(notices()).toEqual(['unread']);
    expect(state().workspace).toEqual(DEFAULT_WORKSPACE);
    intents.setProgression('Em');
    pass();
    expect(kept.get(UNREAD_KEY)).toBe('{"version":9}');
    expect(kept.get(WORK_KEY)).toContain('Em');
  });

  it('is not written over where there is no room for the copy', () => {
    const fake = fakePage('', { [WORK_KEY]: '{"version":9}' });
    fake.made.refusal = 'QuotaExceededError';
    const { intents, cell } = openStudyStore(fake.page);
    fake.made.refusal = '';
    intents.setProgression('Em');
    fake.pass();
    expect(fake.kept.get(WORK_KEY)).toBe('{"version":9}');
    expect(cell.get().notices.map(({ id }) => id)).toEqual(['storage', 'unread']);
  });
});

describe('copying the link', () => {
  it('copies the address of the work as it is now', async () => {
    const { intents, made, state } = opened('#progression=D+A');
    intents.setProgression('E');
    intents.copyLink();
    await expect.poll(() => state().notices.at(-1)?.id).toBe('copy');
    expect(made.copied).toBe('https://teacher.example/handspan/#progression=E&at=1.1&position=7');
    expect(state().notices.at(-1)).toEqual({
      id: 'copy',
      tone: 'info',
      text: 'The link is copied, without tempo, loop and levels.',
    });
  });

  it('says when that is not possible', async () => {
    const { intents, made, state } = opened();
    made.copies = false;
    intents.copyLink();
    await expect.poll(() => state().notices.at(-1)?.tone).toBe('error');
  });
});
