/** Intents that change what is shown and how. */
import type { Labels, Spacing, Spelling, Theme } from '#lesson';
import { type Degree, sameDegree } from '#theory';
import { patched, step } from './state.ts';
import type { AppState, Panel } from './types.ts';

/** Switches a colour degree on, or off if it is on. */
export function toggleColour(state: AppState, degree: Degree): AppState {
  const { show } = state.workspace;
  const kept = show.filter((d) => !sameDegree(d, degree));
  const next = kept.length < show.length ? kept : [...show, degree];
  return step(state, { ...state.workspace, show: next });
}

/** What stands in the tones: degrees, notes, fingers or nothing. */
export const setLabels = (state: AppState, labels: Labels): AppState =>
  step(state, patched(state.workspace, { labels }), 'labels');

/** Frets at their true distances, or evenly spaced. */
export const setSpacing = (state: AppState, spacing: Spacing): AppState =>
  step(state, patched(state.workspace, { spacing }), 'spacing');

export const setTheme = (state: AppState, theme: Theme): AppState =>
  step(state, patched(state.workspace, { theme }), 'theme');

/** Letter by letter (B♭♭), or the simplest name (A). */
export const setSpelling = (state: AppState, spelling: Spelling): AppState =>
  step(state, patched(state.workspace, { spelling }), 'spelling');

/** Single-character shortcuts on or off. */
export const setShortcuts = (state: AppState, shortcuts: boolean): AppState =>
  step(state, patched(state.workspace, { shortcuts }));

/** Opens a panel over the workspace, or closes it (`undefined`). No step of undo. */
export function openPanel(state: AppState, panel: Panel | undefined): AppState {
  if (state.panel === panel) return state;
  const { panel: _closed, ...rest } = state;
  return panel === undefined ? rest : { ...rest, panel };
}
