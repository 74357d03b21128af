/** The commands that are there: those of the first view, and from their arrival on the others. */
import type { AppState } from '../store/index.ts';
import { FIRST_COMMANDS } from './table.ts';
import type { Command } from './types.ts';

const byKeyOf = (commands: readonly Command[]): Keys =>
  new Map(commands.flatMap((one) => one.keys.map((key) => [key, one] as const)));

let known = FIRST_COMMANDS;
let byKey = byKeyOf(known);

/** The command that a key means as things stand, out of those that claim a key. */
export type Meaning = (key: string, state: AppState, byKey: Keys) => Command | undefined;
export type Keys = ReadonlyMap<string, Command>;

let meaning: Meaning = (key, _state, keys) => keys.get(key);

/** Puts in the commands that were fetched later, and what their keys mean. */
export function installCommands(later: readonly Command[], means: Meaning): void {
  known = [...FIRST_COMMANDS, ...later];
  byKey = byKeyOf(known);
  meaning = means;
}

export const hasAllCommands = (): boolean => known !== FIRST_COMMANDS;

export const commandMeant = (key: string, state: AppState): Command | undefined =>
  meaning(key, state, byKey);

/** A command by its name. Throws for a name that no command has. */
export function commandNamed(name: string): Command {
  const found = known.find((one) => one.name === name);
  if (!found) throw new Error(`no command is named ${name}`);
  return found;
}
