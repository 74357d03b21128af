import { describe, expect, it } from 'vitest';
import { STANDARD_GUITAR } from '#neck';
import { struckBend, struckConnection } from '../../../src/ui/sound/struck.ts';
import { stateWith } from '../store/fixture.ts';

const { bends, connections } = stateWith('| Bm7 | E7 |', { position: 7 }).study;

describe('struck by hand', () => {
  it('a bend begins at its fret and ends at what it reaches, whatever the tuning sounds like', () => {
    const [bend] = bends;
    if (bend === undefined) throw new Error('no bend at VII');
    const [plain] = struckBend(bend, STANDARD_GUITAR, 0);
    const [lower] = struckBend(bend, STANDARD_GUITAR, -1);
    const course = plain?.note.bend ?? [];
    expect([course[0]?.semitones, course.at(-1)?.semitones]).toEqual([0, bend.steps]);
    expect((plain?.note.midi ?? 0) - (lower?.note.midi ?? 0)).toBe(1);
    expect(plain?.string).toBe(bend.string);
  });

  it('a connection is the tone of this chord and then that of the next', () => {
    const moved = connections.find(({ bend, semitones }) => !bend && semitones !== 0);
    if (moved === undefined) throw new Error('no connection that moves');
    const [first, second] = struckConnection(moved, STANDARD_GUITAR, 0);
    expect((second?.note.midi ?? 0) - (first?.note.midi ?? 0)).toBe(moved.semitones);
    expect((second?.note.start ?? 0) - (first?.note.start ?? 0)).toBeGreaterThan(0.5);
  });

  it('a bend that arrives at the change is one note', () => {
    const bent = connections.find(({ bend }) => bend);
    if (bent === undefined) throw new Error('no bent connection');
    expect(struckConnection(bent, STANDARD_GUITAR, 0)).toHaveLength(1);
  });
});
