/** What a person can do by key or button, as data. */
export { COMMANDS, installAllCommands } from './all.ts';
export { commandFor, type KeyPress, listenForKeys, pressOf } from './keys.ts';
export { commandNamed } from './known.ts';
export { practiceKeys } from './practice.ts';
export { type Command, GROUPS, type Group, type Scope } from './types.ts';
