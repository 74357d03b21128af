/** The commands that are there: those of the first view, and from their arrival on the others. */
import { FIRST_COMMANDS } from './table.ts';
import type { Command } from './types.ts';

const byKeyOf = (commands: readonly Command[]): ReadonlyMap<string, Command> =>
  new Map(commands.flatMap((one) => one.keys.map((key) => [key, one] as const)));

let known = FIRST_COMMANDS;
let byKey = byKeyOf(known);

/** Puts in the commands that were fetched later. */
export function installCommands(later: readonly Command[]): void {
  known = [...FIRST_COMMANDS, ...later];
  byKey = byKeyOf(known);
}

export const hasAllCommands = (): boolean => known !== FIRST_COMMANDS;

export const commandByKey = (key: string): Command | undefined => byKey.get(key);

/** A command by its name. Throws for a name that no command has. */
export function commandNamed(name: string): Command {
  const found = known.find((one) => one.name === name);
  if (!found) throw new Error(`no command is named ${name}`);
  return found;
}
