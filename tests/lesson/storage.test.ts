import { describe, expect, it } from 'vitest';
import {
  ASIDE_KEY,
  DEFAULT_WORKSPACE,
  loadKept,
  MOST_ASIDE,
  makeWorkspace,
  type StorageLike,
  saveAside,
  saveWork,
  UNREAD_KEY,
  WORK_KEY,
  type Workspace,
} from '#lesson';
import { OTHER } from './arbitrary.ts';

/** A storage in memory; `room` in UTF-16 units. */
function memory(first: Readonly<Record<string, string>> = {}, room = Number.POSITIVE_INFINITY) {
  const kept = new Map(Object.entries(first));
  const storage: StorageLike = {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => {
      if (text.length > room) throw new DOMException('no room', 'QuotaExceededError');
      kept.set(key, text);
    },
  };
  return { kept, open: () => storage };
}

const forbidden = (): StorageLike => {
  throw new DOMException('not here', 'SecurityError');
};

const titled = (progression: string): Workspace => ({ ...DEFAULT_WORKSPACE, progression });

describe('keeping work', () => {
  it('finds nothing at first', () => {
    expect(loadKept(memory().open)).toEqual({ ok: true, value: { aside: [], unread: [] } });
  });

  it('finds what it kept', () => {
    const { open } = memory();
    expect(saveWork(open, OTHER)).toEqual({ ok: true, value: undefined });
    expect(saveAside(open, [titled('A'), titled('B')]).ok).toBe(true);
    expect(loadKept(open)).toEqual({
      ok: true,
      value: { workspace: OTHER, aside: [titled('A'), titled('B')], unread: [] },
    });
  });

  it('sets aside the latest few', () => {
    const { open } = memory();
    const many = ['A', 'B', 'C', 'D', 'E', 'F', 'G'].map(titled);
    saveAside(open, many);
    const kept = loadKept(open);
    expect(kept.ok && kept.value.aside).toEqual(many.slice(-MOST_ASIDE));
  });

  it('says when the browser forbids it', () => {
    const error = { ok: false, error: { code: 'forbidden' } };
    expect(loadKept(forbidden)).toEqual(error);
    expect(saveWork(forbidden, OTHER)).toEqual(error);
    expect(saveAside(forbidden, [OTHER])).toEqual(error);
  });

  it('says when there is no room', () => {
    const { open } = memory({}, 10);
    expect(saveWork(open, OTHER)).toEqual({ ok: false, error: { code: 'full' } });
  });

  it('copies text that it cannot read before anything is written over it', () => {
    const { open, kept } = memory({ [WORK_KEY]: '{"version":1,' });
    expect(loadKept(open)).toEqual({ ok: true, value: { aside: [], unread: ['everything'] } });
    saveWork(open, OTHER);
    expect(kept.get(UNREAD_KEY)).toBe('{"version":1,');
  });

  it('copies work of which a part makes no sense, and names the part', () => {
    const text = JSON.stringify({ ...makeWorkspace(OTHER), theme: 'plaid' });
    const { open, kept } = memory({ [WORK_KEY]: text });
    const read = loadKept(open);
    expect(read.ok && read.value.unread).toEqual(['theme']);
    expect(read.ok && read.value.workspace).toEqual({ ...OTHER, theme: 'system' });
    expect(kept.get(UNREAD_KEY)).toBe(text);
  });

  it('keeps the same unread text once, and different ones beside each other', () => {
    const { open, kept } = memory({ [WORK_KEY]: 'one' });
    loadKept(open);
    loadKept(open);
    kept.set(WORK_KEY, 'two');
    loadKept(open);
    expect([...kept.keys()]).toEqual([WORK_KEY, UNREAD_KEY, `${UNREAD_KEY}.2`]);
  });

  it('says when there is no room for the copy, and finds the work all the same', () => {
    const text = JSON.stringify({ ...makeWorkspace(OTHER), theme: 'plaid' });
    const read = loadKept(memory({ [WORK_KEY]: text }, 10).open);
    expect(read).toMatchObject({
      ok: true,
      value: { workspace: { theme: 'system' }, unread: ['theme'], uncopied: { code: 'full' } },
    });
  });

  it.each(['no json', '7', '{}', '[7,{}]'])('takes %s for nothing set aside', (text) => {
    const read = loadKept(memory({ [ASIDE_KEY]: text }).open);
    expect(read).toEqual({ ok: true, value: { aside: [], unread: [] } });
  });
});
