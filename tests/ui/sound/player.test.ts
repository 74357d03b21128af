import { describe, expect, it } from 'vitest';
import { DEFAULT_SOUND, type SoundSetup } from '#lesson';
import { BAR, playing } from './fake.ts';

const sound = (more: Partial<SoundSetup['transport']>): { readonly sound: SoundSetup } => ({
  sound: { ...DEFAULT_SOUND, transport: { ...DEFAULT_SOUND.transport, ...more } },
});

const SONG = '| Dm7 | G7 | Cmaj7 | A7 |';

describe('playing', () => {
  it('begins at the cursor, with the settings of the workspace', () => {
    const { player, store, told } = playing(SONG);
    store.intents.moveCursorTo(2);
    player.play();
    expect(told.requests[0]?.from).toBe(2 * BAR);
    expect(told.requests[0]?.settings).toEqual(DEFAULT_SOUND.transport);
  });

  it('takes the cursor along, chord by chord, and is no step of undo', () => {
    const { player, at, cursor, store } = playing(SONG);
    player.play();
    const seen = [0, 100, BAR - 1, BAR, 2 * BAR + 5, 4 * BAR - 1].map((tick) => {
      at(tick);
      return cursor();
    });
    expect(seen).toEqual([0, 0, 0, 1, 2, 3]);
    expect(store.cell.get().canUndo).toBe(false);
  });

  it('leaves a cursor alone that a person moved while typing, until the next chord', () => {
    const { player, at, cursor, store, made, told } = playing(SONG);
    player.play();
    at(10);
    made.typing = true;
    store.intents.moveCursorTo(3);
    at(20);
    expect(cursor()).toBe(3);
    expect(told.requests).toHaveLength(1);
    at(BAR);
    expect(cursor()).toBe(1);
  });

  it('goes where a person takes the cursor, without counting in', () => {
    const { player, at, store, told } = playing(SONG);
    player.play();
    at(10);
    store.intents.moveCursorTo(3);
    expect(told.requests[1]).toMatchObject({ from: 3 * BAR, settings: { countInBars: 0 } });
  });

  it('brings the cursor back to where it began when the music is over, but not when it is stopped', () => {
    const over = playing(SONG);
    over.store.intents.moveCursorTo(1);
    over.player.play();
    over.at(3 * BAR);
    over.become({ phase: 'ready' });
    expect(over.cursor()).toBe(1);
    const stopped = playing(SONG);
    stopped.player.play();
    stopped.at(3 * BAR);
    stopped.player.stop();
    expect(stopped.cursor()).toBe(3);
  });

  it('draws no more frames when it has stopped', () => {
    const { player, at, frame } = playing(SONG);
    player.play();
    at(10);
    player.stop();
    expect(frame()).toBe(false);
  });

  it('plays or stops, and starts over at the beginning of the loop', () => {
    const { player, cursor, store, told, engine, at } = playing(
      SONG,
      sound({ loop: { first: 2, last: 3 } }),
    );
    store.intents.moveCursorTo(3);
    player.fromStart();
    expect(cursor()).toBe(1);
    player.toggle();
    at(2 * BAR);
    player.fromStart();
    expect(told.requests.at(-1)?.from).toBe(BAR);
    player.toggle();
    expect(engine.state().phase).toBe('ready');
  });
});

