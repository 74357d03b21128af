/** Intents that change what is looked at: lenses, turned forms, comparisons. Never a step of undo. */
import type { Comparison, Lens } from '#lesson';
import { formsOf, TURNS } from '#neck';
import { parseChord } from '#theory';
import { stopPlanning } from './intents-route.ts';
import { accept, glance, patched, refuse, without } from './state.ts';
import type { AppState } from './types.ts';

/** Draws something over the neck, or nothing (`none`). */
export const setLens = (state: AppState, lens: Lens): AppState =>
  glance(state, patched(state.workspace, { lens }));

/**
 * Turns the form under the cursor into another quality, by the name of a row of `TURNS`; again, or
 * `undefined`, turns it back. Where nothing is drawn over the neck, the moves are.
 */
export function turnForm(state: AppState, name: string | undefined): AppState {
  const { workspace } = state;
  const exists = TURNS.some((turn) => turn.name === name);
  if (name === undefined || name === workspace.turn) {
    return glance(state, without(workspace, 'turn'));
  }
  if (!exists) return state;
  const lens = workspace.lens === 'none' ? 'turn' : workspace.lens;
  return glance(state, patched(workspace, { turn: name, lens }));
}

const sameComparison = (a: Comparison, b: Comparison | undefined): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

function compareWith(state: AppState, comparison: Comparison): AppState {
  const { workspace } = state;
  const same = sameComparison(comparison, workspace.compare);
  const compare = same ? (workspace.compare ?? comparison) : comparison;
  return glance(accept(state, 'compare'), patched(workspace, { compare, lens: 'compare' }));
}

/** Lays the same chord in another form beside the reading. */
export function compareWithForm(state: AppState, form: string): AppState {
  const names = formsOf(state.workspace.instrument).map(({ name }) => name);
  return names.includes(form)
    ? compareWith(state, { kind: 'form', form })
    : refuse(state, 'compare', `“${form}”: expected ${names.join(', ')}`);
}

/** Lays another chord beside the reading, as typed. */
export function compareWithChord(state: AppState, text: string): AppState {
  const symbol = text.trim();
  const chord = parseChord(symbol);
  return chord.ok
    ? compareWith(state, { kind: 'chord', symbol })
    : refuse(state, 'compare', `“${symbol}”: expected ${chord.error.expected.join(' or ')}`);
}

/** Takes away what lies beside the reading. */
export function stopComparing(state: AppState): AppState {
  const { workspace } = state;
  const lens = workspace.lens === 'compare' ? 'none' : workspace.lens;
  return glance(accept(state, 'compare'), patched(without(workspace, 'compare'), { lens }));
}

/** One step back to the plain reading: stops planning, turns back, ends comparing, takes the lens off. */
export function leave(state: AppState): AppState {
  const { workspace, study } = state;
  if (study.route?.plan) return stopPlanning(state);
  if (workspace.turn !== undefined) {
    const lens = workspace.lens === 'turn' ? 'none' : workspace.lens;
    return glance(state, patched(without(workspace, 'turn'), { lens }));
  }
  return workspace.compare ? stopComparing(state) : setLens(state, 'none');
}
