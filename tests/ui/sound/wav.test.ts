import { describe, expect, it, vi } from 'vitest';
import { DEFAULT_SOUND } from '#lesson';
import { gainOfPart, PARTS } from '#sound';
import { ALONE, type What, wantedFiles } from '../../../src/ui/sound/wav.ts';
import { playing } from './fake.ts';

// The thread that renders needs a browser; what it is asked for does not.
vi.mock('#sound/browser', () => ({}));

const wanted = (what: What, loop?: { readonly first: number; readonly last: number }) => {
  const transport = { ...DEFAULT_SOUND.transport, ...(loop && { loop }) };
  const { store, player } = playing('| C | F | G |', { sound: { ...DEFAULT_SOUND, transport } });
  return wantedFiles(store, player, what);
};

const heardIn = (what: What): readonly (readonly string[])[] =>
  wanted(what).map(({ query }) => PARTS.filter((part) => gainOfPart(query.mix, part) > 0));

describe('the files that are asked for', () => {
  it('hold what is heard, the part that is named, or each part by itself', () => {
    expect(heardIn('heard')).toEqual([['line', 'comp', 'bass', 'drums', 'count']]);
    expect(heardIn('click')).toEqual([['click']]);
    expect(heardIn('each')).toEqual(ALONE.map((part) => [part]));
  });

  it('are named after what is in them, no two alike', () => {
    expect(wanted('heard')[0]?.name).toBe('handspan-90bpm.wav');
    expect(wanted('comp')[0]?.name).toBe('handspan-90bpm-chords.wav');
    const names = wanted('each').map(({ name }) => name);
    expect(new Set(names).size).toBe(ALONE.length);
  });

  it('begin with the music, and hold of the loop the bars that the chart has', () => {
    const settings = wanted('heard', { first: 2, last: 3 })[0]?.query.settings;
    expect(settings).toMatchObject({ countInBars: 0, loop: { first: 2, last: 3 } });
    const longer = wanted('heard', { first: 2, last: 9 })[0]?.query.settings;
    expect(longer?.loop).toEqual({ first: 2, last: 3 });
    expect(wanted('heard', { first: 4, last: 9 })[0]?.query.settings?.loop).toBeUndefined();
  });
});
