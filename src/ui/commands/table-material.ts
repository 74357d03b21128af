/** Commands for what is drawn over the neck: lenses, turned forms, routes. */
import { type Lens, ROUTES } from '#lesson';
import { TURNS, type Turn } from '#neck';
import type { AppState } from '../store/index.ts';
import { command, following } from './make.ts';
import type { Command } from './types.ts';

/** The lens that is on already is taken off. */
const lensCommand = (lens: Lens, label: string, key: string): Command =>
  command('Study', `lens-${lens}`, label, [key], (intents, { workspace }) =>
    intents.setLens(workspace.lens === lens ? 'none' : lens),
  );

const canLeave = ({ workspace, study, practising }: AppState): boolean =>
  practising ||
  workspace.lens !== 'none' ||
  workspace.turn !== undefined ||
  workspace.compare !== undefined ||
  study.route?.plan !== undefined;

const isFormAsked = ({ workspace }: AppState): boolean =>
  workspace.route === undefined && workspace.form !== undefined;

export const LENS_COMMANDS: readonly Command[] = [
  lensCommand('bends', 'Bends', 'Shift+b'),
  lensCommand('connections', 'Connections to the next chord', 'Shift+c'),
  lensCommand('turn', 'Turn the form', 'Shift+t'),
  lensCommand('fingering', 'Put down a fingering', 'Shift+f'),
  lensCommand('compare', 'Compare', 'Shift+m'),
  lensCommand('route', 'Route', 'Shift+r'),
  {
    ...command('Study', 'leave', 'Back to the plain reading', ['Escape'], (intents, state) => {
      if (state.practising) intents.setPractising(false);
      else if (canLeave(state)) intents.leave();
      else intents.pickForm(undefined);
    }),
    enabled: (state) => canLeave(state) || isFormAsked(state),
  },
];

const hasReading = ({ study }: AppState): boolean => study.reading !== undefined;

const TURN_KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '-'] as const;

const turnCommand = ({ name }: Turn, index: number): Command => ({
  ...command(
    'Turns',
    `turn-${name.replace('♭', 'b')}`,
    `Turn into ${name}`,
    TURN_KEYS.slice(index, index + 1),
    (intents) => intents.turnForm(name),
  ),
  enabled: hasReading,
});

export const TURN_COMMANDS: readonly Command[] = TURNS.map(turnCommand);

const NO_ROUTE = 'none';
const KINDS = [NO_ROUTE, ...ROUTES] as const;

const routesFound = ({ study }: AppState): number => study.route?.routes.length ?? 0;

/** Round the routes that were found, best first. */
const routeCommand = (name: string, label: string, key: string, by: 1 | -1): Command => ({
  ...command('Route', name, label, [key], (intents, state) => {
    const count = routesFound(state);
    intents.chooseRoute(((state.study.route?.chosen ?? 0) + by + count) % count);
  }),
  enabled: (state) => routesFound(state) > 1,
});

const cellUnderCursor = ({ study }: AppState) => study.cells[study.cursor];

const isPinned = (state: AppState): boolean =>
  state.workspace.pins.some((pin) => pin.at === cellUnderCursor(state)?.at);

export const ROUTE_COMMANDS: readonly Command[] = [
  command('Route', 'route-kind', 'No route, stay, carry or travel', ['r'], (intents, state) => {
    const kind = following(KINDS, state.workspace.route ?? NO_ROUTE);
    intents.setRoute(kind === NO_ROUTE ? undefined : kind);
  }),
  routeCommand('route-next', 'Next best route', 'n', 1),
  routeCommand('route-previous', 'Route before', 'Shift+n', -1),
  {
    ...command(
      'Route',
      'pin',
      'Pin the form to the chord, or let it go',
      ['p'],
      (intents, state) => {
        const form = cellUnderCursor(state)?.form;
        const { cursor } = state.study;
        if (isPinned(state)) intents.unpin(cursor);
        else if (form) intents.pinForm(cursor, form.form.name, form.anchor);
      },
    ),
    enabled: (state) => isPinned(state) || cellUnderCursor(state)?.form?.grip !== undefined,
  },
  {
    ...command('Route', 'stop-planning', 'Stop planning', [], (intents) => intents.stopPlanning()),
    enabled: ({ study }) => study.route?.plan !== undefined,
  },
];
