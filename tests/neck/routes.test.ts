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
import { midiOf } from '#theory';
import { chord, GUITAR, instrument } from './support.ts';

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

describe('against the literature on optimum paths', () => {
  const sumOf = (asked: RouteQuery, stops: readonly Stop[]): number =>
    stops.reduce((sum, stop, i) => sum + stepOf(asked, stops[i - 1], stop, i), 0);

  const stepOf = (asked: RouteQuery, from: Stop | undefined, to: Stop, i: number): number =>
    stopCost(asked, to, i) + (from === undefined ? 0 : moveCost(asked, from, to));

  const hardest = (asked: RouteQuery, stops: readonly Stop[]): number =>
    Math.max(...stops.map((stop, i) => stepOf(asked, stops[i - 1], stop, i)));

  /** Every way through, written out. */
  function everyWay(asked: RouteQuery): readonly (readonly Stop[])[] {
    const layers = layersOf(asked);
    if (!layers.ok) return [];
    return layers.value.reduce<readonly (readonly Stop[])[]>(
      (ways, { stops }) => ways.flatMap((way) => stops.map((stop) => [...way, stop])),
      [[]],
    );
  }

  const least = <T>(all: readonly T[], of: (one: T) => number): T | undefined =>
    all.reduce<T | undefined>((a, b) => (a === undefined || of(b) < of(a) ? b : a), undefined);

  const chosenStops = (asked: RouteQuery): readonly Stop[] =>
    (routes(asked)[0]?.stops ?? []).flatMap((stop) => stop ?? []);

  /**
   * The graph of the three notes F2–D4–E3 with four fingers: layers of 4, 16 and 12 vertices, 256
   * edges, 768 paths (Radicioni & Lombardo, "Guitar fingering for music performance", ICMC 2005, Fig. 2).
   */
  it('the neck has as many places for F2, D4 and E3 as the published graph', () => {
    const on = instrument({ frets: 19 });
    const open = on.strings.map((string) => midiOf(string.pitch));
    const places = [41, 62, 52].map(
      (note) => open.filter((string) => note >= string && note - string <= on.frets).length,
    );
    const [f = 0, d = 0, e = 0] = places.map((count) => count * 4);
    expect([f, d, e, f * d + d * e, f * d * e]).toEqual([4, 16, 12, 256, 768]);
  });

  /** Sum against hardest single step (the idea of Hori & Sagayama, ISMIR 2016; the bound is elementary). */
  it('no way with an easier hardest step costs less in all', () => {
    const progression = fc.array(fc.constantFrom('C', 'Am7', 'F', 'G7', 'E7#9', 'D/F#'), {
      minLength: 2,
      maxLength: 4,
    });
    fc.assert(
      fc.property(progression, wishes, (symbols, wish) => {
        const asked = query(symbols.join(' '), wish);
        const sum = chosenStops(asked);
        const minimax = least(everyWay(asked), (way) => hardest(asked, way)) ?? [];
        expect(sumOf(asked, sum)).toBeLessThanOrEqual(sumOf(asked, minimax) + 1e-6);
        expect(hardest(asked, minimax)).toBeLessThanOrEqual(hardest(asked, sum) + 1e-6);
      }),
      { numRuns: 100 },
    );
  });

  /** A state that forgets how a chord is held lacks information (MIT 6.006, lecture 22, "first attempt"). */
  it('a planner that keeps one way a chord instead of one a form is beaten', () => {
    function forgetful(asked: RouteQuery): number {
      const layers = layersOf(asked);
      let way: readonly Stop[] = [];
      for (const { stops, step } of layers.ok ? layers.value : []) {
        const last = way.at(-1);
        const next = least(stops, (stop) => stepOf(asked, last, stop, step));
        way = next === undefined ? way : [...way, next];
      }
      return sumOf(asked, way);
    }
    const asked = ['C F Bb Eb', 'C G Am F', 'Dm7 G7 C A7', 'E A D G'].flatMap((symbols) =>
      [1, 5, 9].map((to) => query(symbols, { kind: 'travel', from: 12, to, by: 3 })),
    );
    const gains = asked.map((one) => forgetful(one) - (routes(one)[0]?.cost ?? 0));
    expect(Math.min(...gains)).toBeGreaterThan(-1e-6);
    expect(Math.max(...gains)).toBeGreaterThan(1);
  });
});
