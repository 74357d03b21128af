import { memo, type RefObject, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { useSize } from '../neck/size.ts';
import { type LaneCell, useStudy } from '../store/index.ts';
import { PlacedCell } from './Cell.tsx';
import {
  columnsFor,
  type LaneBar,
  type LaneChord,
  type LaneRow,
  laneRows,
  longestRow,
  TIGHT,
} from './rows.ts';

/** A bar in which nothing new is typed at the start: the chord before it goes on. */
function Held({ bar }: { readonly bar: LaneBar }) {
  if (bar.held === 0 || bar.same) return null;
  return <span className="held">∕</span>;
}

function barClass(bar: LaneBar): string {
  const opens = bar.opensRepeat ? ' opens-repeat' : '';
  const closes = bar.closesRepeat === undefined ? '' : ' closes-repeat';
  return `bar${opens}${closes}${bar.ending === undefined ? '' : ' ending'}`;
}

function BarHead({
  bar,
  section,
}: {
  readonly bar: LaneBar;
  readonly section: string | undefined;
}) {
  const { metre, ending, same, closesRepeat = 2 } = bar;
  return (
    <div className="bar-head">
      <span className="bar-number">{bar.number}</span>
      {section !== undefined && <h2 className="section-name">{section}</h2>}
      {metre && (
        <span className="metre">
          {metre.beats}/{metre.unit}
        </span>
      )}
      {ending && <span className="ending-name">{ending.join(', ')}.</span>}
      {same && <span title="as the bar before">%</span>}
      {closesRepeat > 2 && <span className="times">{closesRepeat}×</span>}
    </div>
  );
}

/** What the cells of a part of the lane show. */
interface Shown {
  readonly cells: readonly LaneCell[];
  /** Index of the cell under the cursor; -1 if it is not in this part. */
  readonly cursor: number;
  /** Where forms were set by hand for the route. */
  readonly pins: ReadonlySet<string>;
}

/** `cursor` if it is in a bar, else -1: what it does elsewhere renders nothing again. */
const cursorIn = ({ chords }: LaneBar, cursor: number): number =>
  chords.some(({ index }) => index === cursor) ? cursor : -1;

interface BarProps extends Shown {
  readonly bar: LaneBar;
  readonly section: string | undefined;
  /** Share of the row, in percent. */
  readonly width: number;
  readonly ems: number;
}

function Chords({ bar, ems, cells, cursor, pins }: BarProps) {
  return bar.chords.flatMap((placed) => {
    const cell = cells[placed.index];
    if (cell === undefined) return [];
    return [
      <PlacedCell
        key={placed.index}
        placed={placed}
        cell={cell}
        current={placed.index === cursor}
        pinned={pins.has(cell.at)}
        tight={placed.length * ems < TIGHT}
      />,
    ];
  });
}

const LaneBarView = memo(function LaneBarView(props: BarProps) {
  const { bar, section, width } = props;
  return (
    <div
      className={barClass(bar)}
      style={{ width: `${width}%`, backgroundSize: `${100 / bar.beats}% 0.3rem` }}
    >
      <BarHead bar={bar} section={section} />
      {bar.closesRepeat !== undefined && <span className="repeat-dots closing" />}
      <Held bar={bar} />
      {bar.opensRepeat && <span className="repeat-dots opening" />}
      <Chords {...props} />
    </div>
  );
});

interface RowProps extends Shown {
  readonly row: LaneRow;
  readonly quarters: number;
  readonly ems: number;
}

const Row = memo(function Row({ row, quarters, ems, cells, cursor, pins }: RowProps) {
  return (
    <div className="row">
      {row.bars.map((bar, i) => (
        <LaneBarView
          key={bar.number}
          bar={bar}
          section={i === 0 ? row.section : undefined}
          width={(bar.quarters / quarters) * 100}
          ems={(bar.quarters / quarters) * ems}
          cells={cells}
          cursor={cursorIn(bar, cursor)}
          pins={pins}
        />
      ))}
    </div>
  );
});

/** Brings a row of the lane into view without moving the page. */
function scrollTo(lane: HTMLElement, row: HTMLElement): void {
  const { offsetTop: top, offsetHeight: height } = row;
  const { scrollTop, clientHeight } = lane;
  // A page at a time: what comes next is seen, and most moves of the cursor scroll nothing.
  if (top < scrollTop) lane.scrollTop = top + height - clientHeight;
  else if (top + height > scrollTop + clientHeight) lane.scrollTop = top;
}

const currentCell = (lane: HTMLElement | null): HTMLElement | null | undefined =>
  lane?.querySelector<HTMLElement>('[aria-current="true"]');

/** Index of the row that a cell stands in, or -1. */
const rowOf = (rows: readonly LaneRow[], cell: number): number =>
  rows.findIndex(({ bars }) => bars.some((bar) => cursorIn(bar, cell) >= 0));

const isCell = (element: Element | null): boolean => element?.matches('[data-chord-cell]') === true;

/** Keeps the row with an index in view. */
function useRowInView(
  ref: RefObject<HTMLElement | null>,
  rows: readonly LaneRow[],
  at: number,
): void {
  useLayoutEffect(() => {
    const row = rows.length > 0 ? ref.current?.children[at] : undefined;
    if (ref.current !== null && row instanceof HTMLElement) scrollTo(ref.current, row);
  }, [ref, at, rows]);
}

/** Milliseconds that the cursor rests before the focus comes after it. */
const REST = 80;

/**
 * Takes the focus along when it is in the lane. It follows when the cursor rests: while a key is
 * held down, moving it thirty times a second would cost frames and tell nobody anything. It stays
 * where it is while music plays: every chord that takes the focus is spoken over the music.
 */
function useFocusAtCursor(ref: RefObject<HTMLElement | null>): void {
  const cursor = useStudy(({ study }) => study.cursor);
  const playing = useStudy((state) => state.playing);
  // No passive effect: those are a task of their own after every move.
  useLayoutEffect(() => {
    if (playing || cursor < 0 || !isCell(document.activeElement)) return undefined;
    const follow = () => {
      if (isCell(document.activeElement)) currentCell(ref.current)?.focus({ preventScroll: true });
    };
    const timer = setTimeout(follow, REST);
    return () => clearTimeout(timer);
  }, [ref, cursor, playing]);
}

/** Share of a row in sight from which on it counts as seen. */
const MOSTLY = 0.8;

const sameSlots = (a: readonly LaneChord[], b: readonly LaneChord[]): boolean =>
  a.length === b.length && a.every(({ slot }, i) => slot === b[i]?.slot);

/** The chords as far as the rows depend on them: a hand that moves gives new forms, not new rows. */
function useChords(): readonly LaneChord[] {
  const cells = useStudy(({ study }) => study.cells);
  const before = useRef<readonly LaneChord[]>(cells);
  const chords = sameSlots(before.current, cells) ? before.current : cells;
  useLayoutEffect(() => {
    before.current = chords;
  }, [chords]);
  return chords;
}

/** Which ends of the lane lie out of sight, watched without measuring. */
function useMore(ref: RefObject<HTMLElement | null>, rows: readonly LaneRow[]): string {
  const [hidden, setHidden] = useState('');
  useEffect(() => {
    const lane = ref.current;
    const ends = [lane?.firstElementChild, lane?.lastElementChild];
    if (lane === null || rows.length < 2) return setHidden('');
    const out = ends.map(() => false);
    const observer = new IntersectionObserver(
      (entries) => {
        for (const { target, intersectionRatio } of entries)
          out[ends.indexOf(target)] = intersectionRatio < MOSTLY;
        setHidden(['above', 'below'].filter((_, i) => out[i]).join(' '));
      },
      { root: lane, threshold: MOSTLY },
    );
    for (const end of ends) if (end) observer.observe(end);
    return () => observer.disconnect();
  }, [ref, rows]);
  return hidden;
}

const NO_PINS: ReadonlySet<string> = new Set();

function usePins(): ReadonlySet<string> {
  const pins = useStudy(({ workspace }) => workspace.pins);
  const route = useStudy(({ workspace }) => workspace.route);
  return useMemo(
    () => (route === undefined ? NO_PINS : new Set(pins.map(({ at }) => at))),
    [pins, route],
  );
}

/** The progression as bars to scale; the cursor stands on one of its chords. */
export function Lane() {
  const chart = useStudy(({ study }) => study.chart);
  const cells = useStudy(({ study }) => study.cells);
  const cursor = useStudy(({ study }) => study.cursor);
  const pins = usePins();
  const chords = useChords();
  const [ref, size] = useSize<HTMLElement>();
  const ems = size === undefined ? 60 : size.width / size.em;
  const rows = useMemo(
    () => laneRows(chart, chords, columnsFor(chart, chords, ems)),
    [chart, chords, ems],
  );
  const quarters = longestRow(rows);
  const at = useMemo(() => rowOf(rows, cursor), [rows, cursor]);
  useRowInView(ref, rows, at);
  useFocusAtCursor(ref);
  const more = useMore(ref, rows);
  return (
    <div className="lane-frame" data-more={more}>
      <section ref={ref} className="lane" aria-label="Chords" tabIndex={-1}>
        {rows.map((row, i) => (
          <Row
            key={row.bars[0]?.number}
            row={row}
            quarters={quarters}
            ems={ems}
            cells={cells}
            cursor={i === at ? cursor : -1}
            pins={pins}
          />
        ))}
      </section>
      {more.includes('below') && (
        <p className="lane-more" aria-hidden="true">
          more bars below
        </p>
      )}
    </div>
  );
}
