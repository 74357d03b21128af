import { memo } from 'react';
import type { FormAtHand } from '#neck';
import { formName, formPlace, shareInWords, shareUnder } from '../form-text.ts';
import { problemText } from '../problem-text.ts';
import { type LaneCell, useIntents } from '../store/index.ts';
import { ShareBar } from '../type/ShareBar.tsx';
import { ChordSymbol } from '../type/Symbol.tsx';
import { Numeral } from './Numeral.tsx';
import type { Placed } from './rows.ts';
import { Suggestion } from './Suggestion.tsx';

function FormLine({ cell, pinned }: { readonly cell: LaneCell; readonly pinned: boolean }) {
  const { form } = cell;
  if (form === undefined) return <span className="cell-form" />;
  if (form.grip === undefined) return <span className="cell-form">no grip</span>;
  return (
    <span className={pinned ? 'cell-form pinned' : 'cell-form'}>
      <b>{formName(form.form)}</b> {formPlace(form)}
      <ShareBar share={shareUnder(form)} />
    </span>
  );
}

function formSpoken(form: FormAtHand): string {
  if (form.grip === undefined) return 'no grip';
  const place = formPlace(form);
  const where = place === 'open' ? place : `at ${place}`;
  return `${formName(form.form)} form ${where}, ${shareInWords(form)} under the hand`;
}

function spoken({ symbol, bar, form, problem }: LaneCell, beat: string, pinned: boolean): string {
  const place = `${symbol}, bar ${bar}, beat ${beat}`;
  if (problem !== undefined) return `${place}: ${problemText(problem, symbol)}`;
  return form === undefined ? place : `${place}, ${formSpoken(form)}${pinned ? ', pinned' : ''}`;
}

interface ChordCellProps {
  readonly cell: LaneCell;
  /** The beat it begins on, as `Placed` has it. */
  readonly beat: string;
  /** Its form was set by hand for the route. */
  readonly pinned: boolean;
  readonly onPick: (index: number) => void;
}

/** One chord of the lane. That the cursor stands on it is what LaneCursor puts on it. */
export const ChordCell = memo(function ChordCell(props: ChordCellProps) {
  const { cell, beat, pinned, onPick } = props;
  const { problem, form } = cell;
  return (
    <button
      type="button"
      className={problem === undefined ? 'cell' : 'cell unread'}
      data-chord-cell=""
      data-at={cell.at}
      data-symbol={cell.symbol}
      data-form={form?.form.name}
      data-anchor={form?.anchor}
      data-position={cell.position}
      data-error={problem && problemText(problem, cell.symbol)}
      aria-label={spoken(cell, beat, pinned)}
      tabIndex={-1}
      onClick={() => onPick(cell.index)}
    >
      <ChordSymbol text={cell.symbol} />
      {problem === undefined ? <FormLine cell={cell} pinned={pinned} /> : null}
      {cell.roman && <Numeral roman={cell.roman} />}
    </button>
  );
});

/** A chord where it stands in its bar. */
export const PlacedCell = memo(function PlacedCell(props: {
  readonly placed: Placed;
  readonly cell: LaneCell;
  readonly pinned: boolean;
  /** There is no room beside the form's name and place. */
  readonly tight: boolean;
}) {
  const { placed, cell, pinned, tight } = props;
  const { moveCursorTo } = useIntents();
  const classes = `placed${tight ? ' tight' : ''}${cell.problem ? ' mistaken' : ''}`;
  return (
    <div className={classes} style={{ width: `${placed.length * 100}%` }}>
      <ChordCell cell={cell} beat={placed.beat} pinned={pinned} onPick={moveCursorTo} />
      {cell.problem && <Suggestion problem={cell.problem} whole={cell.slot.span} />}
    </div>
  );
});
