/** What undo took back and redo brought again, in words. */
import { KEPT, type Workspace } from '#lesson';
import { notify } from './state.ts';
import type { AppState } from './types.ts';

type Part = keyof Required<Workspace>;

/** Exhaustive by type: a new part has to say here what it is called. */
const NAMES: Readonly<Record<Part, string>> = {
  progression: 'progression',
  at: 'cursor',
  position: 'hand',
  form: 'form',
  instrument: 'instrument',
  span: 'span of the hand',
  show: 'colour tones',
  key: 'key',
  spelling: 'spelling',
  labels: 'labels',
  spacing: 'spacing of the frets',
  theme: 'colours',
  shortcuts: 'single-key shortcuts',
  route: 'route',
  routeTo: 'where the route goes',
  weights: 'what a route avoids',
  pins: 'pinned forms',
  bendLimits: 'limits of bends',
  ownForms: 'my forms',
  lens: 'study',
  turn: 'turn',
  compare: 'comparison',
  fingering: 'fingering',
  sound: 'sound',
  cautioned: 'caution',
};

const PARTS = Object.keys(NAMES) as Part[];

/** The parts that differ and that undo goes back over; my forms lie on the instrument too. */
function changed(a: Workspace, b: Workspace): readonly Part[] {
  const parts = PARTS.filter((part) => KEPT[part].undo && a[part] !== b[part]);
  return parts.includes('ownForms') ? parts.filter((part) => part !== 'instrument') : parts;
}

/** A turn is looked at and not done: whoever wants it back is told how. */
const ofTurn = ({ turn }: Workspace): string =>
  turn === undefined ? '' : `. The turn into ${turn} stays; Escape turns it back`;

/**
 * The state `after` with a message of what was taken back (or `again`), so that a step from long ago
 * is not taken back unseen.
 */
export function telling(before: AppState, after: AppState, again: boolean): AppState {
  if (after === before) return after;
  const what = changed(before.workspace, after.workspace).map((part) => NAMES[part]);
  const text = `${again ? 'Done again' : 'Undone'}: ${what.join(', ')}`;
  const turn = again ? '' : ofTurn(after.workspace);
  return notify(after, { id: 'undo', tone: 'info', text: text + turn });
}
