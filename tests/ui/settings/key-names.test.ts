import { expect, it } from 'vitest';
import { COMMANDS } from '../../../src/ui/commands/index.ts';
import { keyNames } from '../../../src/ui/settings/key-names.ts';

it.each([
  ['ArrowRight', '→'],
  ['Shift+ArrowUp', 'Shift ↑'],
  ['Mod+Shift+z', 'Ctrl Shift Z'],
  ['PageDown', 'Page down'],
  ['?', '?'],
  ['+', '+'],
  ['Escape', 'Esc'],
])('writes %s as people read it on their keys', (chord, expected) => {
  expect(keyNames(chord).join(' ')).toBe(expected);
});

it('has a name without code words for every key of every command', () => {
  const names = COMMANDS.flatMap(({ keys }) => keys.flatMap(keyNames));
  expect(names.filter((name) => /^(Arrow|Mod|Page[A-Z])/.test(name))).toEqual([]);
});
