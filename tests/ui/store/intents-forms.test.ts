import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createStudyStore } from '../../../src/ui/store/index.ts';
import { isElsewhere } from '../../../src/ui/store/intents-forms.ts';
import type { AppState } from '../../../src/ui/store/types.ts';
import { acted, workspace } from './fixture.ts';

const chosen = ({ study }: ReturnType<typeof acted>): string =>
  `${study.reading?.chosen?.form.name} ${study.reading?.chosen?.anchor}`;

describe('where else', () => {
  it('goes from place to place up the neck and back', () => {
    const up = (times: number) =>
      acted(workspace('A', { position: 1 }), (i) => {
        for (let n = 0; n < times; n += 1) i.shapeElsewhere(1);
      });
    const there = [0, 1, 2, 3, 4].map((n) => chosen(up(n)));
    expect(there).toEqual(['A 0', 'G 2', 'E 5', 'D 7', 'C 9']);
    expect([1, 2, 3].map((n) => up(n).workspace.position)).toEqual([2, 5, 7]);
    const back = acted(up(3).workspace, (i) => i.shapeElsewhere(-1));
    expect(chosen(back)).toBe('E 5');
  });

  it('stays at the last place of the neck and at the first', () => {
    const many = acted('A', (i) => {
      for (let n = 0; n < 20; n += 1) i.shapeElsewhere(1);
    });
    const more = acted(many.workspace, (i) => i.shapeElsewhere(1));
    expect(more.workspace).toEqual(many.workspace);
    expect(acted('', (i) => i.shapeElsewhere(1)).undone).toBe(0);
  });

  it('visits every place that can be held, each once', () => {
    fc.assert(
      fc.property(fc.constantFrom('C', 'F#m7b5', 'Bb13', 'E7#9', 'Db6/9', 'Am/G'), (symbol) => {
        const store = createStudyStore(workspace(symbol, { position: 1 }));
        const held = store.cell.get().study.places.filter((place) => place.grip).length;
        for (let n = 0; n < 30; n += 1) store.intents.shapeElsewhere(-1);
        const seen: string[] = [];
        for (let n = 0; n < 30; n += 1) {
          const { study } = store.cell.get();
          seen.push(`${study.reading?.chosen?.form.name} ${study.reading?.chosen?.anchor}`);
          store.intents.shapeElsewhere(1);
        }
        expect(new Set(seen).size).toBe(held);
      }),
      { numRuns: 6 },
    );
  });
});

describe('places along the neck', () => {
  const C_FORM = workspace('A', { position: 9, form: 'C' });

  it('are those of the form that was chosen by hand', () => {
    const low = acted(workspace('E', { position: 3 }), (i) => i.pickForm('C'));
    expect(chosen(low)).toBe('C 4');
    const high = acted(low.workspace, (i) => i.shapeElsewhere(1));
    expect([chosen(high), high.workspace.form]).toEqual(['C 16', 'C']);
    const back = acted(high.workspace, (i) => i.shapeElsewhere(-1));
    expect([chosen(back), back.workspace.form]).toEqual(['C 4', 'C']);
    const end = acted(high.workspace, (i) => i.shapeElsewhere(1));
    expect(end.workspace).toEqual(high.workspace);
  });

  it('of a form that lies away from the hand begin with that, and say where there is none', () => {
    const can = (state: AppState) => ([-1, 1] as const).map((by) => isElsewhere(state, by));
    const low = acted(workspace('G7', { position: 1 }), (i) => i.pickForm('A'));
    expect([chosen(low), low.workspace.position, can(low.state)]).toEqual([
      'A 10',
      1,
      [false, true],
    ]);
    const there = acted(low.workspace, (i) => i.shapeElsewhere(1));
    expect([there.workspace.position, there.workspace.form, can(there.state)]).toEqual([
      10,
      'A',
      [false, false],
    ]);
    const high = acted(workspace('G7', { position: 14, form: 'A' }), (i) => i.shapeElsewhere(-1));
    expect([high.workspace.position, chosen(high)]).toEqual([10, 'A 10']);
    // Most of it lies under the hand already, and nothing lower.
    const near = acted(workspace('F', { position: 10, form: 'A' }), (i) => i.shapeElsewhere(-1));
    expect([near.workspace.position, can(near.before), can(near.state)]).toEqual([
      8,
      [true, true],
      [false, true],
    ]);
  });

  it('can be gone to until the last is reached, either way', () => {
    for (const by of [1, -1] as const) {
      const end = acted(workspace('A', { position: 9 }), (i) => {
        for (let n = 0; n < 20; n += 1) i.shapeElsewhere(by);
      });
      expect([isElsewhere(end.state, by), isElsewhere(end.state, by === 1 ? -1 : 1)]).toEqual([
        false,
        true,
      ]);
    }
  });

  it('are those of any form again when the form is let go', () => {
    const free = acted(
      C_FORM,
      (i) => i.pickForm(undefined),
      (i) => i.shapeElsewhere(1),
      (i) => i.shapeElsewhere(1),
    );
    expect(chosen(free)).not.toMatch(/^C/);
  });

  it('are those of a form that one first walked to and then chose', () => {
    const walked = ['E7#9', 'Db6/9', 'Bb13', 'G7alt'].flatMap((symbol) => {
      const store = createStudyStore(workspace(symbol, { position: 1 }));
      for (let n = 0; n < 12; n += 1) {
        store.intents.shapeElsewhere(1);
        if (store.cell.get().workspace.form !== undefined) return [store];
      }
      return [];
    });
    expect(walked.length).toBeGreaterThan(0);
    for (const { cell, intents } of walked) {
      const { form } = cell.get().workspace;
      intents.pickForm(form);
      intents.shapeElsewhere(-1);
      intents.shapeElsewhere(1);
      expect(cell.get().workspace.form).toBe(form);
    }
  });
});

describe('a form that is asked for', () => {
  it('is shown in its nearest copy, without moving the hand', () => {
    const picked = acted(workspace('D', { position: 12 }), (i) => i.pickForm('C'));
    expect([chosen(picked), picked.workspace.position]).toEqual(['C 14', 12]);
    expect(picked.workspace.form).toBe('C');
  });

  it('is let go again', () => {
    const { workspace: now } = acted(
      'D',
      (i) => i.pickForm('C'),
      (i) => i.pickForm(undefined),
    );
    expect('form' in now).toBe(false);
  });

  it('at a place takes the hand there, and lets the form go where it is the best one anyway', () => {
    const moved = acted('A', (i) => i.pickForm('E', 5));
    expect([moved.workspace.position, moved.workspace.form]).toEqual([5, undefined]);
    expect(chosen(moved)).toBe('E 5');
    const asked = acted('A', (i) => i.pickForm('C', 9));
    expect(chosen(asked)).toBe('C 9');
  });
});
