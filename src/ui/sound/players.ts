/** Which player plays for a store, so that commands and views find it. */
import { useSyncExternalStore } from 'react';
import { type StudyStore, useStudyStore } from '../store/index.ts';
import type { Player } from './player.ts';
import { SILENT, type Sounding } from './sounding.ts';

type Maker = (store: StudyStore) => Player;

const players = new WeakMap<StudyStore, Player>();
let maker: Maker | undefined;

/** Says how a player is made; nothing is made until it is asked for. */
export function installPlayers(make: Maker): void {
  maker = make;
}

/** The player of a store; undefined until it is known how one is made. */
export function playerOf(store: StudyStore): Player | undefined {
  const known = players.get(store);
  if (known || !maker) return known;
  const made = maker(store);
  players.set(store, made);
  return made;
}

export const usePlayer = (): Player | undefined => playerOf(useStudyStore());

const never = (): (() => void) => () => undefined;

/** What a component needs to know of the sound; it must pick and not build. */
export function useSounding<T>(select: (sounding: Sounding) => T): T {
  const sounding = usePlayer()?.sounding;
  const now = (): T => select(sounding?.get() ?? SILENT);
  return useSyncExternalStore(sounding?.watch ?? never, now);
}
