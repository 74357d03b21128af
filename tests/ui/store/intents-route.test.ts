import { describe, expect, it } from 'vitest';
import { DEFAULT_WORKSPACE } from '#lesson';
import { fieldError } from '../../../src/ui/store/index.ts';
import { type Act, acted, workspace } from './fixture.ts';

const song = workspace('| Bm7 | E7 | Amaj7 |', { position: 7 });
const onRoute = workspace('| Bm7 | E7 | Amaj7 |', { position: 7, route: 'stay' });

const same = (start: typeof song, act: Act): boolean => {
  const { state, before } = acted(start, act);
  return state === before;
};

describe('asking for a route', () => {
  it('is a step, and asking for it again changes nothing', () => {
    expect(acted(song, (i) => i.setRoute('carry'))).toMatchObject({
      workspace: { route: 'carry' },
      undone: 1,
    });
    expect(same(onRoute, (i) => i.setRoute('stay'))).toBe(true);
    expect(same(song, (i) => i.setRoute(undefined))).toBe(true);
  });

  it('shows another of its ways, which is no step, until something else is asked', () => {
    const second = acted(onRoute, (i) => i.chooseRoute(1));
    expect([second.study.route?.chosen, second.undone]).toEqual([1, 0]);
    const [best, next] = second.study.route?.routes ?? [];
    expect(second.study.cells.map(({ position }) => position)).toEqual(
      next?.stops.map((stop) => stop?.position),
    );
    expect(best?.cost).toBeLessThan(next?.cost ?? 0);
    const moved = acted(
      onRoute,
      (i) => i.chooseRoute(1),
      (i) => i.moveCursor(1),
    );
    expect(moved.study.route?.chosen).toBe(1);
    const again = acted(
      onRoute,
      (i) => i.chooseRoute(1),
      (i) => i.setPosition(3),
    );
    expect(again.study.route?.chosen).toBe(0);
    for (const bad of [0, 4, -1, 0.5, Number.NaN]) {
      expect(same(onRoute, (i) => i.chooseRoute(bad))).toBe(true);
    }
    expect(same(song, (i) => i.chooseRoute(1))).toBe(true);
  });

  it('takes a goal on the neck and in the text, and keeps the last good one', () => {
    const set = acted(song, (i) => i.setRouteTo(12, 3));
    expect(set.workspace.routeTo).toEqual({ position: 12, bar: 3 });
    for (const [position, bar, why] of [
      [23, 3, '“23”: expected a fret from 1 to 22'],
      [0, 3, '“0”: expected a fret from 1 to 22'],
      [12, 4, '“4”: expected a bar from 1 to 3'],
      [12, 1.5, '“1.5”: expected a bar from 1 to 3'],
    ] as const) {
      const bad = acted(set.workspace, (i) => i.setRouteTo(position, bar));
      expect(fieldError(bad.state, 'routeTo')).toBe(why);
      expect(bad.workspace).toBe(set.workspace);
      const good = acted(
        bad.workspace,
        (i) => i.setRouteTo(position, bar),
        (i) => i.setRouteTo(12, 3),
      );
      expect(fieldError(good.state, 'routeTo')).toBeUndefined();
    }
  });

  it('plans anew around a hand that is moved', () => {
    const moved = acted(onRoute, (i) => i.setPosition(2));
    expect(moved.workspace.position).toBe(2);
    expect(moved.study.route).not.toBe(moved.before.study.route);
    expect(moved.study.position).toBeLessThan(moved.before.study.position);
  });
});

