import { describe, expect, it, vi } from 'vitest';
import { remembered } from '../../../src/ui/neck/remembered.ts';

describe('what is remembered', () => {
  it('is made once for an object and the same other things', () => {
    const make = vi.fn((of: { readonly n: number }, by: string) => ({ text: `${of.n}${by}` }));
    const known = remembered(make);
    const [one, two] = [{ n: 1 }, { n: 2 }];
    const first = known(one, 'a');
    expect(known(two, 'a')).toEqual({ text: '2a' });
    expect(known(one, 'a')).toBe(first);
    expect(make).toHaveBeenCalledTimes(2);
    expect(known(one, 'b')).toEqual({ text: '1b' });
    expect(known(one, 'a')).toEqual({ text: '1a' });
    expect(make).toHaveBeenCalledTimes(4);
  });
});
