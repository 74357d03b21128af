/** Where each part of a workspace is kept. */
import type { Workspace } from './types.ts';

/** The keys of the address, in the order in which they are understood and written. */
export const ADDRESS_KEYS = [
  'progression',
  'at',
  'position',
  'form',
  'tuning',
  'frets',
  'hand',
  'show',
  'route',
] as const;
export type AddressKey = (typeof ADDRESS_KEYS)[number];

/** What outlives what: the closed browser, the copied link, the taken-back step. */
export interface Keeping {
  readonly storage: boolean;
  readonly address: readonly AddressKey[];
  readonly undo: boolean;
}

const here: Keeping = { storage: true, address: [], undo: true };
/** Undo goes back over what was done, not over where one looked. */
const looked: Keeping = { ...here, undo: false };

/** Exhaustive by type: a new part of the workspace has to say here where it is kept. */
export const KEPT: { readonly [Part in keyof Required<Workspace>]: Keeping } = {
  progression: { ...here, address: ['progression'] },
  at: { ...looked, address: ['at'] },
  position: { ...here, address: ['position'] },
  form: { ...here, address: ['form'] },
  instrument: { ...here, address: ['tuning', 'frets', 'hand'] },
  span: here,
  show: { ...here, address: ['show'] },
  key: here,
  spelling: here,
  labels: here,
  spacing: here,
  theme: here,
  shortcuts: here,
  route: { ...here, address: ['route'] },
  routeTo: here,
  weights: here,
  pins: here,
  bendLimits: here,
  ownForms: here,
  lens: looked,
  turn: looked,
  compare: looked,
  fingering: here,
  sound: here,
  cautioned: looked,
};

const PARTS = Object.keys(KEPT) as (keyof Workspace)[];

const sameValue = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Whether two workspaces are alike in everything that undo goes back over (so: not the cursor or a lens). */
export const sameWork = (a: Workspace, b: Workspace): boolean =>
  PARTS.every((part) => !KEPT[part].undo || a[part] === b[part] || sameValue(a[part], b[part]));

/** What undo gives: `past`, with everything that undo does not go back over as it is at `present`. */
export function returnedTo(past: Workspace, present: Workspace): Workspace {
  const stays = PARTS.filter((part) => !KEPT[part].undo && past[part] !== present[part]);
  if (stays.length === 0) return past;
  const { turn: _turn, compare: _compare, ...rest } = past;
  const looked = PARTS.filter((part) => !KEPT[part].undo && present[part] !== undefined);
  return { ...rest, ...Object.fromEntries(looked.map((part) => [part, present[part]])) };
}
