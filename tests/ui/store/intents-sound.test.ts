import { describe, expect, it } from 'vitest';
import { DEFAULT_SOUND } from '#lesson';
import { fieldError } from '../../../src/ui/store/index.ts';
import { follow, unfollow } from '../../../src/ui/store/intents-sound.ts';
import { loopNow, sectionOf } from '../../../src/ui/store/looped.ts';
import { acted, stateWith } from './fixture.ts';

const SONG = '[A]\n| C | F |\n[B]\n| G | C | F |';

describe('tempo and loop', () => {
  it('are taken as typed', () => {
    const { workspace } = acted(
      SONG,
      (i) => i.setTempo('72,5'),
      (i) => i.setLoop('2-4'),
    );
    expect(workspace.sound.transport).toMatchObject({ tempo: 72.5, loop: { first: 2, last: 4 } });
  });

  it.each(['', '19', '301', 'fast', '-90', '1e2', 'NaN'])(
    'refuse the tempo “%s”, and the last good one stays',
    (text) => {
      const { state } = acted(
        SONG,
        (i) => i.setTempo('80'),
        (i) => i.setTempo(text),
      );
      expect(state.workspace.sound.transport.tempo).toBe(80);
      expect(fieldError(state, 'tempo')).toContain('expected a number from 20 to 300; still 80');
    },
  );

  it.each(['0', '3-2', '1-9', 'x', '1-2-3', '-1'])(
    'refuse the loop “%s”, and the last good one stays',
    (text) => {
      const { state } = acted(
        SONG,
        (i) => i.setLoop('1-2'),
        (i) => i.setLoop(text),
      );
      expect(state.workspace.sound.transport.loop).toEqual({ first: 1, last: 2 });
      expect(fieldError(state, 'loop')).toMatch(/bars from 1 to 5, as 1-2; still 1-2$/);
    },
  );

  it('no longer tell what was refused once something else is taken', () => {
    const { state } = acted(
      SONG,
      (i) => i.setTempo('x'),
      (i) => i.setTempo('90'),
    );
    expect(fieldError(state, 'tempo')).toBeUndefined();
  });

  it('are taken back, a run of one setting in one step', () => {
    const { undone } = acted(
      SONG,
      (i) => i.setTempo('80'),
      (i) => i.setTempo('81'),
      (i) => i.setLoop('1'),
    );
    expect(undone).toBe(2);
  });
});

describe('a loop of bars that are no longer there', () => {
  const long = '| C | F | G | C | F |';

  it('is not in force, as far as they are not, and is there again when they come back', () => {
    const { state } = acted(
      long,
      (i) => i.setLoop('2-4'),
      (i) => i.setProgression('| C | F | G |'),
    );
    expect(loopNow(state)).toEqual({ first: 2, last: 3 });
    const gone = acted(state.workspace, (i) => i.setProgression('| C |'));
    expect(loopNow(gone.state)).toBeUndefined();
    const back = acted(gone.workspace, (i) => i.setProgression(long));
    expect(loopNow(back.state)).toEqual({ first: 2, last: 4 });
  });

  it('makes way for the section, and a refused one names what is in force', () => {
    const short = acted(
      long,
      (i) => i.setLoop('4-5'),
      (i) => i.setProgression('| C | F | G |'),
    ).workspace;
    const section = acted(short, (i) => i.loopSection());
    expect(section.workspace.sound.transport.loop).toEqual({ first: 1, last: 3 });
    const refused = acted(short, (i) => i.setLoop('9'));
    expect(fieldError(refused.state, 'loop')).toMatch(/still all bars$/);
  });
});

