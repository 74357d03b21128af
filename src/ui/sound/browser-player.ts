/** The player of a page that is open in a browser. */
import { browserEngine } from '#sound/browser';
import type { StudyStore } from '../store/index.ts';
import { keepAwake } from './awake.ts';
import { type Player, type Stage, startPlayer } from './player.ts';
import { hearTouches } from './touch.ts';

const stageOf = (target: Window): Stage => ({
  frame: (work) => {
    const id = target.requestAnimationFrame(work);
    return () => target.cancelAnimationFrame(id);
  },
  now: () => target.performance.now() / 1000,
  later: (seconds, work) => {
    const id = target.setTimeout(work, seconds * 1000);
    return () => target.clearTimeout(id);
  },
  typing: () => target.document.activeElement?.matches('textarea, input') === true,
});

const FIRST_TOUCHES = ['pointerdown', 'keydown'] as const;

/** Opens the device with the first key or click, so that the first sound need not wait for it. */
function warmUp(target: Window, { engine }: Player): void {
  const once = (): void => {
    for (const touch of FIRST_TOUCHES) target.removeEventListener(touch, once);
    engine.warm();
  };
  for (const touch of FIRST_TOUCHES) target.addEventListener(touch, once, { passive: true });
}

/** Plays on the browser's sound device, hears what is touched, keeps the screen awake. */
export function browserPlayer(store: StudyStore): Player {
  const { sound, instrument } = store.cell.get().workspace;
  const player = startPlayer(store, browserEngine(instrument, sound.mix), stageOf(window));
  warmUp(window, player);
  hearTouches(document, store, player);
  keepAwake(window, player.sounding);
  return player;
}
