/** Intents that ask for a route, pin forms and set what routes and bends cost. */
import {
  BEND_LIMIT_NAMES,
  type BendLimitName,
  DEFAULT_WORKSPACE,
  type LimitError,
  type PinnedForm,
  type RouteKind,
  WEIGHT_NAMES,
  type WeightName,
  type Workspace,
  withBendLimit,
  withWeight,
} from '#lesson';
import type { BendModel } from '#neck';
import { barsOf } from '#theory';
import { chordOf } from './lane.ts';
import { advanced, choosing, isHeld, routeOf, stopped } from './route.ts';
import { accept, patched, refuse, step, without } from './state.ts';
import { withRoute } from './study.ts';
import type { AppState, RouteStudy } from './types.ts';

const inWords = ({ found, expected }: LimitError): string => `“${found}”: expected ${expected}`;

function changeRoute(state: AppState, change: (route: RouteStudy) => RouteStudy): AppState {
  const study = withRoute(state.study, change);
  return study === state.study ? state : { ...state, study };
}

function planAnew(state: AppState): AppState {
  const { of, chart, cells } = state.study;
  return changeRoute(state, (route) => routeOf(of, chart, cells, undefined) ?? route);
}

/** Asks for a route, or for none; asking again for one whose planning was stopped plans anew. */
export function setRoute(state: AppState, kind: RouteKind | undefined): AppState {
  const { workspace, study } = state;
  if (kind === undefined) return step(state, without(workspace, 'route'));
  if (kind === workspace.route && study.route?.stopped) return planAnew(state);
  return step(state, patched(workspace, { route: kind }));
}

/** Where a route that travels is to arrive: a fret, by a written bar from 1. */
export function setRouteTo(state: AppState, position: number, bar: number): AppState {
  const { workspace, study } = state;
  const { frets } = workspace.instrument;
  const bars = Math.max(1, barsOf(study.chart).length);
  const isOn = (value: number, last: number): boolean =>
    Number.isInteger(value) && value >= 1 && value <= last;
  if (!isOn(position, frets)) {
    return refuse(state, 'routeTo', `“${position}”: expected a fret from 1 to ${frets}`);
  }
  if (!isOn(bar, bars)) {
    return refuse(state, 'routeTo', `“${bar}”: expected a bar from 1 to ${bars}`);
  }
  const { routeTo } = workspace;
  const accepted = accept(state, 'routeTo');
  if (routeTo?.position === position && routeTo.bar === bar) return accepted;
  return step(accepted, { ...workspace, routeTo: { position, bar } }, 'routeTo');
}

/** Shows another of the routes that were found. No step of undo. */
export const chooseRoute = (state: AppState, index: number): AppState =>
  changeRoute(state, (route) => choosing(route, index));

/** Gives up a plan under way; the last good route stays. */
export const stopPlanning = (state: AppState): AppState => changeRoute(state, stopped);

/** Takes a plan under way one slice further. */
export const planOn = (state: AppState): AppState => changeRoute(state, advanced);

const samePin = (a: PinnedForm, b: PinnedForm | undefined): boolean =>
  a.form === b?.form && a.anchor === b.anchor;

/** The workspace with a form pinned to a chord, in place of any other pinned there. */
export function pinned(workspace: Workspace, pin: PinnedForm): Workspace {
  if (
    samePin(
      pin,
      workspace.pins.find(({ at }) => at === pin.at),
    )
  )
    return workspace;
  const others = workspace.pins.filter(({ at }) => at !== pin.at);
  return { ...workspace, pins: [...others, pin] };
}

/** Sets the form of one chord by hand; the rest of a route is planned around it. */
export function pinForm(
  state: AppState,
  index: number,
  form: string,
  anchor: number,
  run?: string,
): AppState {
  const cell = state.study.cells[index];
  const chord = cell && chordOf(cell.slot);
  if (!cell || !chord) return state;
  if (!isHeld(chord, { form, anchor }, state.workspace)) {
    const expected = 'a form that fits on the neck and that four fingers can hold';
    return refuse(state, 'pin', `${form} form at fret ${anchor}: expected ${expected}`);
  }
  const pin = { at: cell.at, form, anchor };
  return step(accept(state, 'pin'), pinned(state.workspace, pin), run);
}

/** Lets go of the form pinned to a chord: its index in the lane, or its `bar.beat`. */
export function unpin(state: AppState, chord: number | string): AppState {
  const at = typeof chord === 'string' ? chord : state.study.cells[chord]?.at;
  const { pins } = state.workspace;
  const rest = pins.filter((pin) => pin.at !== at);
  const accepted = accept(state, 'pin');
  return rest.length === pins.length
    ? accepted
    : step(accepted, { ...state.workspace, pins: rest });
}

/** Sets what a player would rather avoid, in millimetres of hand movement that it is worth. */
export function setWeight(state: AppState, name: WeightName, value: number): AppState {
  const field = `weight.${name}` as const;
  const weights = withWeight(state.workspace.weights, name, value);
  if (!weights.ok) return refuse(state, field, inWords(weights.error));
  const next = patched(state.workspace, { weights: weights.value });
  return step(accept(state, field), next, field);
}

export function resetWeights(state: AppState): AppState {
  const fields = WEIGHT_NAMES.map((name) => `weight.${name}` as const);
  const { weights } = DEFAULT_WORKSPACE;
  return step(fields.reduce(accept, state), patched(state.workspace, { weights }));
}

/** Sets what is comfortable or hard: newtons, millimetres, or how many times as stiff. */
export function setBendLimit(state: AppState, name: BendLimitName, value: number): AppState {
  const field = `bend.${name}` as const;
  const limits = withBendLimit(state.workspace.bendLimits, name, value);
  if (!limits.ok) return refuse(state, field, inWords(limits.error));
  const next = patched(state.workspace, { bendLimits: limits.value });
  return step(accept(state, field), next, field);
}

/** Which part of the string takes up the stretch. */
export function setBendModel(state: AppState, model: BendModel): AppState {
  const bendLimits = patched(state.workspace.bendLimits, { model });
  return step(state, patched(state.workspace, { bendLimits }));
}

export function resetBendLimits(state: AppState): AppState {
  const fields = BEND_LIMIT_NAMES.map((name) => `bend.${name}` as const);
  const { bendLimits } = DEFAULT_WORKSPACE;
  return step(fields.reduce(accept, state), patched(state.workspace, { bendLimits }));
}
