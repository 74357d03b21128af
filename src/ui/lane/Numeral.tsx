import { memo } from 'react';
import { makeDegree, type RomanNumeral } from '#theory';

/** Accidental before a numeral, in semitones against the scale of the key. */
const signOf = (accidental: number): string =>
  (accidental < 0 ? '♭' : '♯').repeat(Math.abs(accidental));

function Figures({ figures }: { readonly figures: readonly string[] }) {
  if (figures.length === 0) return null;
  return (
    <span className="figures">
      {figures.map((figure) => (
        <span key={figure}>{figure}</span>
      ))}
    </span>
  );
}

/** A Roman numeral as textbooks set it: quality and extension raised, figures one above the other. */
export const Numeral = memo(function Numeral({ roman }: { readonly roman: RomanNumeral }) {
  const { applied, bass } = roman;
  return (
    <span className="cell-roman">
      {signOf(roman.accidental)}
      {roman.numeral}
      <sup>
        {roman.quality}
        {roman.extension}
      </sup>
      <Figures figures={roman.figures} />
      {bass && `/${makeDegree(bass, 'sign')}`}
      {applied && `/${signOf(applied.accidental)}${applied.numeral}`}
    </span>
  );
});
