/** Which places of the neck are marked because they sound. */
import type { LineNote } from '#line';
import type { Place } from '#neck';
import { type Cell, createCell } from '../store/index.ts';

/** Places that begin to sound together, so many seconds from now. */
export interface StruckGroup {
  readonly places: readonly Place[];
  readonly after: number;
}

/** Calls `work` after so many seconds; gives what calls it off. */
export type Later = (seconds: number, work: () => void) => () => void;

export interface Marking {
  readonly places: Cell<readonly Place[]>;
  /** Marks what a hand has struck, group after group. */
  readonly strike: (groups: readonly StruckGroup[]) => void;
  /** Marks what the music plays now, in place of what it played before. */
  readonly play: (places: readonly Place[]) => void;
}

/** Seconds for which a struck place stays marked. */
const MARK_SECONDS = 0.7;

export const NOTHING: readonly Place[] = [];

/** A marking whose time is kept by `later`. */
export function makeMarking(later: Later): Marking {
  const places = createCell(NOTHING);
  let callOff: readonly (() => void)[] = [];
  let [played, struck] = [NOTHING, NOTHING];
  const show = (): void => {
    const all = struck.length === 0 ? played : [...played, ...struck];
    places.update(() => all);
  };
  const mark = (group: readonly Place[]): void => {
    struck = group;
    show();
  };
  return {
    places,
    strike: (groups) => {
      for (const off of callOff) off();
      const end = Math.max(0, ...groups.map(({ after }) => after)) + MARK_SECONDS;
      callOff = [...groups, { places: NOTHING, after: end }].flatMap((group) => {
        if (group.after > 0) return [later(group.after, () => mark(group.places))];
        mark(group.places);
        return [];
      });
    },
    play: (next) => {
      if (next === played) return;
      played = next;
      show();
    },
  };
}

/** Places of a line that begin together, and until which tick they are marked. */
export interface Sounded {
  readonly from: number;
  readonly to: number;
  readonly places: readonly Place[];
}

/** A mark goes before its note does, so that a tone played twice is marked twice; none is longer than this. */
const MARKED = { share: 0.8, ticks: 900 };

/** A line as what is marked while it sounds, in order of time. */
export function soundedOf(line: readonly LineNote[]): readonly Sounded[] {
  const groups = new Map<number, readonly LineNote[]>();
  for (const note of line) groups.set(note.start, [...(groups.get(note.start) ?? []), note]);
  return [...groups]
    .sort(([a], [b]) => a - b)
    .map(([from, places]) => {
      const length = Math.max(...places.map((note) => note.length));
      return { from, to: from + Math.min(MARKED.share * length, MARKED.ticks), places };
    });
}

/** The places that are marked at a tick. */
export function soundedAt(sounded: readonly Sounded[], tick: number): readonly Place[] {
  const last = sounded.findLast(({ from }) => from <= tick);
  return last !== undefined && tick < last.to ? last.places : NOTHING;
}
