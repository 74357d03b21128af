/** What a command is: a piece of data that buttons, keys and the sheet of keys share. */
import type { AppState, StudyStore } from '../store/index.ts';

export const GROUPS = [
  'Cursor',
  'Hand',
  'Forms',
  'Study',
  'Turns',
  'Route',
  'Sound',
  'View',
  'Work',
] as const;
export type Group = (typeof GROUPS)[number];

/**
 * Where its keys work: `workspace` = unless one types in a field or a dialog is open, `anywhere` =
 * also there.
 */
export type Scope = 'workspace' | 'anywhere';

export interface Command {
  readonly name: string;
  readonly label: string;
  readonly group: Group;
  /** `ArrowRight`, `Shift+ArrowUp`, `Mod+z` (Ctrl, or ⌘), `?`. A single character can be switched off. */
  readonly keys: readonly string[];
  readonly scope: Scope;
  /** Whether a key that is held down performs it again and again. */
  readonly repeats: boolean;
  readonly enabled: (state: AppState) => boolean;
  readonly perform: (store: StudyStore) => void;
}
