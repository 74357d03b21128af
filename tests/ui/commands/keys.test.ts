import { describe, expect, it, vi } from 'vitest';
import { COMMANDS, commandFor, listenForKeys, pressOf } from '../../../src/ui/commands/index.ts';
import { createStudyStore } from '../../../src/ui/store/index.ts';
import { workspace } from '../store/fixture.ts';

/** Presses a key where the first element of some markup is, and says which chord it was. */
function press(init: KeyboardEventInit, markup = '<p></p>') {
  document.body.innerHTML = markup;
  const target = document.body.querySelector('[data-here]') ?? document.body.firstElementChild;
  let read: ReturnType<typeof pressOf>;
  const listen = (event: KeyboardEvent) => {
    read = pressOf(event);
  };
  window.addEventListener('keydown', listen, { once: true });
  target?.dispatchEvent(new KeyboardEvent('keydown', { bubbles: true, ...init }));
  return read;
}

const state = (...given: Parameters<typeof workspace>) =>
  createStudyStore(workspace(...given)).cell.get();

const meaning = (
  init: KeyboardEventInit,
  markup?: string,
  shortcuts = true,
): string | undefined => {
  const pressed = press(init, markup);
  return pressed && commandFor(pressed, state('C G', { shortcuts }))?.name;
};

describe('the name of a key press', () => {
  it.each([
    [{ key: 'ArrowRight' }, 'ArrowRight'],
    [{ key: 'ArrowUp', shiftKey: true }, 'Shift+ArrowUp'],
    [{ key: 'z', ctrlKey: true }, 'Mod+z'],
    [{ key: 'z', metaKey: true }, 'Mod+z'],
    [{ key: 'Z', ctrlKey: true, shiftKey: true }, 'Mod+Shift+z'],
    [{ key: 'Z', ctrlKey: true }, 'Mod+z'],
    [{ key: '?', shiftKey: true }, '?'],
    [{ key: '[', ctrlKey: true, altKey: true, modifierAltGraph: true }, '['],
    [{ key: '[', altKey: true }, '['],
    [{ key: 'ArrowLeft', altKey: true }, 'Alt+ArrowLeft'],
    [{ key: 'z', ctrlKey: true, altKey: true }, 'Mod+Alt+z'],
  ])('%j is %s', (init, chord) => {
    expect(press(init)?.chord).toBe(chord);
  });

  it('is none while a character is composed', () => {
    expect(press({ key: 'e', isComposing: true })).toBeUndefined();
  });
});

describe('what a key means', () => {
  it('depends on where it is pressed', () => {
    const arrow = { key: 'ArrowRight' };
    const undo = { key: 'ArrowRight', ctrlKey: true };
    expect(meaning(arrow)).toBe('cursor-next');
    expect(meaning(arrow, '<button></button>')).toBe('cursor-next');
    expect(meaning(arrow, '<input type="checkbox">')).toBe('cursor-next');
    for (const markup of [
      '<input>',
      '<input type="radio">',
      '<textarea></textarea>',
      '<select></select>',
      '<div role="slider"></div>',
      '<div contenteditable="true"></div>',
      '<dialog open><button data-here></button></dialog>',
    ]) {
      expect(meaning(arrow, markup)).toBeUndefined();
    }
    expect(meaning(undo)).toBeUndefined();
  });

  it('is to play for Space, but where Space has a use of its own', () => {
    const space = { key: ' ' };
    const shown = '<button data-chord-cell></button>';
    const elsewhere = [
      '<input>',
      '<textarea></textarea>',
      '<select></select>',
      '<button></button>',
    ];
    expect([meaning(space), meaning(space, shown)]).toEqual(['play', 'play']);
    expect(meaning(space, '<input type="range">')).toBe('play');
    expect(meaning(space, '<div role="slider"></div>')).toBe('play');
    for (const markup of elsewhere) expect(meaning(space, markup)).toBeUndefined();
    expect(meaning({ key: 'Enter', ctrlKey: true }, '<textarea></textarea>')).toBe('play-typing');
  });

  it('is what it always is for the keys of a pedal, but on the practice screen', () => {
    const keys = ['PageDown', 'PageUp', 'ArrowRight', 'ArrowLeft'];
    const store = createStudyStore(workspace('C G F'));
    store.intents.moveCursor(1);
    const means = (): readonly (string | undefined)[] =>
      keys.map((chord) => {
        const pressed = { chord, repeat: false, elsewhere: false };
        return commandFor(pressed, store.cell.get())?.name;
      });
    const steps = ['cursor-next', 'cursor-previous', 'cursor-next', 'cursor-previous'];
    expect(means()).toEqual(steps);
    store.intents.setPractising(true);
    expect(means()).toEqual(['play', 'from-start', 'play', 'from-start']);
    const upAndDown = ['ArrowDown', 'ArrowUp'].map(
      (chord) => commandFor({ chord, repeat: false, elsewhere: false }, store.cell.get())?.name,
    );
    expect(upAndDown).toEqual(['play', 'from-start']);
    store.intents.setPedal('steps');
    expect(means()).toEqual(steps);
  });

  it('is on the practice screen only what belongs to practising', () => {
    const store = createStudyStore(workspace('| C | G | F |'));
    const keys = COMMANDS.flatMap((command) => command.keys);
    const means = (key: string): string | undefined =>
      commandFor({ chord: key, repeat: false, elsewhere: false }, store.cell.get())?.group;
    const groups = () => new Set(keys.map(means).filter((group) => group !== undefined));
    expect(groups()).toContain('Turns');
    store.intents.setPractising(true);
    expect(groups()).toEqual(new Set(['Cursor', 'Hand', 'Study', 'Sound', 'View']));
    expect(['1', '-', 'c', 'Shift+b', 'r', 't', ','].map(means)).toEqual([
      ...[undefined, 'Sound', undefined, undefined, undefined, undefined, undefined],
    ]);
    const named = ['-', '+', 'l', '?', 'Escape', 'o', ']'].map(
      (chord) => commandFor({ chord, repeat: false, elsewhere: false }, store.cell.get())?.name,
    );
    expect(named).toEqual([
      ...['slower', 'faster', 'labels', 'keys', 'leave', 'loop-section', 'hand-up'],
    ]);
  });

  it('is for a page up or down that of the workspace also in a field of one line', () => {
    const page = { key: 'PageDown' };
    expect(meaning(page, '<input type="text">')).toBe('cursor-next');
    for (const markup of [
      '<textarea></textarea>',
      '<input type="range">',
      '<select></select>',
      '<dialog open><input type="text" data-here></dialog>',
    ]) {
      expect(meaning(page, markup)).toBeUndefined();
    }
  });

  it('that is held down is only what may be done again and again', () => {
    expect(meaning({ key: 'ArrowRight', repeat: true })).toBe('cursor-next');
    expect(meaning({ key: 'l', repeat: true })).toBeUndefined();
  });

  it('is nothing where it cannot be done', () => {
    expect(meaning({ key: 'ArrowLeft' })).toBeUndefined();
    expect(meaning({ key: 'z', ctrlKey: true })).toBeUndefined();
  });

  it('of a single character can be switched off (WCAG 2.2, 2.1.4)', () => {
    for (const key of COMMANDS.flatMap(({ keys }) => keys).filter((k) => k.length === 1)) {
      expect(meaning({ key }, '<p></p>', false)).toBeUndefined();
    }
    expect(meaning({ key: 'l' })).toBe('labels');
    expect(meaning({ key: 'ArrowRight' }, '<p></p>', false)).toBe('cursor-next');
  });
});

