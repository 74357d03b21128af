/** Every command, in the order of the sheet of keys. */
import { LABELS, SPELLINGS, THEMES } from '#lesson';
import { formsOf } from '#neck';
import type { AppState, Intents, Panel, StudyStore } from '../store/index.ts';
import type { Command, Group } from './types.ts';

type Perform = (intents: Intents, state: AppState) => void;

const always = (): boolean => true;

/** The usual case: it works outside fields, at once or not at all. */
function command(
  group: Group,
  name: string,
  label: string,
  keys: readonly string[],
  perform: Perform,
): Command {
  const run = ({ intents, cell }: StudyStore) => perform(intents, cell.get());
  const usual = { scope: 'workspace', repeats: false, enabled: always } as const;
  return { name, label, group, keys, ...usual, perform: run };
}

const hasChords = ({ study }: AppState): boolean => study.cells.length > 0;
const hasNext = ({ study }: AppState): boolean => study.cursor + 1 < study.cells.length;
const hasPrevious = ({ study }: AppState): boolean => study.cursor > 0;
const hasPlaces = ({ study }: AppState): boolean => study.places.some((place) => place.grip);
const hasKey = ({ study }: AppState): boolean => study.key !== undefined;

const cursorCommand = (
  name: string,
  label: string,
  keys: readonly string[],
  by: 1 | -1 | 'start' | 'end',
): Command => ({
  ...command('Cursor', name, label, keys, (intents) => intents.moveCursor(by)),
  repeats: true,
  enabled: hasChords,
});

// Foot pedals that turn pages send PageDown and PageUp.
const CURSOR: readonly Command[] = [
  {
    ...cursorCommand('cursor-next', 'Next chord', ['ArrowRight', 'PageDown'], 1),
    enabled: hasNext,
  },
  {
    ...cursorCommand('cursor-previous', 'Previous chord', ['ArrowLeft', 'PageUp'], -1),
    enabled: hasPrevious,
  },
  { ...cursorCommand('cursor-start', 'First chord', ['Home'], 'start'), enabled: hasPrevious },
  { ...cursorCommand('cursor-end', 'Last chord', ['End'], 'end'), enabled: hasNext },
];

const HAND: readonly Command[] = [
  {
    ...command('Hand', 'hand-up', 'Hand up a fret', ['ArrowUp', ']'], (intents) =>
      intents.stepPosition(1),
    ),
    repeats: true,
    enabled: ({ workspace }) => workspace.position < workspace.instrument.frets,
  },
  {
    ...command('Hand', 'hand-down', 'Hand down a fret', ['ArrowDown', '['], (intents) =>
      intents.stepPosition(-1),
    ),
    repeats: true,
    enabled: ({ workspace }) => workspace.position > 1,
  },
  {
    ...command('Hand', 'elsewhere-up', 'Next place up the neck', ['Shift+ArrowUp'], (intents) =>
      intents.shapeElsewhere(1),
    ),
    repeats: true,
    enabled: hasPlaces,
  },
  {
    ...command(
      'Hand',
      'elsewhere-down',
      'Next place down the neck',
      ['Shift+ArrowDown'],
      (intents) => intents.shapeElsewhere(-1),
    ),
    repeats: true,
    enabled: hasPlaces,
  },
];

/** Picking the form that is asked for already lets go of it. */
const formCommand = (form: string): Command => ({
  ...command(
    'Forms',
    `form-${form.toLowerCase()}`,
    `${form} form`,
    [form.toLowerCase()],
    (intents, { workspace }) => intents.pickForm(workspace.form === form ? undefined : form),
  ),
  enabled: ({ workspace }) => formsOf(workspace.instrument).some(({ name }) => name === form),
});

const FORMS: readonly Command[] = [
  ...['C', 'A', 'G', 'E', 'D'].map(formCommand),
  {
    ...command('Forms', 'form-best', 'Best form under the hand', ['0', 'Escape'], (intents) =>
      intents.pickForm(undefined),
    ),
    enabled: ({ workspace }) => workspace.form !== undefined,
  },
];

function following<T>(values: readonly [T, ...T[]], value: T): T {
  return values[(values.indexOf(value) + 1) % values.length] ?? values[0];
}

const panelCommand = (panel: Panel, label: string, key: string): Command =>
  command('View', panel, label, [key], (intents, state) =>
    intents.openPanel(state.panel === panel ? undefined : panel),
  );

const VIEW: readonly Command[] = [
  command('View', 'labels', 'Degrees, notes, fingers or nothing', ['l'], (intents, state) =>
    intents.setLabels(following(LABELS, state.workspace.labels)),
  ),
  command('View', 'spelling', 'Exact or plain spelling', ['s'], (intents, state) =>
    intents.setSpelling(following(SPELLINGS, state.workspace.spelling)),
  ),
  command('View', 'theme', 'Next theme', ['t'], (intents, state) =>
    intents.setTheme(following(THEMES, state.workspace.theme)),
  ),
  panelCommand('settings', 'Settings', ','),
  panelCommand('keys', 'Keys', '?'),
];

const transposing = (name: string, label: string, by: number): Command => ({
  ...command('Work', name, label, [], (intents) => intents.transposeBy(by)),
  enabled: hasKey,
});

const WORK: readonly Command[] = [
  {
    ...command('Work', 'undo', 'Undo', ['Mod+z'], (intents) => intents.undo()),
    scope: 'anywhere',
    repeats: true,
    enabled: (state) => state.canUndo,
  },
  {
    ...command('Work', 'redo', 'Redo', ['Mod+Shift+z', 'Mod+y'], (intents) => intents.redo()),
    scope: 'anywhere',
    repeats: true,
    enabled: (state) => state.canRedo,
  },
  transposing('transpose-up', 'Transpose up a half step', 1),
  transposing('transpose-down', 'Transpose down a half step', -1),
  command('Work', 'copy-link', 'Copy link', [], (intents) => {
    intents.copyLink();
  }),
];

export const COMMANDS: readonly Command[] = [...CURSOR, ...HAND, ...FORMS, ...VIEW, ...WORK];

/** A command by its name. Throws for a name that no command has. */
export function commandNamed(name: string): Command {
  const found = COMMANDS.find((one) => one.name === name);
  if (!found) throw new Error(`no command is named ${name}`);
  return found;
}
