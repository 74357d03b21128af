import { describe, expect, it } from 'vitest';
import { acted } from './fixture.ts';

describe('the hand', () => {
  it.each([
    [5, 5],
    [0, 1],
    [-4, 1],
    [99, 22],
    [Number.NaN, 1],
    [4.6, 5],
  ])('put at %s is at %i', (fret, position) => {
    expect(acted('C', (i) => i.setPosition(fret)).workspace.position).toBe(position);
  });

  it('steps, and many steps in a row are taken back at once', () => {
    const stepped = acted(
      'C',
      (i) => i.stepPosition(1),
      (i) => i.stepPosition(1),
      (i) => i.stepPosition(-3),
    );
    expect([stepped.workspace.position, stepped.undone]).toEqual([6, 1]);
  });

  it('that stays where it is changes nothing', () => {
    const { state, before } = acted('C', (i) => i.setPosition(7));
    expect(state).toBe(before);
  });
});
