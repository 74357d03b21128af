import { describe, expect, it } from 'vitest';
import type { SoundSetup } from '#lesson';
import { BAR, playing, sound } from './fake.ts';

const SONG = '| Dm7 | G7 | Cmaj7 | A7 |';

describe('what comes next', () => {
  it('is what is played next: at the end of a loop its beginning, at a repeat the chord after it', () => {
    const looped = playing(SONG, sound({ loop: { first: 2, last: 3 } }));
    const next = ({ store }: typeof looped) => store.cell.get().study.nextSymbol;
    looped.player.play();
    looped.at(2 * BAR + 10);
    expect(next(looped)).toBe('G7');
    looped.player.stop();
    expect(next(looped)).toBe('G7');
    const repeated = playing('|: Dm7 | G7 :| Cmaj7 |');
    repeated.player.play();
    repeated.at(BAR + 10);
    expect(next(repeated)).toBe('Dm7');
    repeated.at(3 * BAR + 10);
    expect(next(repeated)).toBe('Cmaj7');
  });

  it('is known of a loop also while nothing plays, and when the text or the loop changes', () => {
    const { store, wait } = playing('| C | G | F | E7 | Am |', {
      ...sound({ loop: { first: 3, last: 4 } }),
      at: { bar: 4, beat: 1 },
    });
    const told = () => [store.cell.get().study.nextSymbol, store.cell.get().study.nextWords];
    wait(0);
    expect(told()).toEqual(['F', 'Next, by the repeat']);
    store.intents.setProgression('| C | G | Dm | E7 | Am |');
    expect(told()).toEqual(['Dm', 'Next, by the repeat']);
    store.intents.setOnce(true);
    expect(told()).toEqual([undefined, undefined]);
    store.intents.setLoop('');
    expect(told()).toEqual(['Am', 'Next']);
    store.intents.setOnce(false);
    store.intents.setLoop('1-4');
    expect(told()).toEqual(['C', 'Next, by the repeat']);
    store.intents.undo();
    expect(told()).toEqual(['Am', 'Next']);
  });

  it('is at the end what stands at the beginning, and nothing where it is played once', () => {
    const end = (more: Partial<SoundSetup['transport']>) => {
      const { player, at, store } = playing(SONG, sound(more));
      player.play();
      at(3 * BAR + 10);
      return store.cell.get().study.nextSymbol;
    };
    expect([end({}), end({ once: true })]).toEqual(['Dm7', undefined]);
  });

  it('is the next chord also before a rest, and is shown at the end of that', () => {
    const { player, at, store } = playing('| C/E | N.C. | E7 | E7 | A7 |', sound({ tempo: 60 }));
    player.play();
    const seen = [0, 0.9, 1.9, 2, 3.9].map((bars) => {
      at(bars * BAR);
      return [store.cell.get().study.nextSymbol, player.sounding.get().soon];
    });
    expect(seen).toEqual([
      ['E7', false],
      ['E7', false],
      ['E7', true],
      ['A7', false],
      ['A7', true],
    ]);
  });

  it.each([
    [44, [0, 1.9, 2.1, 3.9], [false, false, true, true]],
    [60, [0, 1.9, 2.1, 3.9], [false, false, true, true]],
    [120, [0, 0.9, 1.1, 3.9], [false, false, true, true]],
    [240, [0, 0.9, 1.1, 3.9], [false, false, true, true]],
  ])('is shown two beats ahead at %i, longer where those are short', (tempo, beats, expected) => {
    const { player, at } = playing(SONG, sound({ tempo }));
    player.play();
    const soon = beats.map((beat) => {
      at(beat * 960);
      return player.sounding.get().soon;
    });
    expect(soon).toEqual(expected);
  });

  it('is shown as many seconds ahead where the tempo is a share, or has risen', () => {
    const soonAt = (beat: number, round: number, more: Partial<SoundSetup['transport']>) => {
      const { player, at } = playing(SONG, sound({ tempo: 100, ...more }));
      player.play();
      at(beat * 960, round);
      return player.sounding.get().soon;
    };
    expect(soonAt(1.4, 0, {})).toBe(true);
    expect(soonAt(1.4, 0, { share: 0.6 })).toBe(false);
    const rise = { by: 50, every: 1, most: 300 };
    expect([soonAt(1.1, 0, { rise }), soonAt(1.1, 1, { rise })]).toEqual([false, true]);
  });

  it('is shown for no more than three quarters of a short chord', () => {
    const { player, at } = playing('| Dm7 G7 Cmaj7 A7 |', sound({ tempo: 120 }));
    player.play();
    const soon = [0, 200, 250, 959].map((tick) => {
      at(tick);
      return player.sounding.get().soon;
    });
    expect(soon).toEqual([false, false, true, true]);
  });

  it.each([
    // 1.6 seconds are 3.2 quarters here; of a chord of two beats all is needed.
    ['| C | C | G |', [1.9, 2.1, 3.9, 6.1], [false, false, false, true]],
    ['| C G |', [0, 1.9], [true, true]],
    ['3/4 | C | G |', [0.7, 0.9], [false, true]],
    ['12/8 | C | G |', [2.7, 2.9], [false, true]],
  ])('is shown of %s from a beat on', (song, beats, expected) => {
    const { player, at } = playing(song, sound({ tempo: 120 }));
    player.play();
    const soon = beats.map((beat) => {
      at(beat * 960);
      return player.sounding.get().soon;
    });
    expect(soon).toEqual(expected);
  });
});