describe('pinning', () => {
  it('sets the form of one chord, and lets it go', () => {
    const pinned = acted(onRoute, (i) => i.pinForm(1, 'E', 12));
    expect(pinned.workspace.pins).toEqual([{ at: '2.1', form: 'E', anchor: 12 }]);
    expect(pinned.study.cells[1]).toMatchObject({ position: 12 });
    expect(same(pinned.workspace, (i) => i.pinForm(1, 'E', 12))).toBe(true);
    expect(acted(pinned.workspace, (i) => i.unpin(1)).workspace.pins).toEqual([]);
    expect(acted(pinned.workspace, (i) => i.unpin('2.1')).workspace.pins).toEqual([]);
    expect(same(pinned.workspace, (i) => i.unpin(0))).toBe(true);
  });

  it('takes the place of what is pinned there', () => {
    const twice = acted(
      onRoute,
      (i) => i.pinForm(1, 'E', 12),
      (i) => i.pinForm(1, 'A', 7),
    );
    expect(twice.workspace.pins).toEqual([{ at: '2.1', form: 'A', anchor: 7 }]);
    expect(twice.undone).toBe(2);
  });

  it.each([
    [0, 'E', 27],
    [0, 'E', 8],
    [0, 'H', 7],
  ])('at %i refuses the %s form at %i, and loses nothing', (index, form, anchor) => {
    const { state, before } = acted(onRoute, (i) => i.pinForm(index, form, anchor));
    expect(fieldError(state, 'pin')).toBe(
      `${form} form at fret ${anchor}: expected a form that fits on the neck and that four fingers can hold`,
    );
    expect(state.study).toBe(before.study);
  });

  it('needs a chord', () => {
    expect(same(onRoute, (i) => i.pinForm(7, 'E', 7))).toBe(true);
    expect(same(workspace('N.C.'), (i) => i.pinForm(0, 'E', 7))).toBe(true);
  });

  it('is what asking for a form means on a route that chooses the forms', () => {
    const asked = acted(onRoute, (i) => i.pickForm('D'));
    expect(asked.workspace.pins).toEqual([{ at: '1.1', form: 'D', anchor: 9 }]);
    expect('form' in asked.workspace).toBe(false);
    expect(acted(asked.workspace, (i) => i.pickForm(undefined)).workspace.pins).toEqual([]);
    const copy = acted(onRoute, (i) => i.pickForm('A', 2));
    expect(copy.workspace.pins).toEqual([{ at: '1.1', form: 'A', anchor: 2 }]);
    const up = acted(onRoute, (i) => i.shapeElsewhere(1));
    expect([up.workspace.pins.length, up.workspace.position]).toEqual([1, 7]);
  });

  it('is not, where one form is carried: then that is the one', () => {
    const carry = { ...onRoute, route: 'carry' as const };
    expect(acted(carry, (i) => i.pickForm('D')).workspace).toMatchObject({ form: 'D', pins: [] });
    const copy = acted(carry, (i) => i.pickForm('A', 2));
    expect(copy.workspace).toMatchObject({ form: 'A', position: 2, pins: [] });
  });

  it('goes along when the progression is transposed, and away with another', () => {
    const pinned = acted(onRoute, (i) => i.pinForm(0, 'E', 7)).workspace;
    const up = acted(pinned, (i) => i.transposeBy(2));
    expect(up.workspace.pins).toEqual([{ at: '1.1', form: 'E', anchor: 9 }]);
    expect(up.study.route?.unfit).toEqual([]);
    expect(acted(pinned, (i) => i.loadExample(1)).workspace.pins).toEqual([]);
  });
});

describe('weights and limits', () => {
  it('are set, refused at their own field, and reset', () => {
    const set = acted(onRoute, (i) => i.setWeight('barre', 20));
    expect([set.workspace.weights.barre, set.undone]).toEqual([20, 1]);
    const bad = acted(
      set.workspace,
      (i) => i.setWeight('barre', -1),
      (i) => i.setWeight('shift', Number.NaN),
    );
    expect(fieldError(bad.state, 'weight.barre')).toBe('“-1”: expected a number from 0 to 200');
    expect(fieldError(bad.state, 'weight.shift')).toBe('“NaN”: expected a number from 0 to 10');
    expect(bad.workspace).toBe(set.workspace);
    const reset = acted(
      set.workspace,
      (i) => i.setWeight('barre', -1),
      (i) => i.resetWeights(),
    );
    expect(reset.workspace.weights).toBe(DEFAULT_WORKSPACE.weights);
    expect(reset.notices).toEqual([]);
    expect(same(song, (i) => i.resetWeights())).toBe(true);
  });

  it('of bends change what is comfortable', () => {
    const soft = acted(song, (i) => i.setBendLimit('comfortableForce', 1));
    const easy = ({ study }: typeof soft) =>
      study.bends.filter(({ ease }) => ease === 'comfortable').length;
    expect(easy(soft)).toBeLessThan(easy(acted(song)));
    const bad = acted(song, (i) => i.setBendLimit('comfortableForce', 99));
    expect(fieldError(bad.state, 'bend.comfortableForce')).toMatch(/^“99”: expected no more/);
    expect(acted(soft.workspace, (i) => i.resetBendLimits()).workspace.bendLimits).toBe(
      DEFAULT_WORKSPACE.bendLimits,
    );
    expect(acted(song, (i) => i.setBendModel('sounding')).workspace.bendLimits.model).toBe(
      'sounding',
    );
    expect(same(song, (i) => i.setBendModel('whole'))).toBe(true);
  });
});