describe('a loop by key', () => {
  it('is the section under the cursor, and let go by the same key', () => {
    const looped = acted(
      SONG,
      (i) => i.moveCursorTo(3),
      (i) => i.loopSection(),
    );
    expect(looped.workspace.sound.transport.loop).toEqual({ first: 3, last: 5 });
    const again = acted(
      SONG,
      (i) => i.loopSection(),
      (i) => i.loopSection(),
    );
    expect(again.workspace.sound.transport.loop).toBeUndefined();
  });

  it('comes back by the same key, but neither in another section nor in another text', () => {
    const looped = (...acts: Parameters<typeof acted>[1][]) => {
      const { workspace } = acted(
        SONG,
        (i) => i.setLoop('1'),
        (i) => i.loopSection(),
        ...acts,
        (i) => i.loopSection(),
      );
      return workspace.sound.transport.loop;
    };
    expect(looped()).toEqual({ first: 1, last: 1 });
    expect(looped((i) => i.moveCursorTo(1))).toEqual({ first: 1, last: 1 });
    expect(looped((i) => i.moveCursorTo(3))).toEqual({ first: 3, last: 5 });
    expect(looped((i) => i.setProgression('| C | F | G |'))).toEqual({ first: 1, last: 3 });
    expect(looped((i) => i.setLoop(''))).toEqual({ first: 1, last: 2 });
  });

  it('counts written bars over the sections', () => {
    const { chart } = stateWith(SONG).study;
    expect([1, 2, 3, 5, 6].map((bar) => sectionOf(chart, bar))).toEqual([
      { first: 1, last: 2 },
      { first: 1, last: 2 },
      { first: 3, last: 5 },
      { first: 3, last: 5 },
      undefined,
    ]);
  });
});

describe('speed and levels', () => {
  it('stay within what can be played', () => {
    const share = (value: number): number =>
      acted(SONG, (i) => i.setShare(value)).workspace.sound.transport.share;
    expect([0.5, 0, 7, 0.333].map(share)).toEqual([0.5, 0.25, 1, 0.33]);
    const { workspace } = acted(
      SONG,
      (i) => i.setSemitones(-1),
      (i) => i.setSemitones(99),
      (i) => i.setCountIn(2),
      (i) => i.setCountIn(-3),
      (i) => i.setMaster(2),
      (i) => i.setPart('bass', { level: Number.NaN }),
      (i) => i.setPart('drums', { mute: true }),
    );
    const { transport, mix } = workspace.sound;
    expect([transport.semitones, transport.countInBars, mix.master]).toEqual([-1, 2, 0.5]);
    expect([mix.parts.bass.level, mix.parts.drums.mute]).toEqual([0.7, true]);
  });

  it('go round and round or once, as a step of undo', () => {
    const { workspace, undone } = acted(
      SONG,
      (i) => i.setOnce(true),
      (i) => i.setTempo('80'),
    );
    expect([workspace.sound.transport.once, undone]).toEqual([true, 2]);
  });

  it('rise as asked, and refuse a rise that cannot be played', () => {
    const rise = { by: 5, every: 2, most: 120 };
    const { state } = acted(
      SONG,
      (i) => i.setRise(rise),
      (i) => i.setRise({ ...rise, most: 999 }),
    );
    expect(state.workspace.sound.transport.rise).toEqual(rise);
    expect(fieldError(state, 'rise')).toContain('20 to 300');
    expect(acted(SONG, (i) => i.setRise(undefined)).workspace.sound).toBe(DEFAULT_SOUND);
  });

  it('are as on a first visit when they are reset', () => {
    const { workspace } = acted(
      SONG,
      (i) => i.setGuitar('driven'),
      (i) => i.setPedal('steps'),
      (i) => i.setTouch(false),
      (i) => i.resetSound(),
    );
    expect(workspace.sound).toBe(DEFAULT_SOUND);
  });

  it('that are so already change nothing', () => {
    const { before, state } = acted(
      SONG,
      (i) => i.setTempo('90'),
      (i) => i.setFeel('straight'),
      (i) => i.setPart('bass', { mute: false }),
      (i) => i.setPractising(false),
    );
    expect(state).toBe(before);
  });
});

describe('following the music', () => {
  it('puts the cursor where it is, and what comes next as it is played', () => {
    const state = stateWith('|: C | F :| G |');
    const first = follow(state, 1, 0);
    expect([first.study.cursor, first.study.nextSymbol]).toEqual([1, 'C']);
    const second = follow(first, 1, 2);
    expect([second.study.cursor, second.study.nextSymbol]).toEqual([1, 'G']);
    expect(second.canUndo).toBe(false);
  });

  it('changes nothing where the music stays, and leaves the chart as written in the end', () => {
    const state = stateWith('|: C | F :| G |');
    expect(follow(state, 0, 1)).toBe(state);
    expect(unfollow(state, new Map())).toBe(state);
    expect(unfollow(follow(state, 1, 2), new Map()).study.nextOf).toEqual(state.study.nextOf);
    expect(unfollow(state, new Map([[1, -1]])).study.nextOf).toEqual([1, -1, -1]);
  });
});
