/** A backing from a chart alone. */
import { type LineNote, type Played, type PlayedBar, playedOf } from '#line';
import type { Grip, Instrument, Place } from '#neck';
import { barTicks, beatTicks, type Chart, type Chord, type Metre, ticks } from '#theory';
import { bassEvents } from './bass.ts';
import { compEvents, type Holding } from './comp.ts';
import type { DrumName } from './drums.ts';
import { FEEL_ROWS, type Feel } from './feels.ts';
import { groupsIn, pulsesOf, type Stroke, strokesOf } from './groups.ts';
import { type HitEvent, lineEvents, type Performance } from './performance.ts';
import type { LoopBars } from './setup.ts';
import type { FeelName } from './types.ts';
import { voicingOf } from './voicing.ts';

const FORCES: Readonly<Record<string, number>> = { X: 0.9, x: 0.65, o: 0.4 };

const hit = (at: number, drum: DrumName, force: number): HitEvent => ({
  kind: 'hit',
  start: ticks(Math.round(at)),
  drum,
  force,
});

const hits = (strokes: readonly Stroke[], drum: DrumName): readonly HitEvent[] =>
  strokes.map(({ at, sign }) => hit(at, drum, FORCES[sign] ?? 0.5));

/** The drums of one bar. */
function drumsIn(feel: Feel, bar: PlayedBar): readonly HitEvent[] {
  const groups = groupsIn(feel, bar);
  return [
    ...hits(strokesOf(groups, 'kick'), 'kick'),
    ...hits(strokesOf(groups, 'back'), feel.back),
    ...hits(strokesOf(groups, 'top'), feel.top),
  ].sort((a, b) => a.start - b.start);
}

/** The first beat of a bar, its other beats, and the beats within a group of twos or threes. */
const CLICKS = { first: 0.9, beat: 0.7, within: 0.3 } as const;

/** The click of a bar of a metre that begins at a tick. */
function clicksOf(metre: Metre, start: number): readonly HitEvent[] {
  const beat = beatTicks(metre);
  let at = start;
  return pulsesOf(metre).flatMap((beats, i) =>
    Array.from({ length: beats }, (_, k) => {
      const begins = k === 0 ? CLICKS.beat : CLICKS.within;
      const isFirst = i === 0 && k === 0;
      const made = hit(at, isFirst ? 'accent' : 'click', isFirst ? CLICKS.first : begins);
      at += beat;
      return made;
    }),
  );
}

/** So many bars of a metre, clicked before the music begins. */
export function countIn(metre: Metre, bars: number): Performance['parts']['count'] {
  return Array.from({ length: bars }, (_, i) => clicksOf(metre, i * barTicks(metre))).flat();
}

/** What a backing is made from. */
export interface BackingQuery {
  readonly chart: Chart;
  readonly instrument: Instrument;
  readonly feel: FeelName;
  /** Bars to be looped: appended where the chart does not play them in a row. */
  readonly loop?: LoopBars;
  /** The grip planned for a written slot, by its index in `slotsOf`; absent = one near the middle of the neck. */
  readonly gripAt?: (index: number) => Grip | undefined;
  /** What is studied over it. */
  readonly line?: readonly LineNote[];
}

/** What is held for each chord, looked up once for each written slot. */
function holdingOf({ instrument, gripAt }: BackingQuery): Holding {
  const known = new Map<number, readonly Place[]>();
  return (index: number, chord: Chord) => {
    const held = known.get(index) ?? gripAt?.(index)?.tones ?? voicingOf(chord, instrument);
    known.set(index, held);
    return held;
  };
}

function partsOf(query: BackingQuery, { bars, slots }: Played): Performance['parts'] {
  const feel = FEEL_ROWS[query.feel];
  const { instrument } = query;
  const groups = bars.map((bar) => groupsIn(feel, bar));
  const rows = (row: 'comp' | 'bass') => groups.map((one) => strokesOf(one, row));
  const how = { instrument, holding: holdingOf(query), spread: feel.spread };
  return {
    line: lineEvents(query.line ?? [], instrument),
    comp: compEvents(slots, rows('comp'), how),
    bass: bassEvents(slots, rows('bass')),
    drums: bars.flatMap((bar) => drumsIn(feel, bar)),
    click: bars.flatMap(({ metre, start }) => clicksOf(metre, start)),
    count: [],
  };
}

/** Every part of a chart as it is played: repeats, endings, metres, slash basses and N.C. included. */
export function makePerformance(query: BackingQuery): Performance {
  const played = playedOf(query.chart, query.loop);
  return { bars: played.bars, length: played.length, parts: partsOf(query, played) };
}
