import { describe, expect, it } from 'vitest';
import {
  accept,
  dismissNotice,
  fieldError,
  glance,
  notify,
  patched,
  redo,
  refuse,
  step,
  undo,
  without,
} from '../../../src/ui/store/state.ts';
import { stateWith } from './fixture.ts';

const first = stateWith('C G Am');

describe('a step', () => {
  it('can be taken back and done again', () => {
    const done = step(first, { ...first.workspace, position: 3 });
    expect([done.canUndo, done.canRedo]).toEqual([true, false]);
    const back = undo(done);
    expect([back.workspace.position, back.canUndo, back.canRedo]).toEqual([7, false, true]);
    expect(redo(back).workspace.position).toBe(3);
  });

  it('that changes nothing is no step', () => {
    expect(step(first, first.workspace)).toBe(first);
    expect(glance(first, first.workspace)).toBe(first);
    expect(undo(first)).toBe(first);
    expect(redo(first)).toBe(first);
  });

  it('shows the study of the new workspace', () => {
    const done = step(first, { ...first.workspace, position: 3 });
    expect(done.study.reading?.position).toBe(3);
    expect(undo(done).study).toEqual(first.study);
  });
});

describe('looking elsewhere', () => {
  const looked = glance(first, { ...first.workspace, at: { bar: 2, beat: 1 } });

  it('is no step', () => {
    expect(looked.study.cursor).toBe(1);
    expect(looked.canUndo).toBe(false);
  });

  it('ends a run', () => {
    const moved = step(first, { ...first.workspace, position: 3 }, 'position');
    const away = glance(moved, { ...moved.workspace, at: { bar: 3, beat: 1 } });
    const again = step(away, { ...away.workspace, position: 4 }, 'position');
    expect(again.history.past).toHaveLength(2);
  });

  it('is not undone with the step before it', () => {
    const moved = step(first, { ...first.workspace, position: 3 });
    const away = glance(moved, { ...moved.workspace, at: { bar: 3, beat: 1 } });
    expect(undo(away).study.cursor).toBe(2);
  });

  it('is undone where the text under the cursor changes', () => {
    const typed = step(looked, { ...looked.workspace, progression: 'D' });
    const away = glance(typed, { ...typed.workspace, at: { bar: 1, beat: 1 } });
    expect(undo(away).study.cursor).toBe(1);
  });
});

describe('messages', () => {
  const notice = { id: 'a', tone: 'info', text: 'Something' } as const;
  const told = notify(first, notice);

  it('are shown once for each id', () => {
    expect(told.notices).toEqual([notice]);
    expect(notify(told, { ...notice })).toBe(told);
    expect(notify(told, { ...notice, text: 'Else' }).notices).toEqual([
      { ...notice, text: 'Else' },
    ]);
  });

  it('are taken away', () => {
    expect(dismissNotice(told, 'a').notices).toEqual([]);
    expect(dismissNotice(told, 'b')).toBe(told);
  });

  it('stand at the field that refused a value until it takes one', () => {
    const refused = refuse(first, 'frets', 'expected fewer');
    expect(fieldError(refused, 'frets')).toBe('expected fewer');
    expect(fieldError(refused, 'capo')).toBeUndefined();
    expect(fieldError(accept(refused, 'frets'), 'frets')).toBeUndefined();
    expect(accept(first, 'frets')).toBe(first);
  });
});

describe('replacing values', () => {
  it('keeps the reference if they are the same', () => {
    const before = { a: 1, b: Number.NaN };
    expect(patched(before, { a: 1, b: Number.NaN })).toBe(before);
    expect(patched(before, { a: 2 })).toEqual({ a: 2, b: Number.NaN });
  });

  it('keeps the reference if there is nothing to leave out', () => {
    const before: { readonly a: number; readonly b?: number } = { a: 1 };
    expect(without(before, 'b')).toBe(before);
    expect(without({ a: 1, b: 2 }, 'b')).toEqual({ a: 1 });
  });
});
