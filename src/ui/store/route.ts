/** The route through the whole progression. */
import {
  type PinnedForm,
  type RouteGoal,
  type RouteKind,
  usualGoal,
  type Workspace,
} from '#lesson';
import {
  advanceRoute,
  beginRoute,
  bestAtHand,
  formPlaces,
  type Pin,
  type RouteError,
  type RoutePlan,
  type RouteQuery,
  type RouteWish,
  routesOf,
} from '#neck';
import { barsOf, type Chart, type Chord } from '#theory';
import { chordOf, inPlay, sameChord } from './lane.ts';
import type { Travelled } from './lenses.ts';
import type { LaneCell, RouteStep, RouteStudy, Study } from './types.ts';

/** Routes of at most so many steps are planned at once, longer ones in slices. */
export const STEPS_AT_ONCE = 200;

const ASKED: readonly (keyof Workspace)[] = [
  ...(['route', 'routeTo', 'pins', 'weights'] as const),
  ...(['position', 'form', 'instrument', 'span'] as const),
];

const samePin = (a: PinnedForm | undefined, b: PinnedForm | undefined): boolean =>
  a?.form === b?.form && a?.anchor === b?.anchor;

/** A chord that simply goes on asks for no new stop, unless a form is pinned to it. */
function goesOn(step: RouteStep, last: RouteStep | undefined): boolean {
  if (!last) return false;
  const { chord, pin } = step;
  if (!chord || !last.chord) return chord === last.chord;
  return sameChord(chord, last.chord) && (pin === undefined || samePin(pin, last.pin));
}

interface Way {
  readonly steps: readonly RouteStep[];
  readonly stepOf: readonly number[];
}

function wayOf(chart: Chart, cells: readonly LaneCell[], pins: readonly PinnedForm[]): Way {
  const pinAt = new Map(pins.map((pin) => [pin.at, pin]));
  const steps: RouteStep[] = [];
  const stepOf = cells.map(() => -1);
  for (const cell of inPlay(chart, cells)) {
    const chord = chordOf(cell.slot);
    const pin = chord && pinAt.get(cell.at);
    const step = { cell: cell.index, ...(chord && { chord }), ...(pin && { pin }) };
    if (!goesOn(step, steps.at(-1))) steps.push(step);
    if (stepOf[cell.index] === -1) stepOf[cell.index] = steps.length - 1;
  }
  return { steps, stepOf };
}

/** Whether a form at an anchor is a place where a chord can be held. */
export const isHeld = (
  chord: Chord,
  { form, anchor }: Pick<PinnedForm, 'form' | 'anchor'>,
  { instrument }: Pick<Workspace, 'instrument'>,
): boolean =>
  formPlaces(chord, instrument).some(
    (place) => place.grip && place.form.name === form && place.anchor === anchor,
  );

function fits(pin: PinnedForm, cells: readonly LaneCell[], workspace: Workspace): boolean {
  const cell = cells.find(({ at }) => at === pin.at);
  const chord = cell && chordOf(cell.slot);
  return chord !== undefined && isHeld(chord, pin, workspace);
}

/** The form that is carried: the one asked for, or the best at the first chord. */
function carriedForm(workspace: Workspace, { steps }: Way): string | undefined {
  if (workspace.form !== undefined) return workspace.form;
  const first = steps.find(({ chord }) => chord)?.chord;
  return first && bestAtHand(first, workspace)?.form.name;
}

/** The step of the first chord at or after a written bar, or the last step. */
function stepAtBar(bar: number, { steps, stepOf }: Way, cells: readonly LaneCell[]): number {
  const cell = cells.find((one) => one.bar >= bar && (stepOf[one.index] ?? -1) >= 0);
  return cell ? (stepOf[cell.index] ?? 0) : Math.max(0, steps.length - 1);
}

type Asked = Pick<RouteStudy, 'kind' | 'goal' | 'form'>;

function askedOf(kind: RouteKind, workspace: Workspace, chart: Chart, way: Way): Asked {
  if (kind === 'stay') return { kind };
  if (kind === 'carry') {
    const form = carriedForm(workspace, way);
    return form === undefined ? { kind } : { kind, form };
  }
  const goal: RouteGoal = workspace.routeTo ?? usualGoal(workspace, barsOf(chart).length);
  return { kind, goal: { ...goal, position: Math.min(goal.position, workspace.instrument.frets) } };
}

function wishOf(asked: Asked, position: number, by: (bar: number) => number): RouteWish {
  if (asked.kind === 'carry') return { kind: 'carry', form: asked.form ?? '', position };
  if (!asked.goal) return { kind: 'stay', position };
  return { kind: 'travel', from: position, to: asked.goal.position, by: by(asked.goal.bar) };
}

