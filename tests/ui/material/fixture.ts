import { DEFAULT_WORKSPACE, type Workspace } from '#lesson';
import { type Study, stateOf } from '../../../src/ui/store/index.ts';

/** The study of a progression at its first chord. */
export const study = (
  progression: string,
  position: number,
  more: Partial<Workspace> = {},
): Study => stateOf({ ...DEFAULT_WORKSPACE, progression, position, ...more }).study;

export function first<T>(items: readonly T[]): T {
  const [item] = items;
  if (item === undefined) throw new Error('nothing there');
  return item;
}
