import { describe, expect, it } from 'vitest';
import { type Act, acted } from './fixture.ts';

describe('the cursor', () => {
  const cursor = (...acts: readonly Act[]): number =>
    acted('| C G | Am | F |', ...acts).study.cursor;

  it('moves by chords and to both ends, and stays there', () => {
    expect(cursor((i) => i.moveCursor(1))).toBe(1);
    expect(cursor((i) => i.moveCursor('end'))).toBe(3);
    expect(
      cursor(
        (i) => i.moveCursor('end'),
        (i) => i.moveCursor(1),
      ),
    ).toBe(3);
    expect(
      cursor(
        (i) => i.moveCursor('end'),
        (i) => i.moveCursor(-1),
      ),
    ).toBe(2);
    expect(
      cursor(
        (i) => i.moveCursor('end'),
        (i) => i.moveCursor('start'),
      ),
    ).toBe(0);
    expect(cursor((i) => i.moveCursorTo(2))).toBe(2);
    expect(cursor((i) => i.moveCursorTo(99))).toBe(3);
    expect(cursor((i) => i.moveCursorTo(Number.NaN))).toBe(0);
  });

  it('moves to the chord at the caret', () => {
    const at = (caret: number) => cursor((i) => i.moveCursorToOffset(caret));
    expect([0, 2, 3, 4, 5, 8, 14, 99].map(at)).toEqual([0, 0, 0, 1, 1, 2, 3, 3]);
  });

  it('stays among the chords that a % stands for while the caret is at it', () => {
    const { study } = acted('| C G | % |', (i) => {
      i.moveCursor('end');
      i.moveCursorToOffset(8);
    });
    expect(study.cursor).toBe(3);
  });

  it('is no step of undo, and a move to where it is changes nothing', () => {
    expect(acted('C G', (i) => i.moveCursor(1)).undone).toBe(0);
    const same = acted(
      'C G',
      (i) => i.moveCursor(-1),
      (i) => i.moveCursorTo(0),
      (i) => i.moveCursorToOffset(0),
    );
    expect(same.state).toBe(same.before);
    expect(acted('', (i) => i.moveCursor(1)).study.cursor).toBe(-1);
  });
});
