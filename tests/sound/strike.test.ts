import { describe, expect, it } from 'vitest';
import { STANDARD_GUITAR } from '#neck';
import { struckAt } from '#sound';
import { gripOf, instrument } from '../neck/support.ts';

describe('a grip struck by hand', () => {
  it('sounds from the lowest string up, one after the other', () => {
    const struck = struckAt(gripOf('C', 'C', 0).tones, STANDARD_GUITAR);
    expect(struck.map(({ string, note }) => [string, note.midi, note.start])).toEqual([
      [5, 48, 0],
      [4, 52, 0.03],
      [3, 55, 0.06],
      [2, 60, 0.09],
      [1, 64, 0.12],
    ]);
  });

  it('sounds as the guitar is tuned, and as it is asked', () => {
    const [place] = gripOf('C', 'C', 0).tones;
    if (place === undefined) throw new Error('a grip of C');
    const [down] = struckAt([place], STANDARD_GUITAR, -1, { vibrato: 0.3 });
    expect(down?.note).toMatchObject({ midi: 63, vibrato: 0.3, start: 0 });
  });

  it('leaves out what lies behind the capo', () => {
    expect(struckAt(gripOf('C', 'C', 0).tones, instrument({ capo: 2 }))).toHaveLength(2);
  });
});
