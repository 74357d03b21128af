/** The intent that takes an example over. */
import { BEGINNING, EXAMPLES, withoutText } from '#lesson';
import { lookingAt } from './intents-text.ts';
import { patched, step, without } from './state.ts';
import type { AppState } from './types.ts';

/** Puts one of our examples on the neck. An index that does not exist changes nothing. */
export function loadExample(state: AppState, index: number): AppState {
  const example = EXAMPLES[index];
  if (!example) return state;
  const { progression, position } = example;
  const free = without(without(withoutText(state.workspace), 'form'), 'key');
  return step(state, lookingAt(patched(free, { progression, position }), BEGINNING));
}
