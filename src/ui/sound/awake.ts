/** The screen stays on while it plays: a player's hands are full. */
import type { Cell } from '../store/index.ts';
import type { Sounding } from './sounding.ts';

interface Awake {
  asked: boolean;
  lock: WakeLockSentinel | undefined;
}

/** Asks for a lock; a browser that has none, or refuses, lets the screen go dark as ever. */
async function hold(awake: Awake, target: Window): Promise<void> {
  if (awake.asked || target.document.visibilityState !== 'visible') return;
  awake.asked = true;
  try {
    awake.lock = await target.navigator.wakeLock?.request('screen');
    awake.lock?.addEventListener('release', () => {
      awake.asked = false;
    });
  } catch {
    awake.asked = false;
  }
}

function letGo(awake: Awake): void {
  awake.lock?.release().catch(() => undefined);
  awake.lock = undefined;
  awake.asked = false;
}

/** Keeps the screen on while something plays; a lock is lost with a hidden page, and asked for anew. */
export function keepAwake(target: Window, sounding: Cell<Sounding>): () => void {
  const awake: Awake = { asked: false, lock: undefined };
  const look = (): void => {
    if (sounding.get().phase === 'playing') hold(awake, target);
    else letGo(awake);
  };
  const unwatch = sounding.watch((now, before) => {
    if (now.phase !== before.phase) look();
  });
  target.document.addEventListener('visibilitychange', look);
  return () => {
    unwatch();
    target.document.removeEventListener('visibilitychange', look);
    letGo(awake);
  };
}
