/** How most commands are made. */
import type { AppState, Intents, StudyStore } from '../store/index.ts';
import type { Command, Group } from './types.ts';

export type Perform = (intents: Intents, state: AppState) => void;

const always = (): boolean => true;

/** The usual case: it works outside fields, at once or not at all. */
export function command(
  group: Group,
  name: string,
  label: string,
  keys: readonly string[],
  perform: Perform,
): Command {
  const run = ({ intents, cell }: StudyStore) => perform(intents, cell.get());
  const usual = { scope: 'workspace', repeats: false, enabled: always } as const;
  return { name, label, group, keys, ...usual, perform: run };
}

/** The value after another one, and the first after the last. */
export function following<T>(values: readonly [T, ...T[]], value: T): T {
  return values[(values.indexOf(value) + 1) % values.length] ?? values[0];
}