describe('what comes next', () => {
  it('is what is played next: at the end of a loop its beginning, at a repeat the chord after it', () => {
    const looped = playing(SONG, sound({ loop: { first: 2, last: 3 } }));
    const next = ({ store }: typeof looped) => store.cell.get().study.nextSymbol;
    looped.player.play();
    looped.at(2 * BAR + 10);
    expect(next(looped)).toBe('G7');
    looped.player.stop();
    expect(next(looped)).toBe('A7');
    const repeated = playing('|: Dm7 | G7 :| Cmaj7 |');
    repeated.player.play();
    repeated.at(BAR + 10);
    expect(next(repeated)).toBe('Dm7');
    repeated.at(3 * BAR + 10);
    expect(next(repeated)).toBe('Cmaj7');
  });

  it('is shown early enough to get there, and not before', () => {
    // At 60 quarters a minute a bar lasts four seconds.
    const { player, at } = playing(SONG, sound({ tempo: 60 }));
    player.play();
    const soon = [0, 2, 2.3, 2.5, 3.9].map((seconds) => {
      at(seconds * 960);
      return player.sounding.get().soon;
    });
    expect(soon).toEqual([false, false, false, true, true]);
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
});

describe('what is shown while it plays', () => {
  it('is the beat of the bar, the round and the tempo, and the count before it', () => {
    const { player, at, count, frame } = playing(
      '3/4 | Dm7 | G7 |',
      sound({ tempo: 100, rise: { by: 5, every: 1, most: 120 }, loop: { first: 1, last: 2 } }),
    );
    player.play();
    count(2);
    frame();
    expect(player.sounding.get()).toMatchObject({ counting: true, beat: 2 });
    at(2 * 960, 2);
    expect(player.sounding.get()).toMatchObject({
      counting: false,
      beat: 3,
      beats: 3,
      round: 2,
      tempo: 110,
    });
    player.stop();
    expect(player.sounding.get()).toMatchObject({ phase: 'ready', beat: 0, soon: false });
  });

  it('is what to do when the browser or the device will not', () => {
    const { player, become } = playing(SONG);
    become({ phase: 'blocked', message: 'Press Play once more.' });
    expect(player.sounding.get().message).toBe('Press Play once more.');
    become({ phase: 'ready' });
    expect(player.sounding.get().message).toBeUndefined();
  });
});

describe('when the sound fails', () => {
  it('the cursor stays where the music was, and Play goes on from there', () => {
    const { player, at, become, cursor, frame, told } = playing(SONG);
    player.play();
    at(2 * BAR + 10);
    become({ phase: 'starting' });
    become({ phase: 'lost', message: 'Check the device.' });
    expect(cursor()).toBe(2);
    expect(player.sounding.get()).toMatchObject({ beat: 0, message: 'Check the device.' });
    expect(frame()).toBe(false);
    player.play();
    expect(told.requests.at(-1)?.from).toBe(2 * BAR);
  });

  it('it goes on where it is when the sound comes back by itself', () => {
    const { player, at, become, cursor } = playing(SONG);
    player.play();
    at(BAR + 10);
    become({ phase: 'blocked', message: 'Press Play once more.' });
    expect(player.sounding.get().message).toBe('Press Play once more.');
    become({ phase: 'playing' });
    at(2 * BAR);
    expect([cursor(), player.sounding.get().message]).toEqual([2, undefined]);
  });
});

describe('a change while it plays', () => {
  it('of tempo or loop reaches the transport, of chords or feel the performance', () => {
    const { player, at, store, told } = playing(SONG);
    player.play();
    at(10);
    store.intents.setTempo('72');
    store.intents.setLoop('1-2');
    expect(told.settings.map(({ tempo, loop }) => [tempo, loop])).toEqual([
      [72, undefined],
      [72, { first: 1, last: 2 }],
    ]);
    store.intents.setFeel('shuffle');
    store.intents.setProgression('| Dm7 | G7 | C6 |');
    expect(told.performances).toHaveLength(2);
  });

  it('of levels and instrument is heard at once, playing or not', () => {
    const { store, told } = playing(SONG);
    store.intents.setMaster(0.3);
    store.intents.setTuning('D2-A2-D3-G3-B3-E4');
    expect(told.mix?.master).toBe(0.3);
    expect(told.instrument).toBe(store.cell.get().workspace.instrument);
  });

  it('that changes nothing of what is heard gives nothing to the engine', () => {
    const { player, at, store, told } = playing(SONG);
    player.play();
    at(10);
    store.intents.setTheme('dark');
    store.intents.setLabels('notes');
    expect([told.performances, told.settings]).toEqual([[], []]);
    expect(player.piece()).toBe(player.piece());
  });

  it('leaves a loop out that the chart does not have', () => {
    const { player, told } = playing('| C | F |', sound({ loop: { first: 5, last: 8 } }));
    player.play();
    expect(told.requests[0]?.settings.loop).toBeUndefined();
  });
});

describe('by hand', () => {
  it('the chord under the cursor is struck as its grip, or tone by tone from below', () => {
    const { player, store, told } = playing('| Bm7 |', { position: 7 });
    const grip = store.cell.get().study.reading?.chosen?.grip;
    player.hearChord();
    player.hearTones();
    const [together, inTurn] = told.struck;
    expect(together?.map(({ string }) => string)).toEqual(
      grip?.tones.map(({ string }) => string).sort((a, b) => b - a),
    );
    const pitches = inTurn?.map(({ note }) => note.midi) ?? [];
    expect(pitches).toEqual([...pitches].sort((a, b) => a - b));
    const starts = inTurn?.map(({ note }) => note.start) ?? [];
    expect(starts[1]).toBeGreaterThan(0.3);
    expect(new Set(starts).size).toBe(pitches.length);
  });

  it('the tempo is tapped', () => {
    const { player, store, made } = playing(SONG);
    for (const seconds of [10, 10.5, 11, 11.5]) {
      made.seconds = seconds;
      player.tap();
    }
    expect(store.cell.get().workspace.sound.transport.tempo).toBe(120);
  });
});
