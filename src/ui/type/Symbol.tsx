import { memo } from 'react';
import { chordSymbolParts, chordSymbolSlots, type SymbolPart } from '#theory';

interface Run extends SymbolPart {
  readonly order: number;
}

const numbered = (parts: readonly SymbolPart[]): readonly Run[] =>
  parts.map((part, order) => ({ ...part, order }));

const runsOf = (text: string): readonly Run[] => numbered(chordSymbolParts(text));

/** Zero width: an element without text would lose its text node, and get another one with the next symbol. */
export const NOTHING = '\u200b';

/** Symbols whose runs are known; a chart seldom has more. */
const MOST = 256;
const known = new Map<string, readonly Run[]>();

function slotsOf(text: string): readonly Run[] {
  const found = known.get(text);
  if (found) return found;
  if (known.size >= MOST) known.clear();
  const slots = numbered(chordSymbolSlots(text)).map((run) =>
    run.text === '' ? { ...run, text: NOTHING } : run,
  );
  known.set(text, slots);
  return slots;
}

interface ChordSymbolProps {
  readonly text: string;
  /** Every run has its element, there or not, so that another symbol only changes texts. */
  readonly steady?: boolean;
}

/** A chord symbol as a copyist sets it: root large, accidentals as signs, tensions raised. */
export const ChordSymbol = memo(function ChordSymbol({ text, steady = false }: ChordSymbolProps) {
  return (
    <span className="symbol">
      {(steady ? slotsOf : runsOf)(text).map((run) => (
        <span key={run.order} className={`symbol-${run.role}`}>
          {run.text}
        </span>
      ))}
    </span>
  );
});
