import { describe, expect, it } from 'vitest';
import { type Act, acted, workspace } from './fixture.ts';

const told = (...acts: readonly Act[]): string | undefined =>
  acted(workspace('C G', { position: 5 }), ...acts).notices.find(({ id }) => id === 'undo')?.text;

const undo: Act = (i) => i.undo();

describe('what was undone', () => {
  it('is said by its name', () => {
    expect(told((i) => i.setLabels('notes'), undo)).toBe('Undone: labels');
    expect(
      told(
        (i) => i.setProgression('Am'),
        undo,
        (i) => i.redo(),
      ),
    ).toBe('Done again: progression');
  });

  it('is not a turn: that is looked at, and how it goes back is said', () => {
    const turned: Act = (i) => i.turnForm('sus4');
    expect(told((i) => i.setLabels('notes'), turned, undo)).toBe(
      'Undone: labels. The turn into sus4 stays; Escape turns it back',
    );
  });

  it('is said only where something was', () => {
    expect(told(undo, (i) => i.redo())).toBeUndefined();
  });

  it('names a form of one’s own once, not the instrument that it lies on', () => {
    const kept: readonly Act[] = [(i) => i.setFingering('x7678x'), (i) => i.saveOwnForm('mine')];
    expect(told(...kept, undo)).toBe('Undone: my forms');
  });
});
