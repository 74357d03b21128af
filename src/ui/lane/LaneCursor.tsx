import { type CSSProperties, memo, type RefObject, useLayoutEffect, useMemo, useRef } from 'react';
import { type LaneCell, useStudy } from '../store/index.ts';
import { type LaneRow, type Spot, spotOf } from './rows.ts';

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

const isCell = (element: Element | null): boolean => element?.matches('[data-chord-cell]') === true;

/** Keeps the row with an index in view. */
function useRowInView(
  ref: RefObject<HTMLElement | null>,
  rows: readonly LaneRow[],
  at: number,
): void {
  useLayoutEffect(() => {
    // At the end of the frame everything else has changed too, so that it is laid out only once.
    const frame = requestAnimationFrame(() => {
      const row = rows.length > 0 ? ref.current?.children[at] : undefined;
      if (ref.current !== null && row instanceof HTMLElement) scrollTo(ref.current, row);
    });
    return () => cancelAnimationFrame(frame);
  }, [ref, at, rows]);
}

/** Milliseconds between two moves that are no longer a run of them. */
const REST = 80;

/** The one cell of the lane that Tab stops at. */
function stopAt(cell: Element, lane: HTMLElement): void {
  for (const before of lane.querySelectorAll('.cell[tabindex="0"]'))
    if (before !== cell) before.setAttribute('tabindex', '-1');
  cell.setAttribute('tabindex', '0');
}

/**
 * Does something at the end of the frame, when all that a move changes has changed and is laid out in
 * any case; `later` when the cursor rests. Returns the way to call it off.
 */
function soon(work: () => void, later: boolean): () => void {
  const id = later ? setTimeout(work, REST) : requestAnimationFrame(work);
  return () => (later ? clearTimeout(id) : cancelAnimationFrame(Number(id)));
}

/**
 * Takes the Tab stop along, and the focus when it is in the lane. In a run of moves they wait for its
 * end: while a key is held down, moving them thirty times a second would cost frames and tell nobody
 * anything. The focus stays where it is while music plays: every chord that takes it is spoken over
 * the music.
 */
function useFocusAtCursor({ lane, rows, cells }: LaneCursorProps, cursor: number): void {
  const playing = useStudy((state) => state.playing);
  const moved = useRef(Number.NEGATIVE_INFINITY);
  // No passive effect: those are a task of their own after every move.
  useLayoutEffect(() => {
    if (rows.length === 0 || cursor >= cells.length) return undefined;
    const before = moved.current;
    moved.current = performance.now();
    const follow = () => {
      const cell = currentCell(lane.current);
      if (!cell || lane.current === null) return;
      stopAt(cell, lane.current);
      if (!playing && isCell(document.activeElement)) cell.focus({ preventScroll: true });
    };
    // The first is there with the lane: nothing has the focus yet.
    return before < 0 ? follow() : soon(follow, moved.current - before < REST);
  }, [lane, rows, cells, cursor, playing]);
}

interface LaneMarkProps {
  readonly rows: readonly LaneRow[];
  /** Quarter notes that fill the width of the lane. */
  readonly quarters: number;
}

interface LaneCursorProps extends LaneMarkProps {
  readonly lane: RefObject<HTMLElement | null>;
  readonly cells: readonly LaneCell[];
}

/** Says on the cells where the cursor is: two elements change, and not one of the lane is rendered. */
function useCurrentCell({ lane, rows, cells }: LaneCursorProps, cursor: number): void {
  const current = useRef<Element>(undefined);
  useLayoutEffect(() => {
    const drawn = rows.length > 0 && cursor < cells.length;
    // A live collection: unlike a query it is not made anew while the lane stays as it is.
    const found = drawn ? lane.current?.getElementsByClassName('cell')[cursor] : undefined;
    if (found === current.current) return;
    current.current?.removeAttribute('aria-current');
    found?.setAttribute('aria-current', 'true');
    current.current = found;
  }, [lane, rows, cells, cursor]);
}

/** As a background: its position is a share of the room that is left beside and below what is drawn. */
function markAt({ row, from, width }: Spot, rows: number): CSSProperties {
  const along = from / Math.max(1 - width, Number.EPSILON);
  const down = row / Math.max(rows - 1, 1);
  return {
    backgroundPosition: `${along * 100}% ${down * 100}%`,
    backgroundSize: `${width * 100}% var(--row-height)`,
  };
}

function useSpot(rows: readonly LaneRow[], quarters: number): Spot | undefined {
  const cursor = useStudy(({ study }) => study.cursor);
  return useMemo(() => spotOf(rows, quarters, cursor), [rows, quarters, cursor]);
}

/**
 * What is seen of the cursor: the background of a layer under the rows. No row is painted anew for it,
 * and no layer is moved.
 */
export const LaneMark = memo(function LaneMark({ rows, quarters }: LaneMarkProps) {
  const spot = useSpot(rows, quarters);
  return spot && <span className="lane-mark" style={markAt(spot, rows.length)} />;
});

/** The cursor in the lane: says on its cell where it is, keeps its row in view, takes the focus along. */
export const LaneCursor = memo(function LaneCursor(props: LaneCursorProps) {
  const { lane, rows, quarters } = props;
  const cursor = useStudy(({ study }) => study.cursor);
  useCurrentCell(props, cursor);
  useRowInView(lane, rows, useSpot(rows, quarters)?.row ?? -1);
  useFocusAtCursor(props, cursor);
  return null;
});
