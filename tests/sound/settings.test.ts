import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { playedOf } from '#line';
import {
  DEFAULT_MIX,
  DEFAULT_SETTINGS,
  gainOfPart,
  HEARING,
  makeLoop,
  niosh,
  onlyParts,
  PARTS,
  parseLoop,
  parseTempo,
  spanOfLoop,
  type Taps,
  tappedTempo,
  tempoIn,
  withLoop,
  withMaster,
  withOnce,
  withPart,
  withRise,
  withSetting,
  withTap,
  withTempoHeard,
} from '#sound';
import { chart, quarters } from '../line/short.ts';

const before = DEFAULT_SETTINGS;

describe('the settings of the transport', () => {
  it.each<[Parameters<typeof withSetting>[1], number]>([
    ['tempo', 19],
    ['tempo', 301],
    ['tempo', Number.NaN],
    ['share', 0],
    ['share', 1.5],
    ['semitones', 0.5],
    ['semitones', 13],
    ['countInBars', -1],
    ['countInBars', 1.5],
    ['tempo', before.tempo],
  ])('keep the last good value: %s %d changes nothing', (name, value) => {
    expect(withSetting(before, name, value)).toBe(before);
  });

  it('take what makes sense', () => {
    expect(withSetting(before, 'tempo', 120).tempo).toBe(120);
    expect(withSetting(before, 'semitones', -1).semitones).toBe(-1);
    expect(withSetting(before, 'share', 0.5).share).toBe(0.5);
  });

  it('loop bars that make sense, or none', () => {
    const looped = withLoop(before, { first: 5, last: 8 });
    expect(looped.loop).toEqual({ first: 5, last: 8 });
    expect(withLoop(looped, { first: 5, last: 8 })).toBe(looped);
    expect(withLoop(looped, { first: 8, last: 5 })).toBe(looped);
    expect(withLoop(looped, { first: 0, last: 5 })).toBe(looped);
    expect(withLoop(looped, { first: 1.5, last: 5 })).toBe(looped);
    expect(withLoop(looped, undefined).loop).toBeUndefined();
    expect(withLoop(before, undefined)).toBe(before);
  });

  it('may rise by steps after so many rounds, up to a tempo', () => {
    const rising = withRise(withSetting(before, 'tempo', 60), { by: 10, every: 2, most: 85 });
    expect([-1, 0, 1, 2, 3, 4, 6, 100].map((round) => tempoIn(rising, round))).toEqual([
      60, 60, 60, 70, 70, 80, 85, 85,
    ]);
    expect(tempoIn(withSetting(rising, 'share', 0.5), 2)).toBe(35);
    expect(withRise(rising, { by: 0, every: 2, most: 85 })).toBe(rising);
    expect(withRise(rising, { by: 10, every: 2.5, most: 85 })).toBe(rising);
    expect(withRise(rising, { by: 10, every: 2, most: 85 })).toBe(rising);
    expect(withRise(rising, undefined).rise).toBeUndefined();
  });

  it('never rise to less than the tempo', () => {
    const rising = withRise(withSetting(before, 'tempo', 120), { by: 10, every: 1, most: 100 });
    expect(tempoIn(rising, 5)).toBe(120);
  });
});

describe('the fields', () => {
  it.each([
    ['90', 90],
    [' 92.5 ', 92.5],
    ['92,5', 92.5],
    ['20', 20],
    ['300', 300],
  ])('Tempo reads %j', (text, tempo) => {
    expect(parseTempo(text)).toEqual({ ok: true, value: tempo });
  });

  it.each(['', 'fast', '19', '301', '1e2', '-90', '0x50', '90 bpm', 'NaN', 'Infinity'])(
    'Tempo refuses %j',
    (text) => {
      expect(parseTempo(text)).toEqual({
        ok: false,
        error: {
          code: 'tempo',
          at: 0,
          length: text.length,
          found: text,
          expected: ['a number from 20 to 300'],
        },
      });
    },
  );

  it.each([
    ['5-8', { first: 5, last: 8 }],
    [' 5 – 8 ', { first: 5, last: 8 }],
    ['5 to 8', { first: 5, last: 8 }],
    ['5, 8', { first: 5, last: 8 }],
    ['5  8', { first: 5, last: 8 }],
    ['5', { first: 5, last: 5 }],
    ['', undefined],
  ])('Loop reads %j', (text, loop) => {
    expect(parseLoop(text, 12)).toEqual({ ok: true, value: loop });
  });

  it.each(['0', '8-5', '5-13', '13', 'a', '5-', '-5', '1.5', '5to8', '5 8 9'])(
    'Loop refuses %j',
    (text) => {
      const read = parseLoop(text, 12);
      expect(read.ok).toBe(false);
      if (!read.ok) expect(read.error.expected).toEqual(['bars from 1 to 12, as 1-2']);
    },
  );

  it('read anything without failing, and what they write', () => {
    const bar = fc.integer({ min: 1, max: 999 });
    fc.assert(
      fc.property(bar, bar, (a, b) => {
        const loop = { first: Math.min(a, b), last: Math.max(a, b) };
        expect(parseLoop(makeLoop(loop), 999)).toEqual({ ok: true, value: loop });
      }),
    );
    fc.assert(
      fc.property(fc.string(), (text) => {
        const read = parseLoop(text, 20);
        if (read.ok && read.value) expect(read.value.last).toBeLessThanOrEqual(20);
        const tempo = parseTempo(text);
        if (tempo.ok) expect(tempo.value).toBeLessThanOrEqual(300);
      }),
    );
  });
});

