/** Intents that put a fingering down and keep it as a form of one's own. */
import {
  LONGEST_FINGERING,
  LONGEST_FORM_NAME,
  MOST_OWN_FORMS,
  type OwnForm,
  ownFormOf,
  tuningOf,
  type Workspace,
  withInstrument,
} from '#lesson';
import { checkFingering, type Frets, formsOf, makeFingering } from '#neck';
import { accept, glance, patched, refuse, step, without } from './state.ts';
import { withName } from './study.ts';
import type { AppState } from './types.ts';
import { typingRun } from './typing.ts';

/**
 * Takes over a fingering as it is typed, right or wrong, and shows what it is called; the study says
 * what is wrong with it.
 */
export function setFingering(state: AppState, fingering: string): AppState {
  const { workspace } = state;
  if (fingering.length > LONGEST_FINGERING) {
    return refuse(state, 'fingering', 'expected one sign for each string, as x7678x');
  }
  const run = typingRun(workspace.fingering, fingering);
  const next = patched(workspace, { fingering, lens: 'fingering' });
  if (fingering === workspace.fingering) return glance(state, next);
  return step(accept(state, 'fingering'), next, run && `fingering.${run}`);
}

function fretsOf({ study, workspace }: AppState): Frets {
  const { strings } = workspace.instrument;
  const frets = study.fingered?.frets ?? [];
  return frets.length === strings.length ? frets : strings.map(() => null);
}

const isEmpty = (frets: Frets): boolean => frets.every((f) => f === null);

/** One string alone is on the way to a fingering; anything else has to be within a hand. */
function withFrets(state: AppState, frets: Frets): AppState {
  const { workspace } = state;
  const checked = checkFingering(frets, workspace.instrument);
  if (!checked.ok && checked.error.code !== 'silent') {
    const { found, expected } = checked.error;
    return refuse(state, 'fingering', `“${found}”: expected ${expected.join(' or ')}`);
  }
  const fingering = isEmpty(frets) ? '' : makeFingering(frets);
  return step(accept(state, 'fingering'), patched(workspace, { fingering }));
}

const replaced = (frets: Frets, string: number, f: number | null): Frets =>
  frets.map((one, i) => (i === string - 1 ? f : one));

/**
 * Puts a finger on a string (1 = thinnest) at a fret, in place of any other on that string; the same
 * place again takes it off. The fret at nut or capo is the open string.
 */
export function putFinger(state: AppState, string: number, fret: number): AppState {
  const { strings, capo, frets: last } = state.workspace.instrument;
  const isOn = Number.isInteger(fret) && fret >= capo && fret <= last;
  if (strings[string - 1] === undefined || !isOn) return state;
  const frets = fretsOf(state);
  const again = frets[string - 1] === fret;
  return withFrets(state, replaced(frets, string, again ? null : fret));
}

/** The string is not played. */
export function liftFinger(state: AppState, string: number): AppState {
  const frets = fretsOf(state);
  const isHeld = frets[string - 1] !== undefined && frets[string - 1] !== null;
  return isHeld ? withFrets(state, replaced(frets, string, null)) : state;
}

/** Takes another of the names found for the fingering. No step of undo. */
export function chooseName(state: AppState, index: number): AppState {
  const study = withName(state.study, index);
  return study === state.study ? state : { ...state, study };
}

const withForms = (workspace: Workspace, ownForms: readonly OwnForm[]): Workspace =>
  withInstrument({ ...workspace, ownForms }, workspace.instrument);

/** Why a name cannot be given to a form. */
function nameProblem(name: string, { instrument }: Workspace): string | undefined {
  if (name === '') return 'expected a name';
  if (name.length > LONGEST_FORM_NAME) return `expected at most ${LONGEST_FORM_NAME} signs`;
  const taken = formsOf(instrument).some((form) => form.name === name);
  return taken ? `“${name}”: another form has that name` : undefined;
}

/** The fingering with its chosen name, as a form; or what it lacks. */
function formDown({ study, workspace }: AppState, name: string): OwnForm | string {
  const { fingered } = study;
  const reading = fingered?.names[fingered.chosen];
  if (!fingered || !reading) return 'expected a fingering that has a name';
  if (fingered.error !== undefined) return fingered.error;
  const fingering = makeFingering(fingered.frets);
  const own = { name, fingering, symbol: reading.symbol, tuning: tuningOf(workspace.instrument) };
  return ownFormOf(own) ? own : `${reading.symbol} does not name every string of ${fingering}`;
}

/** Keeps the fingering as a form that moves along the neck like the five. */
export function saveOwnForm(state: AppState, name: string): AppState {
  const { workspace } = state;
  const given = name.trim();
  if (workspace.ownForms.length >= MOST_OWN_FORMS) {
    return refuse(state, 'ownForm', `expected at most ${MOST_OWN_FORMS} forms`);
  }
  const problem = nameProblem(given, workspace);
  const own = problem ?? formDown(state, given);
  if (typeof own === 'string') return refuse(state, 'ownForm', own);
  return step(accept(state, 'ownForm'), withForms(workspace, [...workspace.ownForms, own]));
}

const isNamed =
  (name: string, { instrument }: Workspace) =>
  (own: OwnForm): boolean =>
    own.name === name && own.tuning === tuningOf(instrument);

function formRenamed(workspace: Workspace, from: string, to: string): Workspace {
  const { compare } = workspace;
  const form = workspace.form === from ? { form: to } : {};
  const compared =
    compare?.kind === 'form' && compare.form === from
      ? { compare: { kind: 'form', form: to } as const }
      : {};
  const isPinned = workspace.pins.some((pin) => pin.form === from);
  const pins = workspace.pins.map((pin) => (pin.form === from ? { ...pin, form: to } : pin));
  return { ...workspace, ...form, ...compared, ...(isPinned ? { pins } : {}) };
}

/** Gives one of the forms of the present tuning another name, wherever it is asked for. */
export function renameOwnForm(state: AppState, from: string, to: string): AppState {
  const { workspace } = state;
  const name = to.trim();
  const isIt = isNamed(from, workspace);
  if (name === from || !workspace.ownForms.some(isIt)) return accept(state, 'ownForm');
  const problem = nameProblem(name, workspace);
  if (problem !== undefined) return refuse(state, 'ownForm', problem);
  const ownForms = workspace.ownForms.map((own) => (isIt(own) ? { ...own, name } : own));
  return step(accept(state, 'ownForm'), withForms(formRenamed(workspace, from, name), ownForms));
}

function formForgotten(workspace: Workspace, name: string): Workspace {
  const { compare, pins } = workspace;
  const free = workspace.form === name ? without(workspace, 'form') : workspace;
  const isCompared = compare?.kind === 'form' && compare.form === name;
  const alone = isCompared ? without(free, 'compare') : free;
  const rest = pins.filter((pin) => pin.form !== name);
  return rest.length === pins.length ? alone : { ...alone, pins: rest };
}

/** Forgets one of the forms of the present tuning, and wherever it is asked for. */
export function deleteOwnForm(state: AppState, name: string): AppState {
  const { workspace } = state;
  const isIt = isNamed(name, workspace);
  const ownForms = workspace.ownForms.filter((own) => !isIt(own));
  if (ownForms.length === workspace.ownForms.length) return state;
  return step(accept(state, 'ownForm'), withForms(formForgotten(workspace, name), ownForms));
}
