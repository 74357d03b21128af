import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  LIMITS,
  makeInstrument,
  makeSpan,
  makeTuning,
  parseTuning,
  STANDARD_GUITAR,
  STANDARD_TUNING,
  specOf,
  TUNINGS,
} from '#neck';
import { makePitch, midiOf } from '#theory';

const midis = (text: string): string => {
  const read = parseTuning(text);
  return read.ok ? read.value.map(midiOf).join(' ') : read.error.code;
};

describe('tunings', () => {
  it('are standard at MIDI 64 59 55 50 45 40 (common practice; ISO 16 for A4)', () => {
    expect(midis(STANDARD_TUNING)).toBe('64 59 55 50 45 40');
  });

  it.each([
    ['E2 A2 D3 G3 B3 E4', '64 59 55 50 45 40'],
    ['E2,A2,D3,G3,B3,E4', '64 59 55 50 45 40'],
    ['EADGBE', '64 59 55 50 45 40'],
    ['DADGAD', '62 57 55 50 45 38'],
    ['D G D G B D', '62 59 55 50 43 38'],
    ['Eb Ab Db Gb Bb Eb', '63 58 54 49 44 39'],
    ['E1-A1-D2-G2', '43 38 33 28'],
    ['F♯1-B1-E2-A2-D3-G3-B3-E4', '64 59 55 50 45 40 35 30'],
  ])('read %s', (text, expected) => {
    expect(midis(text)).toBe(expected);
  });

  it.each([
    ['', 'count', undefined, ''],
    ['E2-A2-D3', 'count', undefined, 'E2-A2-D3'],
    ['E2-A2-D3-G3-B3-H4', 'not-a-note', 5, 'H4'],
    ['E2-A2-D-G3-B3-E4', 'not-a-note', 2, 'D'],
    ['E2-A2-D3-G3-B3-E9', 'range', 5, 'E9'],
    ['<b>-A2-D3-G3', 'not-a-note', 0, '<b>'],
  ])('refuse %s and say which string', (text, code, item, found) => {
    const read = parseTuning(text);
    const error = read.ok ? undefined : read.error;
    expect([error?.code, error?.item, error?.found]).toEqual([code, item, found]);
    expect(error?.expected).not.toBe('');
  });

  it('are made as they are read', () => {
    for (const { text } of TUNINGS) {
      const read = parseTuning(text);
      expect(read.ok && makeTuning(read.value)).toBe(text);
    }
  });

  it('never throw on any text and read back what they make', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (text) => {
        const read = parseTuning(text);
        if (!read.ok) return read.error.expected !== '';
        return midis(makeTuning(read.value)) === read.value.map(midiOf).join(' ');
      }),
    );
  });
});

describe('an instrument', () => {
  it('is a standard guitar unless something else is said', () => {
    const strings = STANDARD_GUITAR.strings.map(
      (s) => `${makePitch(s.pitch)} ${s.gauge}${s.wound ? 'w' : ''}`,
    );
    expect(strings.join(', ')).toBe('E4 10, B3 13, G3 17, D3 26w, A2 36w, E2 46w');
    expect([STANDARD_GUITAR.frets, STANDARD_GUITAR.scale]).toEqual([22, 648]);
  });

  it.each([
    [{ frets: 11 }, 'frets', 'range'],
    [{ frets: 28 }, 'frets', 'range'],
    [{ frets: 20.5 }, 'frets', 'not-a-number'],
    [{ frets: Number.NaN }, 'frets', 'not-a-number'],
    [{ capo: -1 }, 'capo', 'range'],
    [{ scale: 12 }, 'scale', 'range'],
    [{ scale: Number.POSITIVE_INFINITY }, 'scale', 'not-a-number'],
    [{ gauges: [10, 13] }, 'gauges', 'count'],
    [{ gauges: [10, 13, 17, 26, 36, 4600] }, 'gauges', 'range'],
    [{ tuning: 'E2' }, 'tuning', 'count'],
  ])('refuses %o at the field %s', (spec, field, code) => {
    const made = makeInstrument(spec);
    expect(made.ok ? undefined : [made.error.field, made.error.code]).toEqual([field, code]);
  });

  it('can be told and built again', () => {
    const spec = fc.record({
      tuning: fc.constantFrom(...TUNINGS.map((tuning) => tuning.text)),
      frets: fc.integer(LIMITS.frets),
      capo: fc.integer(LIMITS.capo),
      scale: fc.integer(LIMITS.scale),
      leftHanded: fc.boolean(),
    });
    fc.assert(
      fc.property(spec, (asked) => {
        const made = makeInstrument(asked);
        if (!made.ok) return false;
        expect(makeInstrument(specOf(made.value))).toEqual(made);
        return true;
      }),
    );
  });
});

describe('a span', () => {
  it.each([
    [5, 9, true],
    [1, 4, true],
    [5, 7, false],
    [5, 13, false],
    [0, 4, false],
    [2.5, 6, false],
  ])('from index at %i to little finger at %i is accepted: %s', (index, little, accepted) => {
    const made = makeSpan(index, little);
    expect(made.ok).toBe(accepted);
    if (!made.ok) expect(made.error.field).toBe('span');
  });
});
