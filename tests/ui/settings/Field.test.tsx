import { act, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { expect, it } from 'vitest';
import { DEFAULT_SOUND } from '#lesson';
import { listenForKeys } from '../../../src/ui/commands/index.ts';
import { Speed } from '../../../src/ui/sound/Speed.tsx';
import { Transport } from '../../../src/ui/sound/Transport.tsx';
import { createStudyStore, StudyStoreContext } from '../../../src/ui/store/index.ts';
import { workspace } from '../store/fixture.ts';

const RISE = { by: 4, every: 2, most: 140 };
const sound = { ...DEFAULT_SOUND, transport: { ...DEFAULT_SOUND.transport, rise: RISE } };

function shown() {
  const store = createStudyStore(workspace('| C | G | F | Am |', { sound }));
  render(
    <StudyStoreContext value={store}>
      <Transport />
      <Speed />
    </StudyStoreContext>,
  );
  return store;
}

const field = (name: string): HTMLElement => screen.getByRole('textbox', { name });

it.each([
  ['Tempo', '95', (sound: typeof DEFAULT_SOUND) => sound.transport.tempo, 95],
  ['Loop', '2-3', (sound: typeof DEFAULT_SOUND) => sound.transport.loop, { first: 2, last: 3 }],
  ['by', '6', (sound: typeof DEFAULT_SOUND) => sound.transport.rise?.by, 6],
] as const)(
  '%s takes what was typed on Enter and gives the keys back',
  async (name, text, of, value) => {
    const store = shown();
    await userEvent.clear(field(name));
    await userEvent.type(field(name), `${text}{Enter}`);
    expect(of(store.cell.get().workspace.sound)).toEqual(value);
    expect(document.body).toHaveFocus();
    expect(field(name)).toHaveValue(text);
  },
);

it('keeps the focus where something was refused, for it is to be mended', async () => {
  shown();
  await userEvent.clear(field('Tempo'));
  await userEvent.type(field('Tempo'), 'abc{Enter}');
  expect(field('Tempo')).toHaveFocus();
  expect(field('Tempo')).toHaveAccessibleDescription(/“abc”: expected .*; still 90/);
});

it('drops on Escape what was typed, and gives the keys back', async () => {
  const store = shown();
  await userEvent.type(field('Tempo'), '5{Escape}');
  expect(field('Tempo')).toHaveValue('90');
  expect(store.cell.get().workspace.sound.transport.tempo).toBe(90);
  expect(document.body).toHaveFocus();
});

it('lets the pedal through from a field of one line', async () => {
  const store = shown();
  const stop = listenForKeys(window, store);
  await userEvent.click(field('Tempo'));
  await act(() => userEvent.keyboard('{PageDown}'));
  expect(store.cell.get().study.cursor).toBe(1);
  await act(() => userEvent.keyboard('{ArrowRight}'));
  expect(store.cell.get().study.cursor).toBe(1);
  stop();
});

it('says one thing at a time where fields share a place for it', async () => {
  shown();
  for (const name of ['by', 'after', 'up to']) {
    await userEvent.clear(field(name));
    await userEvent.type(field(name), '-5{Enter}');
    expect(field(name)).toHaveAccessibleDescription(/“-5”: expected/);
    await userEvent.type(field(name), '1{Enter}');
    expect(field(name)).toHaveAccessibleDescription(/“-51”: expected/);
  }
  expect(document.querySelectorAll('.field-error')).toHaveLength(1);
});
