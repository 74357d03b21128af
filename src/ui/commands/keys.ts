/** From a key that is pressed to the command that it means. */
import type { AppState, StudyStore } from '../store/index.ts';
import { COMMANDS } from './table.ts';
import type { Command } from './types.ts';

/** A key that was pressed, as far as commands care. */
export interface KeyPress {
  /** As a command writes it: `Shift+ArrowUp`, `Mod+z`, `?`. */
  readonly chord: string;
  /** Held down. */
  readonly repeat: boolean;
  /** Where it belongs to a field, a dialog or a widget that has arrow keys of its own. */
  readonly elsewhere: boolean;
}

const WIDGETS = ['slider', 'spinbutton', 'listbox', 'menu', 'radiogroup', 'textbox', 'combobox'];

/** Where a key is not for the workspace. Check boxes and buttons have no use for letters and arrows. */
const ELSEWHERE = [
  'input:not([type="checkbox"], [type="button"])',
  'textarea',
  'select',
  'dialog',
  '[contenteditable]:not([contenteditable="false"])',
  ...WIDGETS.map((role) => `[role="${role}"]`),
].join(', ');

const isLetter = (key: string): boolean => key.toLowerCase() !== key.toUpperCase();

/**
 * Of a sign such as `?` it does not matter which keys make it: neither shift, nor AltGr (which some
 * systems report as Ctrl and Alt), nor Alt alone.
 */
function chordOf(event: KeyboardEvent): string {
  const single = event.key.length === 1;
  const altGr = event.getModifierState('AltGraph');
  const mod = (event.ctrlKey || event.metaKey) && !altGr;
  const alt = event.altKey && !altGr && (mod || !single);
  const shift = event.shiftKey && (!single || isLetter(event.key));
  const key = single ? event.key.toLowerCase() : event.key;
  return `${mod ? 'Mod+' : ''}${alt ? 'Alt+' : ''}${shift ? 'Shift+' : ''}${key}`;
}

/** Reads a key press; `undefined` for one that is taken already or part of composing a character. */
export function pressOf(event: KeyboardEvent): KeyPress | undefined {
  if (event.defaultPrevented || event.isComposing) return undefined;
  const { target } = event;
  const elsewhere = target instanceof Element && target.closest(ELSEWHERE) !== null;
  return { chord: chordOf(event), repeat: event.repeat, elsewhere };
}

const BY_KEY: ReadonlyMap<string, Command> = new Map(
  COMMANDS.flatMap((command) => command.keys.map((key) => [key, command] as const)),
);

const isSingleCharacter = (chord: string): boolean => chord.replace(/^Shift\+/, '').length === 1;

/**
 * The command that a key means now: none where the key belongs to a field or dialog (unless the
 * command works there too), none for a single character while those are switched off, none that
 * cannot be done.
 */
export function commandFor(press: KeyPress, state: AppState): Command | undefined {
  const command = BY_KEY.get(press.chord);
  if (!command?.enabled(state)) return undefined;
  if (press.elsewhere && command.scope !== 'anywhere') return undefined;
  if (isSingleCharacter(press.chord) && !state.workspace.shortcuts) return undefined;
  return press.repeat && !command.repeats ? undefined : command;
}

/** Performs commands for the keys that reach `target`, usually the window. Returns the way to stop. */
export function listenForKeys(target: Window, store: StudyStore): () => void {
  const onKey = (event: KeyboardEvent): void => {
    const press = pressOf(event);
    const command = press && commandFor(press, store.cell.get());
    if (!command) return;
    event.preventDefault();
    command.perform(store);
  };
  target.addEventListener('keydown', onKey);
  return () => target.removeEventListener('keydown', onKey);
}
