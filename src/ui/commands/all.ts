/** Every command, in the order of the sheet of keys. */
import { installCommands } from './known.ts';
import { meantBy } from './practice.ts';
import { FIRST_COMMANDS } from './table.ts';
import { LENS_COMMANDS, ROUTE_COMMANDS, TURN_COMMANDS } from './table-material.ts';
import { SOUND_COMMANDS } from './table-sound.ts';
import { type Command, GROUPS } from './types.ts';

const LATER: readonly Command[] = [
  ...LENS_COMMANDS,
  ...TURN_COMMANDS,
  ...ROUTE_COMMANDS,
  ...SOUND_COMMANDS,
];

export const COMMANDS: readonly Command[] = GROUPS.flatMap((group) =>
  [...FIRST_COMMANDS, ...LATER].filter((one) => one.group === group),
);

/** Puts in what the first view could do without: lenses, turned forms, routes, sound. */
export const installAllCommands = (): void => installCommands(LATER, meantBy);
