import { memo } from 'react';
import { formPlace, shareUnder } from '../form-text.ts';
import { problemText } from '../problem-text.ts';
import { type LaneCell, useIntents, useStudy } from '../store/index.ts';
import { ChordSymbol } from '../type/Symbol.tsx';
import { Numeral } from './Numeral.tsx';
import type { Placed } from './rows.ts';
import { Suggestion } from './Suggestion.tsx';

function FormLine({ cell }: { readonly cell: LaneCell }) {
  const { form } = cell;
  if (form === undefined) return <span className="cell-form" />;
  return (
    <span className="cell-form">
      <b>{form.form.name}</b> {formPlace(form)}
      <span className="share" aria-hidden="true">
        <span style={{ width: `${shareUnder(form) * 100}%` }} />
      </span>
    </span>
  );
}

function spoken({ symbol, at, form, problem }: LaneCell): string {
  const [bar, beat] = at.split('.');
  const place = `${symbol}, bar ${bar}, beat ${beat}`;
  if (problem !== undefined) return `${place}: ${problemText(problem, symbol)}`;
  if (form === undefined) return place;
  return `${place}, ${form.form.name} form at ${formPlace(form)}, ${form.under} of ${form.of} tones under the hand`;
}

interface ChordCellProps {
  readonly cell: LaneCell;
  readonly current: boolean;
  readonly onPick: (index: number) => void;
}

/** One chord of the lane. It renders again only if its own cell changed or the cursor came or went. */
export const ChordCell = memo(function ChordCell(props: ChordCellProps) {
  const { cell, current, onPick } = props;
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
      data-error={problem && problemText(problem, cell.symbol)}
      aria-current={current ? 'true' : undefined}
      aria-label={spoken(cell)}
      tabIndex={current ? 0 : -1}
      onClick={() => onPick(cell.index)}
    >
      <ChordSymbol text={cell.symbol} />
      {problem === undefined ? <FormLine cell={cell} /> : null}
      {cell.roman && <Numeral roman={cell.roman} />}
    </button>
  );
});

/** A chord where it stands in its bar. It looks itself up, so that a cursor move touches two of these. */
export const PlacedCell = memo(function PlacedCell({ placed }: { readonly placed: Placed }) {
  const cell = useStudy(({ study }) => study.cells[placed.index]);
  const current = useStudy(({ study }) => study.cursor === placed.index);
  const { moveCursorTo } = useIntents();
  if (cell === undefined) return null;
  return (
    <div
      className="placed"
      style={{ left: `${placed.from * 100}%`, width: `${placed.length * 100}%` }}
    >
      <ChordCell cell={cell} current={current} onPick={moveCursorTo} />
      {cell.problem && <Suggestion problem={cell.problem} whole={cell.slot.span} />}
    </div>
  );
});
