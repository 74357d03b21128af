import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  advanceRoute,
  beginRoute,
  DEFAULT_SPAN,
  DEFAULT_WEIGHTS,
  layersOf,
  moveCost,
  planRoute,
  type Route,
  type RouteQuery,
  type RouteWish,
  routesOf,
  type Stop,
  stopCost,
} from '#neck';
import { chord, GUITAR } from './support.ts';

function query(symbols: string, wish: RouteWish, more: Partial<RouteQuery> = {}): RouteQuery {
  return {
    chords: symbols.split(' ').map((symbol) => (symbol === 'NC' ? undefined : chord(symbol))),
    instrument: GUITAR,
    span: DEFAULT_SPAN,
    weights: DEFAULT_WEIGHTS,
    wish,
    pins: [],
    ...more,
  };
}

function routes(asked: RouteQuery): readonly Route[] {
  const planned = planRoute(asked);
  if (!planned.ok) throw new Error(`${planned.error.code} at ${planned.error.step}`);
  return planned.value;
}

const routeText = (route: Route | undefined): string =>
  (route?.stops ?? [])
    .map((stop) => (stop === undefined ? '-' : `${stop.form.name}${stop.anchor}`))
    .join(' ');

/** Every path's cost, cheapest first: the definition that the planner has to meet. */
function exhaustive(asked: RouteQuery): readonly number[] {
  const layers = layersOf(asked);
  if (!layers.ok) return [];
  let paths: readonly { cost: number; last: Stop | undefined }[] = [{ cost: 0, last: undefined }];
  for (const { step, stops } of layers.value) {
    paths = paths.flatMap(({ cost, last }) =>
      stops.map((stop) => ({
        cost:
          cost +
          stopCost(asked, stop, step) +
          (last === undefined ? 0 : moveCost(asked, last, stop)),
        last: stop,
      })),
    );
  }
  return paths.map((path) => path.cost).sort((a, b) => a - b);
}

const SYMBOLS = [
  'C',
  'Am7',
  'F',
  'G7',
  'Dm7',
  'E7#9',
  'Bm7b5',
  'D/F#',
  'Gmaj7',
  'NC',
  'C#dim7',
  'Asus4',
];

const wishes: fc.Arbitrary<RouteWish> = fc.oneof(
  fc.record({ kind: fc.constant('stay' as const), position: fc.integer({ min: 1, max: 15 }) }),
  fc.record({
    kind: fc.constant('carry' as const),
    form: fc.constantFrom('C', 'A', 'G', 'E', 'D'),
    position: fc.integer({ min: 1, max: 15 }),
  }),
  fc.record({
    kind: fc.constant('travel' as const),
    from: fc.integer({ min: 1, max: 15 }),
    to: fc.integer({ min: 1, max: 15 }),
    by: fc.integer({ min: 0, max: 4 }),
  }),
);

describe('a route', () => {
  it('is the true optimum, and so are the three next best: 1,000 short progressions against every path', () => {
    const progression = fc.array(fc.constantFrom(...SYMBOLS), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(progression, wishes, (symbols, wish) => {
        const asked = query(symbols.join(' '), wish);
        const best = exhaustive(asked).slice(0, 4);
        const planned = routes(asked).map((route) => route.cost);
        const wanted = symbols.every((symbol) => symbol === 'NC') ? [] : best;
        expect(planned.length).toBe(wanted.length);
        const off = planned.map((cost, i) => Math.abs(cost - (wanted[i] ?? -1)));
        expect(Math.max(0, ...off)).toBeLessThan(1e-6);
      }),
      { numRuns: 1000 },
    );
  });

  it('that stays lets the forms change under the hand', () => {
    const route = routes(query('C Am F G', { kind: 'stay', position: 5 }))[0];
    expect(route?.stops.every((stop) => Math.abs((stop?.position ?? 0) - 5) <= 3)).toBe(true);
    expect(new Set(route?.stops.map((stop) => stop?.form.name)).size).toBeGreaterThan(1);
  });

  it('that carries a form keeps it throughout', () => {
    const route = routes(query('C Am F G7', { kind: 'carry', form: 'A', position: 3 }))[0];
    expect(routeText(route)).toBe('A3 A0 A8 A10');
  });

  it('that travels ends where it was sent', () => {
    const route = routes(query('C Am F G C Am F G', { kind: 'travel', from: 1, to: 12, by: 7 }))[0];
    const positions = route?.stops.map((stop) => stop?.position ?? 0) ?? [];
    expect(positions[0]).toBeLessThanOrEqual(3);
    expect(positions[7]).toBeGreaterThanOrEqual(9);
  });

  it('leaves the hand where it was while no chord sounds, and plans around a pinned form', () => {
    const asked = query('C NC G', { kind: 'stay', position: 3 });
    expect(routeText(routes(asked)[0]).split(' ')[1]).toBe('-');
    const pinned = routes({ ...asked, pins: [{ step: 2, form: 'E', anchor: 15 }] })[0];
    expect(routeText(pinned).split(' ')[2]).toBe('E15');
  });

  it('refuses a pinned form beyond the last fret, and says at which step', () => {
    const planned = planRoute(
      query('C G', { kind: 'stay', position: 3 }, { pins: [{ step: 1, form: 'E', anchor: 27 }] }),
    );
    expect(planned.ok ? undefined : [planned.error.code, planned.error.step]).toEqual(['pin', 1]);
  });

  it('comes out the same when planned in parts', () => {
    const asked = query('C Am Dm7 G7 E7#9 Asus4', { kind: 'stay', position: 7 });
    const begun = beginRoute(asked);
    if (!begun.ok) throw new Error(begun.error.code);
    let plan = begun.value;
    while (plan.done < plan.layers.length) plan = advanceRoute(plan, 1);
    expect(routesOf(plan)).toEqual(routes(asked));
    expect(advanceRoute(plan, 5)).toBe(plan);
  });

  it('costs less the cheaper its moves are made', () => {
    const asked = query('C G Am F', { kind: 'carry', form: 'E', position: 5 });
    const cheap = { ...asked, weights: { ...DEFAULT_WEIGHTS, shift: 0.1 } };
    expect(routes(cheap)[0]?.cost ?? 0).toBeLessThan(routes(asked)[0]?.cost ?? 0);
  });
});