describe('listening for keys', () => {
  function listening() {
    document.body.innerHTML = '<textarea></textarea><p></p>';
    const store = createStudyStore(workspace('C G'));
    const stop = listenForKeys(window, store);
    const send = (init: KeyboardEventInit, selector = 'p'): KeyboardEvent => {
      const event = new KeyboardEvent('keydown', { bubbles: true, cancelable: true, ...init });
      document.querySelector(selector)?.dispatchEvent(event);
      return event;
    };
    return { store, stop, send };
  }

  it('performs the command and keeps the key from the browser', () => {
    const { store, stop, send } = listening();
    expect(send({ key: 'ArrowRight' }).defaultPrevented).toBe(true);
    expect(store.cell.get().study.cursor).toBe(1);
    expect(send({ key: 'q' }).defaultPrevented).toBe(false);
    stop();
    send({ key: 'ArrowLeft' });
    expect(store.cell.get().study.cursor).toBe(1);
  });

  it('takes back what was typed, also in the field', () => {
    const { store, stop, send } = listening();
    store.intents.setProgression('C G A', 5);
    expect(send({ key: 'z', ctrlKey: true }, 'textarea').defaultPrevented).toBe(true);
    expect(store.cell.get().workspace.progression).toBe('C G');
    send({ key: 'y', ctrlKey: true }, 'textarea');
    expect(store.cell.get().workspace.progression).toBe('C G A');
    stop();
  });

  it('leaves alone a key that someone else has taken', () => {
    const { store, stop, send } = listening();
    const taken = vi.fn((event: Event) => event.preventDefault());
    document.querySelector('p')?.addEventListener('keydown', taken);
    send({ key: 'ArrowRight' });
    expect(taken).toHaveBeenCalledTimes(1);
    expect(store.cell.get().study.cursor).toBe(0);
    stop();
  });
});

describe('a key that is held down', () => {
  const typed = (type: 'keydown' | 'keyup', repeat = false) =>
    window.dispatchEvent(new KeyboardEvent(type, { key: 'ArrowRight', repeat }));

  it('keeps what need not follow it as it was, until it is let go', () => {
    const store = createStudyStore(workspace('C G Am F'));
    const stop = listenForKeys(window, store);
    const { cell } = store;
    typed('keydown');
    expect(cell.get().held).toBeUndefined();
    const { study } = cell.get();
    typed('keydown', true);
    typed('keydown', true);
    expect(cell.get().study.cursor).toBe(3);
    expect(cell.get().held).toBe(study);
    typed('keyup');
    expect('held' in cell.get()).toBe(false);
    stop();
  });

  it.each(['another key', 'the window losing the focus'])('lets go at %s', (end) => {
    const store = createStudyStore(workspace('C G Am F'));
    const stop = listenForKeys(window, store);
    typed('keydown', true);
    expect(store.cell.get().held).toBeDefined();
    if (end === 'another key') typed('keydown');
    else window.dispatchEvent(new Event('blur'));
    expect(store.cell.get().held).toBeUndefined();
    stop();
  });
});
