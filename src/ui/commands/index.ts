/** What a person can do by key or button, as data. */
export { commandFor, type KeyPress, listenForKeys, pressOf } from './keys.ts';
export { COMMANDS, commandNamed } from './table.ts';
export { type Command, GROUPS, type Group, type Scope } from './types.ts';
