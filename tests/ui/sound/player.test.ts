import { describe, expect, it } from 'vitest';
import { DEFAULT_SOUND } from '#lesson';
import { BAR, playing, sound } from './fake.ts';

const SONG = '| Dm7 | G7 | Cmaj7 | A7 |';

describe('playing', () => {
  it('begins at the cursor, with the settings of the workspace', () => {
    const { player, store, told } = playing(SONG);
    store.intents.moveCursorTo(2);
    player.play();
    expect(told.requests[0]?.from).toBe(2 * BAR);
    expect(told.requests[0]?.settings).toEqual(DEFAULT_SOUND.transport);
  });

  it('begins at the loop when the cursor stands outside it, and shows that while it counts in', () => {
    const { player, store, told, cursor, count, frame } = playing(
      SONG,
      sound({ loop: { first: 3, last: 4 } }),
    );
    const next = () => store.cell.get().study.nextSymbol;
    for (const outside of [0, 1]) {
      store.intents.moveCursorTo(outside);
      player.play();
      count(2);
      frame();
      expect([cursor(), next(), told.requests.at(-1)?.from]).toEqual([2, 'A7', 2 * BAR]);
      player.stop();
    }
    store.intents.moveCursorTo(3);
    player.play();
    expect([cursor(), next(), told.requests.at(-1)?.from]).toEqual([3, 'Cmaj7', 3 * BAR]);
  });

  it('begins where a looped bar is played as written, not where a repeat plays it first', () => {
    const { player, store, told, cursor, at } = playing(
      '|: Dm7 | G7 |1. Cmaj7 :|2. A7 |',
      sound({ loop: { first: 2, last: 4 } }),
    );
    store.intents.moveCursorTo(1);
    player.play();
    expect(told.requests[0]?.from).toBe(6 * BAR);
    at(8 * BAR + 10);
    expect([cursor(), store.cell.get().study.nextSymbol]).toEqual([3, 'G7']);
  });

  it('begins at the beginning when the chart has just been typed to its end', () => {
    const { player, store, told } = playing('| Dm7 |');
    store.intents.setProgression(SONG, SONG.length);
    expect(store.cell.get().study.cursor).toBe(3);
    player.play();
    expect(told.requests[0]?.from).toBe(0);
    player.stop();
    store.intents.setProgression(`${SONG} `, SONG.length);
    store.intents.moveCursorTo(2);
    store.intents.moveCursorTo(3);
    player.play();
    expect(told.requests[1]?.from).toBe(3 * BAR);
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

describe('what is shown while it plays', () => {
  it('is during a count what is about to begin, also when it is started over', () => {
    const { player, at, count, frame, cursor, store, told } = playing(
      '|: Dm7 | G7 :| Cmaj7 | A7 |',
    );
    player.play();
    at(5 * BAR);
    expect([cursor(), player.sounding.get().time]).toEqual([3, 0]);
    expect(player.marked.get()).toHaveLength(1);
    player.fromStart();
    const shown = () => [cursor(), store.cell.get().study.nextSymbol];
    expect([told.requests.at(-1)?.from, ...shown()]).toEqual([0, 0, 'G7']);
    // The device is still heard where it was.
    at(5 * BAR + 10);
    count(1);
    frame();
    expect(shown()).toEqual([0, 'G7']);
    expect(player.sounding.get()).toMatchObject({ counting: true, soon: false, time: 1 });
    expect(player.marked.get()).toEqual([]);
  });

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

  it('tells which time a bar is played that a round has more than once', () => {
    const times = (more = {}) => {
      const { player, at } = playing('|: Dm7 | G7 :| Cmaj7 |', more);
      player.play();
      return [0, 1, 2, 3, 4].map((bar) => {
        at(bar * BAR);
        return player.sounding.get().time;
      });
    };
    expect(times()).toEqual([1, 1, 2, 2, 0]);
    expect(times(sound({ loop: { first: 1, last: 2 } }))).toEqual([0, 0, 0, 0, 0]);
  });

  it('marks the tones of the line one by one while they are heard', () => {
    const { player, at, store } = playing('| Bm7 |', { position: 7 });
    const marked = () => player.marked.get().map(({ string, fret }) => `${string}:${fret}`);
    player.play();
    const seen = [0, 480, 960].map((tick) => {
      at(tick);
      return marked();
    });
    expect(seen.map((places) => places.length)).toEqual([1, 1, 1]);
    expect(new Set(seen.flat()).size).toBe(3);
    at(470);
    expect(marked()).toEqual([]);
    store.intents.setPart('line', { mute: true });
    at(960);
    expect(marked()).toEqual([]);
    store.intents.setPart('line', { mute: false });
    at(960);
    player.stop();
    expect(marked()).toEqual([]);
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

  it('loops of what was set the bars that the chart has, also when it changes meanwhile', () => {
    const { player, told, store } = playing(
      '| C | F | G | C |',
      sound({ loop: { first: 2, last: 4 } }),
    );
    player.play();
    store.intents.setProgression('| C | F | G |');
    expect(told.settings.at(-1)?.loop).toEqual({ first: 2, last: 3 });
    store.intents.setProgression('| C |');
    expect(told.settings.at(-1)?.loop).toBeUndefined();
    store.intents.undo();
    store.intents.undo();
    expect(told.settings.at(-1)?.loop).toEqual({ first: 2, last: 4 });
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

  it('what is struck is marked as long as a hand takes to look, tone after tone', async () => {
    const { player, store, wait } = playing('| Bm7 |', { position: 7 });
    const grip = store.cell.get().study.reading?.chosen?.grip?.tones ?? [];
    player.hearChord();
    await Promise.resolve();
    expect(player.marked.get()).toEqual(grip);
    wait(1);
    expect(player.marked.get()).toEqual([]);
    player.hearTones();
    await Promise.resolve();
    const seen = grip.map(() => {
      const places = player.marked.get();
      wait(0.421);
      return places;
    });
    expect(seen.map((places) => places.length)).toEqual(grip.map(() => 1));
    expect(new Set(seen.flat())).toEqual(new Set(grip));
    wait(1);
    expect(player.marked.get()).toEqual([]);
  });

  it.each([
    [1, 120],
    [0.7, 171],
  ])('the tempo is tapped as it is heard, at a share of %d too', (share, tempo) => {
    const { player, store, made } = playing(SONG, sound({ share }));
    for (const seconds of [10, 10.5, 11, 11.5]) {
      made.seconds = seconds;
      player.tap();
    }
    expect(store.cell.get().workspace.sound.transport).toMatchObject({ share, tempo });
    expect(player.sounding.get().tapped).toBe(120);
  });

  it('what was tapped is shown for a few seconds, or until the tempo is changed otherwise', () => {
    const { player, store, wait } = playing(SONG);
    const tapped = () => player.sounding.get().tapped;
    const tap = (): void => {
      player.tap();
      wait(0.5);
    };
    for (let i = 0; i < 4; i += 1) tap();
    wait(3);
    expect(tapped()).toBe(120);
    tap();
    wait(1);
    wait(3);
    expect(tapped()).toBe(0);
    for (let i = 0; i < 4; i += 1) tap();
    expect(tapped()).toBe(120);
    store.intents.setTempo('72');
    expect(tapped()).toBe(0);
  });
});
