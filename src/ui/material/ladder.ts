/** The way of a route as a ladder: one rung for each chord, over the frets that the hand is on. */
import type { Stop } from '#neck';
import { fretRange, type NeckLayout } from '../neck/layout.ts';

export interface Rung {
  readonly step: number;
  /** From the left, and down. */
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly form: string;
  /** Fret under the index finger. */
  readonly position: number;
}

export interface Ladder {
  readonly rungs: readonly Rung[];
  /** Path data of the line from rung to rung. */
  readonly path: string;
  readonly height: number;
  /** There is room for the name of the form beside each rung. */
  readonly lettered: boolean;
  /** Depth of one rung. */
  readonly pitch: number;
}

const FRETS_UNDER_HAND = 4;
/** Ems: the depth of all rungs together (under an upright neck there is less room), and of one at most and at least, and to have its form beside it. */
const DEPTH = { all: 6, upright: 4, most: 0.85, least: 0.16, lettered: 0.7 };

/** Where a length along the neck lies across the sheet; an upright neck is laid down for it. */
export function acrossSheet(layout: NeckLayout, along: number, width: number): number {
  const whole = layout.spec.upright ? layout.height : layout.width;
  const share = along / whole;
  return Math.round((layout.spec.leftHanded ? 1 - share : share) * width * 10) / 10;
}

/** Pixels kept free for the ladder, so that choosing a route moves nothing that stands below it. */
export const ladderRoom = ({ em, spec }: NeckLayout): number =>
  (spec.upright ? DEPTH.upright : DEPTH.all) * em;

/** Every step that has a stop, as a rung. `width` is that of the sheet. */
export function ladderOf(
  stops: readonly (Stop | undefined)[],
  layout: NeckLayout,
  width: number,
): Ladder {
  const { em } = layout;
  const count = Math.max(1, stops.length);
  const room = ladderRoom(layout);
  const pitch = Math.max(DEPTH.least * em, Math.min(DEPTH.most * em, room / count));
  const rungs = stops.flatMap((stop, step): readonly Rung[] => {
    if (!stop) return [];
    const hand = fretRange(layout, stop.position, stop.position + FRETS_UNDER_HAND - 1);
    const ends = [acrossSheet(layout, hand.from, width), acrossSheet(layout, hand.to, width)];
    const y = Math.round((step + 0.5) * pitch * 10) / 10;
    return [
      {
        step,
        from: Math.min(...ends),
        to: Math.max(...ends),
        y,
        form: stop.form.name,
        position: stop.position,
      },
    ];
  });
  const path = rungs
    .map(({ from, to, y }, i) => `${i === 0 ? 'M' : 'L'}${Math.round((from + to) * 5) / 10} ${y}`)
    .join('');
  return {
    rungs,
    path,
    pitch,
    lettered: pitch >= DEPTH.lettered * em,
    height: Math.ceil(layout.spec.upright ? count * pitch : Math.max(room, count * pitch)),
  };
}

/** Ems between two names beside rungs, at least. */
const NAME_ROOM = 0.85;

/** The rungs beside which a name has room: where the hand comes to another position. */
export function namedRungs({ rungs }: Ladder, em: number): readonly Rung[] {
  const named: Rung[] = [];
  for (const [i, rung] of rungs.entries()) {
    const last = named.at(-1);
    const moved = rungs[i - 1]?.position !== rung.position;
    if (moved && (!last || rung.y - last.y >= NAME_ROOM * em)) named.push(rung);
  }
  return named;
}

/** The step whose rung is nearest to a depth. */
export const stepAtDepth = ({ pitch }: Ladder, y: number, steps: number): number =>
  Math.min(steps - 1, Math.max(0, Math.floor(y / pitch)));
