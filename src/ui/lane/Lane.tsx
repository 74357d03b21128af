import {
  type CSSProperties,
  memo,
  type RefObject,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { LoopBars } from '#sound';
import { useSize } from '../neck/size.ts';
import { type LaneCell, useStudy } from '../store/index.ts';
import { PlacedCell } from './Cell.tsx';
import { LaneCursor, LaneMark } from './LaneCursor.tsx';
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

function barClass(bar: LaneBar, looped: boolean): string {
  const loops = looped ? ' looped' : '';
  const opens = bar.opensRepeat ? ' opens-repeat' : '';
  const closes = bar.closesRepeat === undefined ? '' : ' closes-repeat';
  return `bar${loops}${opens}${closes}${bar.ending === undefined ? '' : ' ending'}`;
}

function BarHead({ bar, section, looped }: Pick<BarProps, 'bar' | 'section' | 'looped'>) {
  const { metre, ending, same, closesRepeat = 2 } = bar;
  return (
    <div className="bar-head">
      <span className="bar-number">{bar.number}</span>
      {looped && <span className="loop-sign">loop</span>}
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
  /** Where forms were set by hand for the route. */
  readonly pins: ReadonlySet<string>;
  /** The bars that are played over and over. */
  readonly loop: LoopBars | undefined;
}

const isLooped = ({ number }: LaneBar, loop: LoopBars | undefined): boolean =>
  loop !== undefined && number >= loop.first && number <= loop.last;

interface BarProps extends Omit<Shown, 'loop'> {
  readonly bar: LaneBar;
  readonly section: string | undefined;
  readonly looped: boolean;
  /** Share of the row, in percent. */
  readonly width: number;
  readonly ems: number;
}

function Chords({ bar, ems, cells, pins }: BarProps) {
  return bar.chords.flatMap((placed) => {
    const cell = cells[placed.index];
    if (cell === undefined) return [];
    return [
      <PlacedCell
        key={placed.index}
        placed={placed}
        cell={cell}
        pinned={pins.has(cell.at)}
        tight={placed.length * ems < TIGHT}
      />,
    ];
  });
}

const LaneBarView = memo(function LaneBarView(props: BarProps) {
  const { bar, section, looped, width } = props;
  return (
    <div
      className={barClass(bar, looped)}
      style={{ width: `${width}%`, backgroundSize: `${100 / bar.beats}% 0.3rem` }}
    >
      <BarHead bar={bar} section={section} looped={looped} />
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

const Row = memo(function Row({ row, quarters, ems, cells, pins, loop }: RowProps) {
  return (
    <div className="row">
      {row.bars.map((bar, i) => (
        <LaneBarView
          key={bar.number}
          bar={bar}
          section={i === 0 ? row.section : undefined}
          looped={isLooped(bar, loop)}
          width={(bar.quarters / quarters) * 100}
          ems={(bar.quarters / quarters) * ems}
          cells={cells}
          pins={pins}
        />
      ))}
    </div>
  );
});

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

/** Where the lane goes on beyond what is in sight. */
type Beyond = 'below' | 'above' | 'none';

/** Where the lane goes on, below before above, watched without measuring. */
function useBeyond(ref: RefObject<HTMLElement | null>, rows: readonly LaneRow[]): Beyond {
  const [beyond, setBeyond] = useState<Beyond>('none');
  useEffect(() => {
    const { children } = ref.current ?? {};
    const [first, last] = [children?.[0], children?.[rows.length - 1]];
    if (!first || !last || first === last) return setBeyond('none');
    const unseen = new Set<Element>();
    const observer = new IntersectionObserver(
      (entries) => {
        for (const { target, intersectionRatio } of entries)
          unseen[intersectionRatio < MOSTLY ? 'add' : 'delete'](target);
        setBeyond(unseen.has(last) ? 'below' : unseen.has(first) ? 'above' : 'none');
      },
      { root: ref.current, threshold: MOSTLY },
    );
    observer.observe(first);
    observer.observe(last);
    return () => observer.disconnect();
  }, [ref, rows]);
  return beyond;
}

interface MoreProps {
  readonly lane: RefObject<HTMLElement | null>;
  readonly rows: readonly LaneRow[];
}

/** Its element stays: one that comes and goes would have all rows laid out anew. */
function More({ lane, rows }: MoreProps) {
  const beyond = useBeyond(lane, rows);
  return (
    <p className={`lane-more ${beyond}`} aria-hidden="true">
      more bars {beyond}
    </p>
  );
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

/** How many rows there are, for the styles: they share out the height without measuring the lane. */
const rowCount = (rows: number): CSSProperties => ({ '--rows': rows }) as CSSProperties;

/** The progression as bars to scale; the cursor stands on one of its chords. */
export function Lane() {
  const chart = useStudy(({ study }) => study.chart);
  const cells = useStudy(({ study }) => study.cells);
  const loop = useStudy(({ workspace }) => workspace.sound.transport.loop);
  const pins = usePins();
  const chords = useChords();
  const [ref, size] = useSize<HTMLElement>();
  const ems = size === undefined ? 60 : size.width / size.em;
  const rows = useMemo(
    () => laneRows(chart, chords, columnsFor(chart, chords, ems)),
    [chart, chords, ems],
  );
  const quarters = longestRow(rows);
  return (
    <div className="lane-frame" style={rowCount(rows.length)}>
      <section ref={ref} className="lane" aria-label="Chords" tabIndex={-1}>
        {rows.map((row) => (
          <Row
            key={row.bars[0]?.number}
            row={row}
            quarters={quarters}
            ems={ems}
            cells={cells}
            pins={pins}
            loop={loop}
          />
        ))}
        <LaneMark rows={rows} quarters={quarters} />
      </section>
      <LaneCursor lane={ref} rows={rows} cells={cells} quarters={quarters} />
      <More lane={ref} rows={rows} />
    </div>
  );
}
