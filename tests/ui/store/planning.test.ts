import { describe, expect, it } from 'vitest';
import { createStudyStore, openStudyStore, studyOf } from '../../../src/ui/store/index.ts';
import { fakePage, workspace } from './fixture.ts';

/** 480 steps: no chord follows itself. */
const LONG = '| C Am | F G | Dm E7 | Bm7 A |\n'.repeat(60).trim();
const STEPS = 480;

function planning(route: 'stay' | 'carry' = 'stay') {
  const { page, pass, waiting } = fakePage();
  const store = createStudyStore(workspace(LONG, { route, position: 5 }), page);
  const state = () => store.cell.get();
  return { ...store, pass, waiting, state, route: () => state().study.route };
}

describe('a long route', () => {
  it('is planned slice by slice, with its progress', () => {
    const { route, pass, waiting } = planning();
    expect(route()?.progress).toEqual({ done: 0, of: STEPS });
    expect(route()?.routes).toEqual([]);
    pass();
    expect(route()?.progress).toEqual({ done: 200, of: STEPS });
    pass();
    pass();
    expect(route()?.progress).toBeUndefined();
    expect(route()?.routes).toHaveLength(4);
    expect(waiting.size).toBe(0);
  });

  it('leaves the lane alone while it is planned', () => {
    const { state, pass } = planning();
    const { cells } = state().study;
    pass();
    expect(state().study.cells).toBe(cells);
    expect(cells.every((cell) => cell.form && !('position' in cell))).toBe(true);
  });

  it('comes to what a short one comes to at once', () => {
    const { pass, state } = planning();
    for (let n = 0; n < 3; n += 1) pass();
    const { route, cells, position } = state().study;
    expect(route?.routes[0]?.stops).toHaveLength(STEPS);
    const short = studyOf(workspace(LONG.split('\n')[0] ?? '', { route: 'stay', position: 5 }));
    expect(cells.slice(0, 4).map((cell) => cell.position)).toEqual(
      short.cells.slice(0, 4).map((cell) => cell.position),
    );
    expect(position).toBe(cells[0]?.position);
  });

  it('is stopped by hand, and planned anew when it is asked for again', () => {
    const { route, pass, waiting, intents } = planning();
    pass();
    intents.stopPlanning();
    expect(route()).toMatchObject({ stopped: true, routes: [] });
    expect([route()?.plan, route()?.progress]).toEqual([undefined, undefined]);
    pass();
    expect(waiting.size).toBe(0);
    intents.setRoute('stay');
    expect(route()?.progress).toEqual({ done: 0, of: STEPS });
    for (let n = 0; n < 3; n += 1) pass();
    expect(route()?.routes).toHaveLength(4);
    expect(route()?.stopped).toBe(false);
  });

  it('that is asked for otherwise meanwhile drops the plan that is stale, not the last good route', () => {
    const { route, pass, intents } = planning();
    for (let n = 0; n < 3; n += 1) pass();
    const good = route()?.routes;
    intents.setPosition(9);
    expect(route()?.routes).toBe(good);
    expect(route()?.progress?.done).toBe(0);
    pass();
    const stale = route()?.plan;
    intents.setPosition(2);
    expect(route()?.plan).not.toBe(stale);
    for (let n = 0; n < 3; n += 1) pass();
    expect(route()?.routes).not.toBe(good);
    expect(route()?.progress).toBeUndefined();
  });

  it('is not shown on another text', () => {
    const { route, pass, intents } = planning();
    for (let n = 0; n < 3; n += 1) pass();
    intents.setProgression(LONG.replace('Am', 'Ab'));
    expect(route()?.routes).toEqual([]);
    expect(route()?.progress?.done).toBe(0);
  });

  it('is left alone when the page is closed', () => {
    const { page, pass, waiting } = fakePage();
    const store = openStudyStore(page);
    store.intents.setProgression(LONG);
    store.intents.setRoute('stay');
    store.close();
    expect(waiting.size).toBe(0);
    pass();
    expect(store.cell.get().study.route?.progress?.done).toBe(0);
  });
});
