/** What keys mean on the practice screen: there the hands and feet of a player are on them. */
import type { Pedal } from '#lesson';
import type { AppState } from '../store/index.ts';
import type { Meaning } from './known.ts';
import type { Command, Group } from './types.ts';

/** What the keys that pedals send mean while the pedal plays. */
const PEDAL: Readonly<Record<string, string>> = {
  PageDown: 'Space',
  ArrowRight: 'Space',
  ArrowDown: 'Space',
  PageUp: 'Backspace',
  ArrowLeft: 'Backspace',
  ArrowUp: 'Backspace',
};

/** Slower and faster as one looks for them first; beside it they turn the chord, or mean nothing. */
const SPEED: Readonly<Record<string, string>> = { '-': '<', '+': '>', '=': '>' };

const PRACTISED: readonly Group[] = ['Cursor', 'Hand', 'Sound'];
const ALSO = ['leave', 'labels', 'keys', 'undo', 'redo'];

/** Whether a command belongs to practising; one that studies is not to be met by a slip of the hand. */
const isPractised = ({ name, group }: Command): boolean =>
  PRACTISED.includes(group) || ALSO.includes(name);

const translated = (key: string, pedal: Pedal): string =>
  (pedal === 'plays' ? PEDAL[key] : undefined) ?? SPEED[key] ?? key;

/** The command that a key means: what it claims, but on the practice screen. */
export const meantBy: Meaning = (key, { practising, workspace }, byKey) => {
  if (!practising) return byKey.get(key);
  const command = byKey.get(translated(key, workspace.sound.pedal));
  return command && isPractised(command) ? command : undefined;
};

const MOVED = [...Object.keys(PEDAL), ...Object.keys(SPEED)];

/** The keys of a command on the practice screen, in a state that may be one without it. */
export function practiceKeys(command: Command, { workspace }: AppState): readonly string[] {
  if (!isPractised(command)) return [];
  const { pedal } = workspace.sound;
  const own = command.keys.filter((key) => translated(key, pedal) === key);
  const more = MOVED.filter((key) => command.keys.includes(translated(key, pedal)));
  return [...own, ...more.filter((key) => !own.includes(key))];
}
