import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { typingRun } from '../../../src/ui/store/typing.ts';

describe('which keystrokes are taken back together', () => {
  it.each([
    ['', 'D', 'typing'],
    ['D', 'Dm', 'typing'],
    ['Dm G', 'Dm7 G', 'typing'],
    ['aa', 'aaa', 'typing'],
    ['Dm', 'Dm|', undefined],
    ['Dm', 'Dm\n', undefined],
    ['Dm', 'D', 'deleting'],
    ['Dm7 G', 'Dm G', 'deleting'],
    ['', 'Dm7 G7', undefined],
    ['Dm7 G7', '', undefined],
    ['Dm', 'Gm', undefined],
    ['abc', 'xyzw', undefined],
  ])('%j to %j is %s', (before, after, run) => {
    expect(typingRun(before, after)).toBe(run);
  });

  it('is decided for any two texts', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (before, after) => {
        const run = typingRun(before, after);
        if (run === 'typing') expect(after.length).toBe(before.length + 1);
        else if (run === 'deleting') expect(after.length).toBe(before.length - 1);
        else expect(run).toBeUndefined();
      }),
    );
  });
});
