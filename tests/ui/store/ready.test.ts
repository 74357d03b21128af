import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { STANDARD_GUITAR } from '#neck';
import { REST } from '../../../src/ui/store/background.ts';
import { createStudyStore, type Study, studyOf } from '../../../src/ui/store/index.ts';
import { makeReady, readyStudy } from '../../../src/ui/store/ready.ts';
import { stateOf } from '../../../src/ui/store/state.ts';
import { fakePage, workspace } from './fixture.ts';

const CHART = '|: C | G/B Am7 | Xyz | Dm7 |1. N.C. :|2. G7b9 | C |';

const at = (bar: number, beat = 1) => ({ bar, beat });
const moved = (study: Study, bar: number, beat = 1): Study =>
  readyStudy({ ...study.of, at: at(bar, beat) }, study);

describe('a study that is ready', () => {
  it('is what would be made of the same workspace', () => {
    const studies = new Map<string, Study>();
    const steps = fc.array(fc.tuple(fc.integer({ min: 1, max: 7 }), fc.constantFrom(1, 3)));
    fc.assert(
      fc.property(steps, fc.integer({ min: 1, max: 12 }), (moves, position) => {
        let kept = studies.get(`${position}`) ?? studyOf(workspace(CHART, { position }));
        let made = kept;
        studies.set(`${position}`, kept);
        for (const [bar, beat] of moves) {
          kept = moved(kept, bar, beat);
          made = studyOf({ ...made.of, at: at(bar, beat) }, made);
          expect(kept).toEqual(made);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is shown again when the cursor comes back', () => {
    const first = moved(studyOf(workspace('C G Am', { position: 5 })), 2);
    const back = moved(moved(first, 3), 2);
    expect(back.places).toBe(first.places);
    expect(back.reading).toBe(first.reading);
    expect(back.account).toBe(first.account);
  });

  it('is another under another hand, in another order, and of another text', () => {
    const first = moved(studyOf(workspace('C G Am', { position: 5 })), 2);
    const higher = readyStudy({ ...first.of, position: 8 }, moved(first, 1));
    expect(moved(higher, 2).position).toBe(8);
    const reordered = { ...moved(first, 1), nextOf: [2, 0, 1] };
    expect(moved(reordered, 2).nextSymbol).toBe('C');
    const retyped = readyStudy({ ...first.of, progression: 'C D Am' }, first);
    expect(moved(moved(retyped, 1), 2).symbol).toBe('D');
  });

  it('is made for every chord around the cursor, so that a move computes nothing', () => {
    let looks = 0;
    // Nothing can be computed of a neck without looking at it.
    const instrument = new Proxy(STANDARD_GUITAR, {
      get: (guitar, key) => {
        looks++;
        return Reflect.get(guitar, key);
      },
    });
    const chart = '| C | G | N.C. | ? | Am |';
    const state = stateOf(workspace(chart, { instrument, position: 5, at: at(2) }));
    expect([makeReady(state), makeReady(state)]).toEqual([false, false]);
    looks = 0;
    expect(moved(moved(state.study, 5), 1).symbol).toBe('C');
    expect(looks).toBe(0);
    moved(readyStudy({ ...state.workspace, position: 3 }, state.study), 5);
    expect(looks, 'under another hand').toBeGreaterThan(0);
  });
});

describe('while nothing changes', () => {
  const resting = () => {
    const { page, idle, rest } = fakePage();
    const chords = Array.from({ length: 12 }, (_, i) => (i % 2 === 0 ? 'C' : 'G7')).join(' ');
    const store = createStudyStore(workspace(chords, { position: 5 }), page);
    return { ...store, idle, rest };
  };

  it('studies are made ready some at a time, and then nothing more is done', () => {
    const { idle, rest } = resting();
    expect([...idle.values()]).toEqual([REST]);
    rest();
    expect([...idle.values()], 'it looks again whether anything changes').toEqual([REST]);
    for (let slice = 0; slice < 2; slice++) {
      rest();
      expect([...idle.values()]).toEqual([0]);
    }
    rest();
    expect(idle.size).toBe(0);
  });

  it('and not while the cursor moves', () => {
    const { idle, rest, intents } = resting();
    for (let move = 0; move < 5; move++) {
      intents.moveCursor(1);
      rest();
      expect([...idle.values()]).toEqual([REST]);
    }
  });

  it('the work goes on when something changes after it was done', () => {
    const { idle, rest, intents } = resting();
    for (let slice = 0; slice < 5; slice++) rest();
    expect(idle.size).toBe(0);
    intents.setPosition(7);
    expect([...idle.values()]).toEqual([REST]);
  });

  it('nothing is told to anybody: what is shown does not change', () => {
    const { rest, cell } = resting();
    const told = vi.fn();
    cell.watch(told);
    for (let slice = 0; slice < 5; slice++) rest();
    expect(told).not.toHaveBeenCalled();
  });
});
