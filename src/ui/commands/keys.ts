/** From a key that is pressed to the command that it means. */
import { type AppState, holding, type StudyStore, whenLenses } from '../store/index.ts';
import { commandMeant, hasAllCommands } from './known.ts';
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

const elsewhere = (free: string): string =>
  [
    `input:not([type="checkbox"], [type="button"]${free})`,
    'textarea',
    'select',
    'dialog',
    '[contenteditable]:not([contenteditable="false"])',
    ...WIDGETS.map((role) => `[role="${role}"]`),
  ].join(', ');

/** Where a key is not for the workspace. Check boxes and buttons have no use for letters and arrows. */
const ELSEWHERE = elsewhere('');

/** The same for a page up or down, which a foot pedal sends: a field of one line has no use for it. */
const PAGED = elsewhere(', [type="text"]');

/** Where Space has a use of its own. */
const SPACED = [
  'input:not([type="checkbox"], [type="button"], [type="range"])',
  'input[type="checkbox"]',
  'textarea',
  'select',
  'dialog',
  '[contenteditable]:not([contenteditable="false"])',
  'summary',
  'button:not([data-chord-cell])',
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
  const key = event.key === ' ' ? 'Space' : single ? event.key.toLowerCase() : event.key;
  return `${mod ? 'Mod+' : ''}${alt ? 'Alt+' : ''}${shift ? 'Shift+' : ''}${key}`;
}

/**
 * Reads a key press; `undefined` for one that is taken already or part of composing a character.
 * `clicked`: a button that has the focus only because it was clicked; Space is not for it.
 */
export function pressOf(event: KeyboardEvent, clicked?: Element): KeyPress | undefined {
  if (event.defaultPrevented || event.isComposing) return undefined;
  const { target } = event;
  const chord = chordOf(event);
  const taken = chord === 'Space' ? SPACED : chord.startsWith('Page') ? PAGED : ELSEWHERE;
  const owner = target instanceof Element ? target.closest(taken) : null;
  return { chord, repeat: event.repeat, elsewhere: owner !== null && owner !== clicked };
}

const PRESSED = 'button, summary, input[type="checkbox"]';

/** Follows which button was clicked last, until the focus is moved by key. */
function followClicks(target: Window, signal: AbortSignal): () => Element | undefined {
  let clicked: Element | undefined;
  const press = ({ target: pressed }: Event): void => {
    clicked = (pressed instanceof Element && pressed.closest(PRESSED)) || undefined;
  };
  const leave = ({ key }: KeyboardEvent): void => {
    if (key === 'Tab') clicked = undefined;
  };
  target.addEventListener('pointerdown', press, { signal });
  target.addEventListener('keydown', leave, { signal });
  return () => clicked;
}

const isSingleCharacter = (chord: string): boolean => chord.replace(/^Shift\+/, '').length === 1;

/**
 * The command that a key means now: none where the key belongs to a field or dialog (unless the
 * command works there too), none for a single character while those are switched off, none that
 * cannot be done.
 */
export function commandFor(press: KeyPress, state: AppState): Command | undefined {
  const command = commandMeant(press.chord, state);
  if (!command?.enabled(state)) return undefined;
  if (press.elsewhere && command.scope !== 'anywhere') return undefined;
  if (isSingleCharacter(press.chord) && !state.workspace.shortcuts) return undefined;
  return press.repeat && !command.repeats ? undefined : command;
}

/** Says whether the key meant something. */
function perform(press: KeyPress, store: StudyStore): boolean {
  const command = commandFor(press, store.cell.get());
  command?.perform(store);
  return command !== undefined;
}

/** A key of a command that is still to come; one that cannot be done now is not meant for later. */
const isToCome = ({ chord }: KeyPress, store: StudyStore): boolean =>
  !hasAllCommands() && commandMeant(chord, store.cell.get()) === undefined;

/** Performs commands for the keys that reach `target`, usually the window. Returns the way to stop. */
export function listenForKeys(target: Window, store: StudyStore): () => void {
  const stop = new AbortController();
  const clicked = followClicks(target, stop.signal);
  const hold = (on: boolean) => store.cell.update((state) => holding(state, on));
  const onKey = (event: KeyboardEvent): void => {
    hold(event.repeat);
    const press = pressOf(event, clicked());
    if (!press) return;
    if (perform(press, store)) event.preventDefault();
    else if (isToCome(press, store)) whenLenses(() => perform(press, store), false);
  };
  target.addEventListener('keydown', onKey, { signal: stop.signal });
  for (const end of ['keyup', 'blur'] as const)
    target.addEventListener(end, () => hold(false), { signal: stop.signal });
  return () => stop.abort();
}
