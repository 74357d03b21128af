/**
 * Studies made before they are asked for. While nothing else is to be done those of the chords around
 * the cursor are made ready, and those that were shown are kept: a cursor that is moved by a held key,
 * or by music that goes round, then only has to show them.
 */
import type { Workspace } from '#lesson';
import { cellAt, momentOf } from './lane.ts';
import { sameBut, studyOf } from './study.ts';
import type { AppState, LaneCell, Study } from './types.ts';

/** Chords on each side of the cursor that are made ready. */
const REACH = 128;
/** Studies that are kept for a progression under a hand. */
const MOST = 256;

/** By the lane that they are of, which is another one as soon as text or hand changes; then by cell. */
const kept = new WeakMap<readonly LaneCell[], Map<number, Study>>();

/** Whether a study is what `studyOf` would make of a workspace whose cursor is on the same chord. */
const fits = (study: Study | undefined, workspace: Workspace, before: Study): study is Study =>
  study?.nextOf === before.nextOf &&
  study.route === before.route &&
  study.fingered === before.fingered &&
  sameBut(study.of, workspace, 'at');

const keptAt = ({ cells }: Study, index: number): Study | undefined => kept.get(cells)?.get(index);

function keep(study: Study): Study {
  // What stands on the neck while a chord cannot be read depends on what stood there before.
  if (study.standing.kind !== 'chord') return study;
  const studies = kept.get(study.cells) ?? new Map<number, Study>();
  kept.set(study.cells, studies);
  studies.delete(study.cursor);
  studies.set(study.cursor, study);
  const [oldest] = studies.keys();
  if (studies.size > MOST && oldest !== undefined) studies.delete(oldest);
  return study;
}

/** As `studyOf`, from what is ready if it is. */
export function readyStudy(workspace: Workspace, before: Study): Study {
  const found = keptAt(before, cellAt(before.cells, workspace.at));
  if (fits(found, workspace, before)) return { ...found, of: workspace };
  return keep(studyOf(workspace, before));
}

/** The nearest chord to the cursor whose study is not ready, those that follow first; -1 = none. */
function nextUnready({ study, workspace }: AppState): number {
  const { cells, cursor } = study;
  for (let step = 1; step <= 2 * REACH; step++) {
    const index = cursor + (step % 2 === 1 ? (step + 1) / 2 : -step / 2);
    const isChord = cells[index]?.slot.harmony.kind === 'chord';
    if (isChord && !fits(keptAt(study, index), workspace, study)) return index;
  }
  return -1;
}

const listeners = new Set<(study: Study) => void>();

/** Calls back with every study that is made ready. Returns the way to stop. */
export function onReady(listener: (study: Study) => void): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

/** Makes the study of one more chord ready; says whether there was one to make. */
function makeOneReady(state: AppState): boolean {
  const { study, workspace } = state;
  const index = nextUnready(state);
  const cell = study.cells[index];
  if (!cell) return false;
  // Its neighbour has looked at it as the chord that is next.
  const before = keptAt(study, index - 1) ?? study;
  const made = keep(
    studyOf({ ...workspace, at: momentOf(cell) }, fits(before, workspace, study) ? before : study),
  );
  for (const listener of listeners) listener(made);
  return true;
}

/** Studies that are made at a time: some milliseconds, in which a key that is pressed has to wait. */
const AT_ONCE = 4;

/** Makes the studies of some more chords ready; says whether there may be more to make. */
export function makeReady(state: AppState): boolean {
  for (let made = 0; made < AT_ONCE; made++) if (!makeOneReady(state)) return false;
  return true;
}
