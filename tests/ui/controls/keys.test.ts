import { describe, expect, it } from 'vitest';
import { COLOURS, shownAs } from '../../../src/ui/controls/colours.ts';
import { KEYS } from '../../../src/ui/controls/keys.ts';
import { degree } from '../neck/support.ts';

const named = (mode: string): string =>
  KEYS.filter(({ key }) => key.mode === mode)
    .map(({ name }) => name.split(' ')[0])
    .join(' ');

describe('KEYS', () => {
  // Textbook: fifteen signatures from seven flats to seven sharps (common practice).
  it('holds the fifteen keys of each mode that have a signature', () => {
    expect(new Set(named('major').split(' '))).toEqual(
      new Set('C♭ G♭ D♭ A♭ E♭ B♭ F C G D A E B F♯ C♯'.split(' ')),
    );
    expect(new Set(named('minor').split(' '))).toEqual(
      new Set('A♭ E♭ B♭ F C G D A E B F♯ C♯ G♯ D♯ A♯'.split(' ')),
    );
  });

  it('names each key once', () => {
    expect(new Set(KEYS.map(({ id }) => id)).size).toBe(30);
  });
});

describe('COLOURS', () => {
  it('reads every colour degree it lists', () => {
    expect(COLOURS.map(({ name }) => name).join(' ')).toBe('♭9 2/9 ♯9 4/11 ♯4 ♭5 ♯5 ♭6 6 ♭7 7');
  });

  it('takes 2 for 9 and 11 for 4, but not ♯4 for ♭5', () => {
    expect(shownAs([degree('2')], degree('9'))).toEqual(degree('2'));
    expect(shownAs([degree('11')], degree('4'))).toEqual(degree('11'));
    expect(shownAs([degree('#4')], degree('b5'))).toBeUndefined();
    expect(shownAs([], degree('9'))).toBeUndefined();
  });
});
