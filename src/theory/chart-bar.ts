/** Shares a bar among the chords and beats that are written in it. */
import { barTicks, beatTicks, evenStart, ticks } from './chart-time.ts';
import type { Harmony, Metre, Slot, TextSpan, Ticks } from './types.ts';

/** What stands at one place of a written bar. */
export type Unit =
  | {
      readonly kind: 'harmony';
      readonly harmony: Harmony;
      readonly symbol: string;
      readonly span: TextSpan;
      /** Written as `%`: the chord before once more, or alone in its bar the bar before. */
      readonly same: boolean;
    }
  /** A lone `/`: one beat more of the harmony before. */
  | { readonly kind: 'beat'; readonly span: TextSpan };

/** More chords and slashes than this go on in the next bar. */
export const MOST_UNITS = 64;

/** A slash at the very start of a chart, where there is nothing to go on with. */
export const isLostBeat = (slot: Pick<Slot, 'harmony' | 'symbol'>): boolean =>
  slot.harmony.kind === 'unread' && slot.symbol === '/';

const hasBeats = (units: readonly Unit[]): boolean =>
  units.some((unit) => unit.kind === 'beat' || isLostBeat(unit));

/** Whether slashes ask for more beats than the metre has. */
export const isOverfull = (units: readonly Unit[], metre: Metre): boolean =>
  hasBeats(units) && units.length > metre.beats;

function startsOf(units: readonly Unit[], metre: Metre): readonly Ticks[] {
  const counted = hasBeats(units) && units.length <= metre.beats;
  return units.map((_, i) =>
    counted ? ticks(i * beatTicks(metre)) : evenStart(i, units.length, metre),
  );
}

const spanning = (a: TextSpan, b: TextSpan): TextSpan => ({
  at: a.at,
  length: b.at + b.length - a.at,
});

type Draft = Omit<Slot, 'length'>;

/** The beats at the start of a bar are the first slot, which holds `before`. */
function draftsOf(
  units: readonly Unit[],
  metre: Metre,
  before: Slot | undefined,
): readonly Draft[] {
  const starts = startsOf(units, metre);
  const drafts: Draft[] = [];
  for (const [i, unit] of units.entries()) {
    const start = starts[i] ?? ticks(0);
    const first = drafts[0];
    if (unit.kind === 'harmony') {
      const { harmony, symbol, span, same } = unit;
      drafts.push({ harmony, symbol, span, held: same, start });
    } else if (first === undefined && before !== undefined) {
      drafts.push({ ...before, held: true, span: unit.span, start });
    } else if (first !== undefined && drafts.length === 1 && units[0]?.kind === 'beat') {
      drafts[0] = { ...first, span: spanning(first.span, unit.span) };
    }
  }
  return drafts;
}

/**
 * The slots of a bar; `before` is the slot that a slash at its start goes on with. Without slashes its chords share it evenly, starts rounded to the tick. With
 * slashes each chord and slash is a beat and the last holds to the end, unless they are more than
 * the metre's beats: then all share evenly.
 */
export function laySlots(
  units: readonly Unit[],
  metre: Metre,
  before: Slot | undefined,
): readonly Slot[] {
  const drafts = draftsOf(units, metre, before);
  return drafts.map((draft, i) => {
    const end = drafts[i + 1]?.start ?? barTicks(metre);
    return { ...draft, length: ticks(end - draft.start) };
  });
}

const sameHarmony = (a: Slot, b: Slot): boolean => a.symbol === b.symbol && a.harmony === b.harmony;

/** The slots of a bar written as `%`: those of the bar before, in the same proportions. */
export function copySlots(
  slots: readonly Slot[],
  from: Metre,
  to: Metre,
  span: TextSpan,
): readonly Slot[] {
  const scaled = (at: number): number => Math.round((at * barTicks(to)) / barTicks(from));
  const last = slots.at(-1);
  return slots.map((slot, i) => {
    const start = scaled(slot.start);
    const held = i === 0 && last !== undefined && sameHarmony(slot, last);
    const length = ticks(scaled(slot.start + slot.length) - start);
    return { ...slot, span, held, start: ticks(start), length };
  });
}