describe('looped bars', () => {
  const span = (text: string, first: number, last: number) => {
    const found = spanOfLoop(playedOf(chart(text)).bars, { first, last });
    return found && [quarters(found.from), quarters(found.to)];
  };

  it('lie where they are first played in a row', () => {
    expect(span('| C | F | G | C |', 2, 3)).toEqual([4, 12]);
    expect(span('|: C | F :| G |', 2, 3)).toEqual([12, 20]);
    expect(span('|: C | F :| G |', 2, 2)).toEqual([4, 8]);
    expect(span('|: C |1. F :|2. G | Am |', 3, 4)).toEqual([12, 20]);
    expect(span('3/4 | C | F |', 2, 2)).toEqual([3, 6]);
  });

  it('are nowhere in a chart that has no such bars, or never plays them in a row', () => {
    expect(span('| C |', 2, 3)).toBeUndefined();
    expect(span('|: C |1. F :|2. G |', 1, 3)).toBeUndefined();
  });
});

describe('what is played', () => {
  const settings = { tempo: 90, share: 1, semitones: 0, countInBars: 1 };
  const rise = { by: 4, every: 2, most: 140 };

  it('goes round and round, or once; the same when it is so already', () => {
    const once = withOnce(settings, true);
    expect(once.once).toBe(true);
    expect(withOnce(once, true)).toBe(once);
    expect(withOnce(once, false)).toEqual(settings);
    expect(withOnce(settings, false)).toBe(settings);
  });

  it('goes round as soon as bars are looped or the tempo rises with the rounds', () => {
    const once = withOnce(settings, true);
    expect(withLoop(once, { first: 1, last: 2 }).once).toBeUndefined();
    expect(withRise(once, rise).once).toBeUndefined();
  });
});

describe('a tempo that is heard', () => {
  const settings = { tempo: 90, share: 1, semitones: 0, countInBars: 1 };
  const rise = { by: 4, every: 2, most: 140 };

  it.each([
    [{}, 100, 0, { tempo: 100, share: 1 }],
    [{ share: 0.7 }, 100, 0, { tempo: 143, share: 0.7 }],
    [{ share: 0.5 }, 200, 0, { tempo: 200, share: 1 }],
    [{ share: 0.25 }, 20, 0, { tempo: 80, share: 0.25 }],
    [{ rise }, 100, 4, { tempo: 92, share: 1, rise }],
    [{ rise }, 150, 4, { tempo: 150, share: 1, rise }],
    [{ rise, share: 0.5 }, 60, 2, { tempo: 116, share: 0.5, rise }],
  ])('with %j is set so that %i sounds in round %i', (more, heard, round, expected) => {
    const set = withTempoHeard({ ...settings, ...more }, heard, round);
    expect(set).toMatchObject(expected);
    expect(Math.abs(tempoIn(set, round) - heard)).toBeLessThanOrEqual(0.5);
  });
});

describe('a tapped tempo', () => {
  const tapped = (...moments: readonly number[]): number | undefined =>
    tappedTempo(moments.reduce<Taps>((taps, now) => withTap(taps, now), []));

  it.each([
    [[0, 0.5], 120],
    [[0, 0.5, 1, 1.5], 120],
    [[0, 1.02, 1.98, 3], 60],
    [[0], undefined],
    [[], undefined],
    [[0, 0.01], undefined],
    [[0, 0.5, 10, 10.6], 100],
    [[0, 1, 2, 3, 4, 5, 5.4, 5.8, 6.2, 6.6, 7], 150],
  ])('of %j is %s', (moments, tempo) => {
    expect(tapped(...moments)).toBe(tempo);
  });
});

describe('the mix', () => {
  it('starts quietly, with the click off', () => {
    expect(DEFAULT_MIX.master).toBeLessThanOrEqual(0.5);
    expect(gainOfPart(DEFAULT_MIX, 'click')).toBe(0);
    expect(gainOfPart(DEFAULT_MIX, 'line')).toBeGreaterThan(0);
  });

  it('refuses nonsense, and changes nothing that is so already', () => {
    for (const level of [-0.1, 1.1, Number.NaN, Number.POSITIVE_INFINITY]) {
      expect(withPart(DEFAULT_MIX, 'bass', { level })).toBe(DEFAULT_MIX);
      expect(withMaster(DEFAULT_MIX, level)).toBe(DEFAULT_MIX);
    }
    expect(withPart(DEFAULT_MIX, 'bass', { mute: false })).toBe(DEFAULT_MIX);
    expect(withMaster(DEFAULT_MIX, DEFAULT_MIX.master)).toBe(DEFAULT_MIX);
  });

  it('mutes a part, and plays solo parts alone, with the count-in', () => {
    const mute = withPart(DEFAULT_MIX, 'comp', { mute: true });
    expect(gainOfPart(mute, 'comp')).toBe(0);
    const solo = withPart(DEFAULT_MIX, 'bass', { solo: true });
    expect(PARTS.filter((part) => gainOfPart(solo, part) > 0)).toEqual(['bass', 'count']);
  });

  it('can be had with only some parts', () => {
    const alone = onlyParts(withPart(DEFAULT_MIX, 'comp', { solo: true }), ['click']);
    expect(PARTS.filter((part) => gainOfPart(alone, part) > 0)).toEqual(['click']);
  });
});

describe('the hearing caution', () => {
  it('agrees with the table of the NIOSH limit: 88 → 4 h, 91 → 2 h, 94 → 1 h, 97 → 30, 100 → 15 min', () => {
    expect([85, 88, 91, 94, 97, 100].map(niosh)).toEqual([8, 4, 2, 1, 0.5, 0.25]);
  });

  it('is short and names its sources', () => {
    for (const { text, source } of HEARING) {
      expect(text.length).toBeLessThan(200);
      expect(source).toMatch(/NIOSH|H\.870/);
    }
  });
});
