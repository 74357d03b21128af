import { describe, expect, it } from 'vitest';
import { createStudyStore } from '../../../src/ui/store/index.ts';
import { refreshed } from '../../../src/ui/store/state.ts';
import { stateWith, workspace } from './fixture.ts';

describe('a study made anew when the lenses arrive', () => {
  it('keeps the last good chord on the neck while the one under the cursor cannot be read', () => {
    const { cell, intents } = createStudyStore(workspace('| Am7 |'));
    intents.setProgression('| Am7zz |');
    const anew = refreshed(cell.get());
    expect(anew.study.standing.kind).toBe('unread');
    expect(anew.study.symbol).toBe('Am7');
    expect(anew.study.reading?.tones).toEqual(cell.get().study.reading?.tones);
  });

  it('has bends and connections again', () => {
    const before = stateWith('| Am7 | D7 |');
    const anew = refreshed(before);
    expect(anew.study.bends).toEqual(before.study.bends);
    expect(anew.study.connections.length).toBeGreaterThan(0);
    expect(anew.study.cells).toEqual(before.study.cells);
  });
});