const pinsOf = ({ steps }: Way): readonly Pin[] =>
  steps.flatMap(({ pin }, step) => (pin ? [{ step, form: pin.form, anchor: pin.anchor }] : []));

const pinInWords = ({ at, form, anchor }: PinnedForm): string =>
  `${form} at ${at} (fret ${anchor})`;

const unfitInWords = (unfit: readonly PinnedForm[]): string =>
  `pinned forms that do not fit there are left out: ${unfit.map(pinInWords).join(', ')}`;

const errorInWords = ({ step, expected }: RouteError): string =>
  `chord ${step + 1}: expected ${expected}`;

/** Whether nothing that a route depends on changed. */
function isSame(workspace: Workspace, chart: Chart, before: Study): boolean {
  return before.chart === chart && ASKED.every((part) => before.of[part] === workspace[part]);
}

/** What is shown until the new plan is made: the routes before, if they are of the same steps. */
function lastGood(way: Way, before: RouteStudy | undefined): Pick<RouteStudy, 'routes' | 'chosen'> {
  const same =
    before?.steps.length === way.steps.length &&
    before.steps.every((step, i) => step.chord === way.steps[i]?.chord);
  return same ? { routes: before.routes, chosen: before.chosen } : { routes: [], chosen: 0 };
}

/** A route whose plan is made as far as `steps` more steps allow. */
function planned(route: RouteStudy, plan: RoutePlan, steps: number): RouteStudy {
  const { plan: _plan, progress: _progress, ...rest } = route;
  const further = advanceRoute(plan, steps);
  const of = further.layers.length;
  if (further.done < of) {
    return { ...rest, plan: further, progress: { done: further.done, of } };
  }
  return { ...rest, routes: routesOf(further), chosen: 0 };
}

function queryOf(
  workspace: Workspace,
  way: Way,
  asked: Asked,
  cells: readonly LaneCell[],
): RouteQuery {
  const { instrument, span, weights, position } = workspace;
  const chords = way.steps.map(({ chord }) => chord);
  const wish = wishOf(asked, position, (bar) => stepAtBar(bar, way, cells));
  return { instrument, span, weights, chords, wish, pins: pinsOf(way) };
}

/** The route that a workspace asks for; the one before if nothing it depends on changed. */
export function routeOf(
  workspace: Workspace,
  chart: Chart,
  cells: readonly LaneCell[],
  before: Study | undefined,
): RouteStudy | undefined {
  const { route: kind, pins } = workspace;
  if (kind === undefined) return undefined;
  if (before?.route && isSame(workspace, chart, before)) return before.route;
  const fitting = pins.filter((pin) => fits(pin, cells, workspace));
  const unfit = pins.filter((pin) => !fitting.includes(pin));
  const way = wayOf(chart, cells, fitting);
  const asked = askedOf(kind, workspace, chart, way);
  const begun = beginRoute(queryOf(workspace, way, asked, cells));
  const error = unfit.length > 0 ? { error: unfitInWords(unfit) } : {};
  const shown = lastGood(way, before?.route);
  const route: RouteStudy = { ...asked, ...way, ...shown, ...error, unfit, stopped: false };
  if (!begun.ok) return { ...route, error: errorInWords(begun.error) };
  const isShort = begun.value.layers.length <= STEPS_AT_ONCE;
  return planned(route, begun.value, isShort ? STEPS_AT_ONCE : 0);
}

/** The route with its plan taken further; the same route if none is under way. */
export const advanced = (route: RouteStudy): RouteStudy =>
  route.plan ? planned(route, route.plan, STEPS_AT_ONCE) : route;

/** The route with its plan given up; the routes before stay. */
export function stopped(route: RouteStudy): RouteStudy {
  if (!route.plan) return route;
  const { plan: _plan, progress: _progress, ...rest } = route;
  return { ...rest, stopped: true };
}

/** The route with another of its ways chosen; one that does not exist changes nothing. */
export function choosing(route: RouteStudy, index: number): RouteStudy {
  const exists = route.routes[index] !== undefined;
  return exists && index !== route.chosen ? { ...route, chosen: index } : route;
}

/** The chosen way, step by step; a step without a stop leaves the hand where it was. */
export function travelled(route: RouteStudy, start: number): Travelled | undefined {
  const stops = route.routes[route.chosen]?.stops;
  if (!stops) return undefined;
  let position = start;
  const positions = stops.map((stop) => {
    position = stop?.position ?? position;
    return position;
  });
  return { stops, positions };
}
