import { memo } from 'react';
import { chordSymbolParts } from '#theory';

/** The runs of a symbol, each with where it begins. */
function runsOf(text: string) {
  let at = 0;
  return chordSymbolParts(text).map((run) => {
    const placed = { ...run, at };
    at += run.text.length;
    return placed;
  });
}

/** A chord symbol as a copyist sets it: root large, accidentals as signs, tensions raised. */
export const ChordSymbol = memo(function ChordSymbol({ text }: { readonly text: string }) {
  return (
    <span className="symbol">
      {runsOf(text).map((run) => (
        <span key={run.at} className={`symbol-${run.role}`}>
          {run.text}
        </span>
      ))}
    </span>
  );
});
