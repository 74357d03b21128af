import { type Chord, err, ok, type Result } from '#theory';
import { distanceTo } from './reach.ts';
import { type RouteTerms, type Stop, stopsOf } from './route-cost.ts';

/**
 * What is asked of a route. `stay`: near a position, the forms changing under the hand. `carry`: one
 * form, the hand moving. `travel`: from where the hand is to another position, reached at a step.
 */
export type RouteWish =
  | { readonly kind: 'stay'; readonly position: number }
  | { readonly kind: 'carry'; readonly form: string; readonly position: number }
  | { readonly kind: 'travel'; readonly from: number; readonly to: number; readonly by: number };

/** A form set by hand for one step. */
export interface Pin {
  readonly step: number;
  readonly form: string;
  readonly anchor: number;
}

export interface RouteQuery extends RouteTerms {
  /** Chords in playing order; undefined where none sounds (N.C.). */
  readonly chords: readonly (Chord | undefined)[];
  readonly wish: RouteWish;
  readonly pins: readonly Pin[];
}

/** A way through all chords; a step without a stop leaves the hand where it was. */
export interface Route {
  readonly stops: readonly (Stop | undefined)[];
  /** Millimetres of hand movement that the whole way equals. */
  readonly cost: number;
}

export interface RouteError {
  readonly code: 'pin' | 'no-form';
  readonly step: number;
  readonly expected: string;
}

/** How many ways are kept: the best and the three next best. */
export const WAYS_KEPT = 4;

/** Where the hand is wanted at a step, in millimetres from the nut; undefined = anywhere. */
function wantedAt(query: RouteQuery, step: number): number | undefined {
  const { wish, instrument } = query;
  if (wish.kind === 'stay') return distanceTo(instrument.scale, wish.position);
  if (wish.kind === 'carry') {
    return step === 0 ? distanceTo(instrument.scale, wish.position) : undefined;
  }
  const share = wish.by <= 0 ? 1 : Math.min(1, step / wish.by);
  const from = distanceTo(instrument.scale, wish.from);
  return from + share * (distanceTo(instrument.scale, wish.to) - from);
}

/** What a stop costs at its step, whatever comes before. */
export function stopCost(query: RouteQuery, stop: Stop, step: number): number {
  const { wish, weights } = query;
  const wanted = wantedAt(query, step);
  const away = wanted === undefined ? 0 : Math.abs(stop.millimetres - wanted) * weights.away;
  const other = wish.kind === 'carry' && stop.form.name !== wish.form ? weights.otherForm : 0;
  return stop.effort + away + other;
}

/** What it costs to get from one stop to the next. */
export const moveCost = (query: RouteQuery, from: Stop, to: Stop): number =>
  Math.abs(from.millimetres - to.millimetres) * query.weights.shift;

/** A way up to a stop, linked backwards. */
interface Way {
  readonly stop: Stop;
  readonly cost: number;
  readonly before: Way | undefined;
}

/** The choices at every step that has a chord. */
export interface RouteLayer {
  readonly step: number;
  readonly stops: readonly Stop[];
}

const pinError = (step: number): RouteError => ({
  code: 'pin',
  step,
  expected: 'a form that fits on the neck and that four fingers can hold',
});

/** The stops to choose from, step by step, with pinned forms put in. */
export function layersOf(query: RouteQuery): Result<readonly RouteLayer[], RouteError> {
  const pins = new Map(query.pins.map((pin) => [pin.step, pin]));
  const layers: RouteLayer[] = [];
  const known = new Map<Chord, readonly Stop[]>();
  for (const [step, chord] of query.chords.entries()) {
    if (chord === undefined) continue;
    const all = known.get(chord) ?? stopsOf(chord, query);
    known.set(chord, all);
    const pin = pins.get(step);
    const stops =
      pin === undefined
        ? all
        : all.filter((stop) => stop.form.name === pin.form && stop.anchor === pin.anchor);
    if (stops.length === 0 && pin !== undefined) return err(pinError(step));
    if (stops.length > 0) layers.push({ step, stops });
  }
  return ok(layers);
}

/** Keeps a list of ways sorted by cost and no longer than `WAYS_KEPT`. */
function keep(ways: Way[], stop: Stop, cost: number, before: Way | undefined): void {
  const last = ways[ways.length - 1];
  if (ways.length === WAYS_KEPT && last !== undefined && cost >= last.cost) return;
  let at = Math.min(ways.length, WAYS_KEPT - 1);
  for (let way = ways[at - 1]; way && cost < way.cost; way = ways[at - 1]) {
    ways[at] = way;
    at -= 1;
  }
  ways[at] = { stop, cost, before };
}

/** The best ways to each stop of a layer from the best ways to each stop of the one before. */
function extend(
  query: RouteQuery,
  layer: RouteLayer,
  before: readonly (readonly Way[])[],
): readonly (readonly Way[])[] {
  return layer.stops.map((stop) => {
    const own = stopCost(query, stop, layer.step);
    if (before.length === 0) return [{ stop, cost: own, before: undefined }];
    const best: Way[] = [];
    for (const ways of before) {
      const from = ways[0];
      if (from === undefined) continue;
      const step = own + moveCost(query, from.stop, stop);
      for (const way of ways) keep(best, stop, way.cost + step, way);
    }
    return best;
  });
}

function routeOf(query: RouteQuery, layers: readonly RouteLayer[], end: Way): Route {
  const stops: (Stop | undefined)[] = query.chords.map(() => undefined);
  let way: Way | undefined = end;
  for (let i = layers.length - 1; i >= 0 && way !== undefined; i--) {
    const step = layers[i]?.step;
    if (step !== undefined) stops[step] = way.stop;
    way = way.before;
  }
  return { stops, cost: end.cost };
}

/** A plan under way: so many layers are done. */
export interface RoutePlan {
  readonly query: RouteQuery;
  readonly layers: readonly RouteLayer[];
  readonly done: number;
  readonly ways: readonly (readonly Way[])[];
}

/** Prepares a plan. Error `pin`: a pinned form does not exist there. */
export function beginRoute(query: RouteQuery): Result<RoutePlan, RouteError> {
  const layers = layersOf(query);
  return layers.ok ? ok({ query, layers: layers.value, done: 0, ways: [] }) : layers;
}

/** Takes a plan up to `steps` layers further, so that a long one can show its progress and be stopped. */
export function advanceRoute(plan: RoutePlan, steps: number): RoutePlan {
  const end = Math.min(plan.layers.length, plan.done + steps);
  let ways = plan.ways;
  for (const layer of plan.layers.slice(plan.done, end)) ways = extend(plan.query, layer, ways);
  return end === plan.done ? plan : { ...plan, done: end, ways };
}

/** The cheapest ways of a finished plan, at most `WAYS_KEPT`, best first. */
export function routesOf(plan: RoutePlan): readonly Route[] {
  const best: Way[] = [];
  for (const way of plan.ways.flat()) keep(best, way.stop, way.cost, way.before);
  return best.map((way) => routeOf(plan.query, plan.layers, way));
}

/**
 * The cheapest way through a progression and the three next best, by dynamic programming over the
 * stops of each step (the optimum path paradigm: S. I. Sayegh, Computer Music Journal 13(3), 1989).
 * The cost is the sum of what each stop and each move costs under the query's weights.
 */
export function planRoute(query: RouteQuery): Result<readonly Route[], RouteError> {
  const plan = beginRoute(query);
  return plan.ok ? ok(routesOf(advanceRoute(plan.value, plan.value.layers.length))) : plan;
}
