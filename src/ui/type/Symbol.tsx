import { memo } from 'react';
import { chordSymbolParts } from '#theory';

/** The runs of a symbol, numbered: what is drawn is kept by that, so that a new chord changes texts. */
const runsOf = (text: string) => chordSymbolParts(text).map((run, order) => ({ ...run, order }));

/** A chord symbol as a copyist sets it: root large, accidentals as signs, tensions raised. */
export const ChordSymbol = memo(function ChordSymbol({ text }: { readonly text: string }) {
  return (
    <span className="symbol">
      {runsOf(text).map((run) => (
        <span key={run.order} className={`symbol-${run.role}`}>
          {run.text}
        </span>
      ))}
    </span>
  );
});
