import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fretsIn, makeFingering, parseFingering } from '#neck';
import { GUITAR, instrument } from './support.ts';

const read = (text: string, on = GUITAR) => {
  const fingering = parseFingering(text, on);
  return fingering.ok ? makeFingering(fingering.value) : fingering.error.code;
};

describe('the frets of a fingering', () => {
  it('are read even where no hand could hold them', () => {
    expect(fretsIn('1-x-x-x-x-20', GUITAR)).toEqual({
      ok: true,
      value: [20, null, null, null, null, 1],
    });
    expect(fretsIn('xxxxx3', GUITAR)).toMatchObject({ ok: true });
    expect(fretsIn('x76', GUITAR)).toMatchObject({ ok: false, error: { code: 'count' } });
  });
});

describe('a fingering', () => {
  it.each([
    ['x7678x', 'x7678x'],
    ['X7678X', 'x7678x'],
    ['x-10-12-11-12-x', 'x-10-12-11-12-x'],
    ['x 10 12 11 12 x', 'x-10-12-11-12-x'],
    ['x,3,2,0,1,0', 'x32010'],
    ['000000', '000000'],
  ])('%s is read', (text, expected) => {
    expect(read(text)).toBe(expected);
  });

  it.each([
    ['', 'count', 0],
    ['x767', 'count', 0],
    ['x7678xx', 'count', 0],
    ['x767q8', 'fret', 4],
    ['x-7/9-6-7-8-x', 'fret', 2],
    ['x-10-12-99-12-x', 'beyond', 8],
    ['xxxxxx', 'silent', 0],
    ['xx5xxx', 'silent', 0],
    ['1xxx-', 'fret', 0],
    ['1-x-x-x-x-12', 'wide', 0],
    ['123451', 'fingers', 0],
  ])('%s is refused as %s at %i, and something else is asked for', (text, code, at) => {
    const fingering = parseFingering(text, GUITAR);
    const error = fingering.ok ? undefined : fingering.error;
    expect([error?.code, error?.at]).toEqual([code, at]);
    expect(error?.expected[0]).toBeTruthy();
  });

  it('knows where the capo lies', () => {
    const capo = instrument({ capo: 3 });
    expect(read('x32010', capo)).toBe('beyond');
    expect(read('365333', capo)).toBe('365333');
  });

  it('never throws on any text and stays within it', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), (text) => {
        const fingering = parseFingering(text, GUITAR);
        return fingering.ok || fingering.error.at + fingering.error.length <= text.length;
      }),
    );
  });

  it('is made as it is read, and read as it is made', () => {
    const one = fc.option(fc.integer({ min: 0, max: 22 }), { nil: null });
    fc.assert(
      fc.property(fc.array(one, { minLength: 6, maxLength: 6 }), (frets) => {
        const text = makeFingering(frets);
        const fingering = parseFingering(text, GUITAR);
        return !fingering.ok || makeFingering(fingering.value) === text;
      }),
    );
  });
});
