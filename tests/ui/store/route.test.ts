import { describe, expect, it } from 'vitest';
import type { Workspace } from '#lesson';
import { studyOf } from '../../../src/ui/store/index.ts';
import type { Study } from '../../../src/ui/store/types.ts';
import { acted, workspace } from './fixture.ts';

const study = (text: string, more: Partial<Workspace> = {}): Study =>
  studyOf(workspace(text, { route: 'stay', ...more }));

/** `E7@7`: form, anchor and position of every cell. */
const stops = ({ cells }: Study): string =>
  cells
    .map(({ form, position }) => `${form ? form.form.name + form.anchor : '-'}@${position}`)
    .join(' ');

/** The symbols of the steps, in playing order. */
const steps = ({ route, cells }: Study): string =>
  (route?.steps ?? []).map(({ cell }) => cells[cell]?.symbol).join(' ');

describe('the steps of a route', () => {
  it.each([
    ['C G Am', 'C G Am'],
    ['|: C | G :| Am |', 'C G C G Am'],
    ['|: C |1. G :|2. F | Am |', 'C G C F Am'],
    ['| C | % | G | G |', 'C G'],
    ['| C / / / | N.C. | N.C. | C |', 'C N.C. C'],
    ['|: C | G | C :|', 'C G C G C'],
    ['C Hm G', 'C Hm G'],
    ['', ''],
  ])('of %s are %s', (text, expected) => {
    expect(steps(study(text))).toBe(expected);
  });

  it('are known for every cell, from the first time it is played', () => {
    expect(study('|: C |1. G :|2. F | Am |').route?.stepOf).toEqual([0, 1, 3, 4]);
    expect(study('| C | % | G |').route?.stepOf).toEqual([0, 0, 1]);
  });

  it('are apart where a chord that goes on has a form pinned to it', () => {
    const pins = [{ at: '2.1', form: 'E', anchor: 8 }];
    expect(steps(study('| C | C | G |', { pins }))).toBe('C C G');
    const same = [{ at: '1.1', form: 'E', anchor: 8 }, ...pins];
    expect(steps(study('| C | C | G |', { pins: same }))).toBe('C G');
  });
});

describe('a route', () => {
  const song = '| Bm7 | E7 | Amaj7 | % | N.C. | D |';

  it('that stays gives every chord a form and a position near the hand', () => {
    expect(stops(study(song, { position: 7 }))).toBe('E7@7 A7@7 D7@7 D7@7 -@7 G7@7');
  });

  it('that carries a form carries the one asked for, or the best at the first chord', () => {
    const best = study(song, { route: 'carry', position: 7 });
    expect(best.route?.form).toBe('E');
    expect(stops(best)).toMatch(/^E7@7 E12@12 E\d/);
    const asked = study(song, { route: 'carry', position: 7, form: 'A' });
    expect(asked.cells.map((cell) => cell.form?.form.name)).toEqual([
      ...['A', 'A', 'A', 'A', undefined, 'A'],
    ]);
  });

  it('that travels ends where it was sent, by the bar it was told', () => {
    const twelve = 'C Am F G C Am F G C Am F G';
    const told = study(twelve, {
      route: 'travel',
      position: 1,
      routeTo: { position: 12, bar: 12 },
    });
    expect(told.cells[0]?.position).toBeLessThanOrEqual(3);
    expect(told.cells[11]?.position).toBeGreaterThanOrEqual(9);
    const soon = study(twelve, { route: 'travel', position: 1, routeTo: { position: 12, bar: 2 } });
    expect(soon.cells[2]?.position).toBeGreaterThanOrEqual(9);
    expect(study(twelve, { route: 'travel', position: 1 }).route?.goal).toEqual({
      position: 12,
      bar: 12,
    });
  });

  it('has at most four ways, best first', () => {
    const costs = study(song).route?.routes.map(({ cost }) => cost) ?? [];
    expect(costs).toHaveLength(4);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
  });

  it('takes the hand along with the cursor, and the reading with the hand', () => {
    const at = (bar: number) => study('C G', { position: 12, at: { bar, beat: 1 } });
    for (const one of [at(1), at(2)]) {
      const cell = one.cells[one.cursor];
      expect(one.position).toBe(cell?.position);
      expect(one.reading?.position).toBe(one.position);
      expect(one.reading?.chosen).toMatchObject({ anchor: cell?.form?.anchor });
      expect(one.of.position).toBe(12);
    }
  });

  it('leaves the hand where it was while no chord sounds', () => {
    const silent = study('| D | N.C. | G |', { position: 9, at: { bar: 2, beat: 1 } });
    expect(silent.position).toBe(silent.cells[0]?.position);
  });

  it('without a chord has no ways, and is no trouble', () => {
    expect(study('').route?.routes).toEqual([]);
    expect(study('N.C.', { route: 'carry' }).route).toMatchObject({ kind: 'carry', routes: [] });
  });

  it('stays while the cursor moves and while colours come and go', () => {
    const before = study(song);
    const moved = studyOf({ ...before.of, at: { bar: 2, beat: 1 } }, before);
    expect([moved.route, moved.cells]).toEqual([before.route, before.cells]);
    expect(moved.route).toBe(before.route);
    expect(moved.cells).toBe(before.cells);
    expect(moved.reading).not.toBe(before.reading);
  });

  it('goes again when it is switched off', () => {
    const off = acted(workspace(song, { route: 'stay' }), (i) => i.setRoute(undefined));
    expect(off.study.route).toBeUndefined();
    expect(off.study.cells.every((cell) => !('position' in cell))).toBe(true);
    expect(off.study).toEqual(studyOf(workspace(song)));
  });
});

describe('pinned forms', () => {
  const pins = [{ at: '2.1', form: 'D', anchor: 2 }];

  it('are kept to, and the rest is planned around them', () => {
    const pinned = study('C E G', { pins });
    expect(stops(pinned).split(' ')[1]).toBe('D2@2');
    expect(pinned.route?.unfit).toEqual([]);
  });

  it('hold every time the chord is played', () => {
    const { route } = study('|: C | E :|', { pins });
    expect(route?.routes[0]?.stops.map((stop) => stop?.form.name)).toEqual([
      ...[expect.any(String), 'D', expect.any(String), 'D'],
    ]);
  });

  it.each([
    ['C G', { at: '2.1', form: 'D', anchor: 2 }],
    ['C', { at: '2.1', form: 'D', anchor: 2 }],
    ['C N.C.', { at: '2.1', form: 'D', anchor: 2 }],
    ['C E', { at: '2.1', form: 'E', anchor: 27 }],
    ['C E', { at: '2.1', form: 'none', anchor: 0 }],
  ])('that do not fit %s are kept, reported, and planned without', (text, pin) => {
    const { route, of } = study(text, { pins: [pin] });
    expect(route?.unfit).toEqual([pin]);
    expect(route?.error).toMatch(/^pinned forms that do not fit there are left out: .* at 2\.1/);
    expect(route?.routes.length).toBeGreaterThan(0);
    expect(of.pins).toEqual([pin]);
  });
});
