/** Intents that move the hand. */
import type { Workspace } from '#lesson';
import { patched, step } from './state.ts';
import type { AppState } from './types.ts';

/** Between the first fret that is not behind the capo and the last. */
export const within = ({ instrument: { capo, frets } }: Workspace, fret: number): number =>
  Math.max(capo + 1, Math.min(frets, Math.round(fret) || 1));

/** Puts the index finger at a fret, between nut or capo and the last fret. Moves in a row are one step of undo. */
export function setPosition(state: AppState, fret: number): AppState {
  const position = within(state.workspace, fret);
  return step(state, patched(state.workspace, { position }), 'position');
}

/** Moves the hand by frets; at an end it stays. */
export const stepPosition = (state: AppState, by: number): AppState =>
  setPosition(state, state.workspace.position + by);
