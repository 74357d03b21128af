import { DEFAULT_SOUND, type SoundSetup, type Workspace } from '#lesson';
import { barAt } from '#line';
import type { Instrument } from '#neck';
import type { Mix, Performance, Struck, TransportSettings } from '#sound';
import type { Engine, EngineState, Heard, PlayRequest } from '#sound/browser';
import { beatTicks } from '#theory';
import { type Player, type Stage, startPlayer } from '../../../src/ui/sound/player.ts';
import { createStudyStore, type StudyStore } from '../../../src/ui/store/index.ts';
import { workspace } from '../store/fixture.ts';

/** An engine that plays nothing: it is told where the music is, and remembers what it was told. */
export function fakeEngine() {
  const listeners = new Set<() => void>();
  const told = {
    requests: [] as PlayRequest[],
    performances: [] as Performance[],
    settings: [] as TransportSettings[],
    struck: [] as (readonly Struck[])[],
    mix: undefined as Mix | undefined,
    instrument: undefined as Instrument | undefined,
    warmed: 0,
  };
  let state: EngineState = { phase: 'off' };
  let heard: Heard | undefined;
  const become = (next: EngineState): void => {
    state = next;
    for (const listener of listeners) listener();
  };
  const engine: Engine = {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    warm: () => {
      told.warmed += 1;
      return Promise.resolve();
    },
    prepare: () => Promise.resolve(true),
    play: (request) => {
      told.requests.push(request);
      if (state.phase !== 'playing') become({ phase: 'playing' });
      return Promise.resolve(true);
    },
    stop: () => become({ phase: 'ready' }),
    setPerformance: (performance) => told.performances.push(performance),
    setSettings: (settings) => told.settings.push(settings),
    setMix: (mix) => {
      told.mix = mix;
    },
    setInstrument: (instrument) => {
      told.instrument = instrument;
    },
    strike: (notes) => {
      told.struck.push(notes);
      return Promise.resolve(true);
    },
    heard: () => heard,
    close: () => become({ phase: 'off' }),
  };
  const hear = (tick: number, round = 0): void => {
    const { performance } = told.requests.at(-1) ?? {};
    const bar = performance && barAt(performance, tick);
    const beat = bar ? (tick - bar.start) / beatTicks(bar.metre) + 1 : 1;
    heard = { tick, round, counting: false, beat, ...(bar && { bar }) };
  };
  const count = (beat: number): void => {
    heard = { tick: 0, round: -1, counting: true, beat };
  };
  return { engine, told, become, hear, count };
}

/** A stage whose frames come when they are asked for. */
export function fakeStage() {
  let waiting: (() => void) | undefined;
  const made = { seconds: 0, typing: false };
  const timers = new Set<{ readonly at: number; readonly work: () => void }>();
  const stage: Stage = {
    frame: (work) => {
      waiting = work;
      return () => {
        waiting = undefined;
      };
    },
    now: () => made.seconds,
    later: (seconds, work) => {
      const timer = { at: made.seconds + seconds, work };
      timers.add(timer);
      return () => timers.delete(timer);
    },
    typing: () => made.typing,
  };
  const frame = (): boolean => {
    const work = waiting;
    waiting = undefined;
    work?.();
    return work !== undefined;
  };
  /** Lets so many seconds go by. */
  const wait = (seconds: number): void => {
    made.seconds += seconds;
    const due = [...timers].filter(({ at }) => at <= made.seconds).sort((a, b) => a.at - b.at);
    for (const timer of due) {
      timers.delete(timer);
      timer.work();
    }
  };
  return { stage, made, frame, wait };
}

/** A player over a progression, with everything that a test pulls. */
export function playing(progression: string, more: Partial<Workspace> = {}) {
  const store: StudyStore = createStudyStore(workspace(progression, more));
  const fake = fakeEngine();
  const scene = fakeStage();
  const player: Player = startPlayer(store, fake.engine, scene.stage);
  const cursor = (): number => store.cell.get().study.cursor;
  /** The music is at a tick, and a frame is drawn. */
  const at = (tick: number, round = 0): void => {
    fake.hear(tick, round);
    scene.frame();
  };
  return { store, player, cursor, at, ...fake, ...scene };
}

/** Ticks of a bar of 4/4. */
export const BAR = 4 * 960;

/** The sound of a first visit with another transport. */
export const sound = (more: Partial<SoundSetup['transport']>): { readonly sound: SoundSetup } => ({
  sound: { ...DEFAULT_SOUND, transport: { ...DEFAULT_SOUND.transport, ...more } },
});
