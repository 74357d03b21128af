import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_WORKSPACE, type Workspace } from '#lesson';
import {
  endRun,
  MOST_STEPS,
  NO_HISTORY,
  record,
  redoStep,
  undoStep,
} from '../../../src/ui/store/history.ts';

const at = (position: number): Workspace => ({ ...DEFAULT_WORKSPACE, position });

const positions = (works: readonly Workspace[]): readonly number[] =>
  works.map((work) => work.position);

describe('history', () => {
  it('leads back and forth again', () => {
    const history = record(record(NO_HISTORY, at(1)), at(2));
    const back = undoStep(history, at(3));
    expect(back?.workspace.position).toBe(2);
    const again = back && redoStep(back.history, back.workspace);
    expect(again?.workspace.position).toBe(3);
    expect(again?.history).toEqual(history);
  });

  it('has no step before the first or after the last', () => {
    expect(undoStep(NO_HISTORY, at(1))).toBeUndefined();
    expect(redoStep(record(NO_HISTORY, at(1)), at(2))).toBeUndefined();
  });

  it('makes one step of a run', () => {
    const run = record(record(NO_HISTORY, at(1), 'hand'), at(2), 'hand');
    expect(positions(run.past)).toEqual([1]);
  });

  it('makes two steps of two runs, and of a run that was ended', () => {
    const two = record(record(NO_HISTORY, at(1), 'hand'), at(2), 'typing');
    expect(positions(two.past)).toEqual([1, 2]);
    const ended = record(endRun(record(NO_HISTORY, at(1), 'hand')), at(2), 'hand');
    expect(positions(ended.past)).toEqual([1, 2]);
  });

  it('does not join a run across an undo', () => {
    const history = record(NO_HISTORY, at(1), 'hand');
    const back = undoStep(history, at(2));
    expect(back && positions(record(back.history, back.workspace, 'hand').past)).toEqual([1]);
  });

  it('forgets what was undone once something else is done', () => {
    const back = undoStep(record(NO_HISTORY, at(1)), at(2));
    expect(back && record(back.history, at(1)).future).toEqual([]);
  });

  it('is the same history when no run is open', () => {
    const history = record(NO_HISTORY, at(1));
    expect(endRun(history)).toBe(history);
  });

  it('forgets the oldest of very many steps', () => {
    const all = Array.from({ length: MOST_STEPS + 3 }, (_, i) => at(i));
    const { past } = all.reduce((history, work) => record(history, work), NO_HISTORY);
    expect(past).toHaveLength(MOST_STEPS);
    expect(past[0]?.position).toBe(3);
  });

  it('gives every step back in order, however they came', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 22 }), { minLength: 1 }), (frets) => {
        const works = frets.map(at);
        const history = works.reduce((soFar, work) => record(soFar, work), NO_HISTORY);
        let step = undoStep(history, at(0));
        const seen: number[] = [];
        while (step) {
          seen.unshift(step.workspace.position);
          step = undoStep(step.history, step.workspace);
        }
        expect(seen).toEqual(frets);
      }),
    );
  });
});
