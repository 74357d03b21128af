/** The commands of the first view. */
import { LABELS, SPELLINGS, THEMES } from '#lesson';
import { formsOf } from '#neck';
import type { AppState, Panel } from '../store/index.ts';
import { laterIntents } from '../store/intents-later.ts';
import { command, following } from './make.ts';
import type { Command } from './types.ts';

const hasChords = ({ study }: AppState): boolean => study.cells.length > 0;
const hasNext = ({ study }: AppState): boolean => study.cursor + 1 < study.cells.length;
const hasPrevious = ({ study }: AppState): boolean => study.cursor > 0;
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

/** As long as nobody can tell, there may be another place. */
const elsewhere = (name: string, label: string, key: string, by: 1 | -1): Command => ({
  ...command('Hand', name, label, [key], (intents) => intents.shapeElsewhere(by)),
  repeats: true,
  enabled: (state) => laterIntents()?.form.isElsewhere(state, by) ?? true,
});

// Foot pedals that turn pages send PageDown and PageUp.
const CURSOR: readonly Command[] = [
  {
    ...cursorCommand('cursor-next', 'Next chord in the chart', ['ArrowRight', 'PageDown'], 1),
    enabled: hasNext,
  },
  {
    ...cursorCommand('cursor-previous', 'Previous chord in the chart', ['ArrowLeft', 'PageUp'], -1),
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
  elsewhere('elsewhere-up', 'Next place up the neck', 'Shift+ArrowUp', 1),
  elsewhere('elsewhere-down', 'Next place down the neck', 'Shift+ArrowDown', -1),
];

/** The form that is asked for: where a route chooses the forms, the one pinned under the cursor. */
function formAsked({ workspace, study }: AppState): string | undefined {
  if (workspace.route === undefined || workspace.route === 'carry') return workspace.form;
  return workspace.pins.find((pin) => pin.at === study.cells[study.cursor]?.at)?.form;
}

/** Picking the form that is asked for already lets go of it. */
const formCommand = (form: string): Command => ({
  ...command(
    'Forms',
    `form-${form.toLowerCase()}`,
    `${form} form`,
    [form.toLowerCase()],
    (intents, state) => intents.pickForm(formAsked(state) === form ? undefined : form),
  ),
  enabled: ({ workspace }) => formsOf(workspace.instrument).some(({ name }) => name === form),
});

const FORMS: readonly Command[] = [
  ...['C', 'A', 'G', 'E', 'D'].map(formCommand),
  {
    ...command('Forms', 'form-best', 'Best form under the hand', ['0'], (intents) =>
      intents.pickForm(undefined),
    ),
    enabled: (state) => formAsked(state) !== undefined,
  },
];

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
  panelCommand('keys', 'Keys and words', '?'),
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

export const FIRST_COMMANDS: readonly Command[] = [...CURSOR, ...HAND, ...FORMS, ...VIEW, ...WORK];
