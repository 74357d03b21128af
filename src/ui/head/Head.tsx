import { memo } from 'react';
import { CommandButton } from '../controls/CommandButton.tsx';
import { formPlace } from '../form-text.ts';
import { useStudy } from '../store/index.ts';
import { ChordSymbol } from '../type/Symbol.tsx';
import { spelledTones } from './spell.ts';

function ChordTones() {
  const chord = useStudy(({ study }) => study.chord);
  const spelling = useStudy(({ workspace }) => workspace.spelling);
  if (chord === undefined) return null;
  return (
    <dl className="chord-tones">
      {spelledTones(chord, spelling).map(({ degree, note }) => (
        <div key={degree}>
          <dt>{degree}</dt>
          <dd>{note}</dd>
        </div>
      ))}
    </dl>
  );
}

/** The next other chord, and the way there and back. */
export const Next = memo(function Next() {
  const symbol = useStudy(({ study }) => study.nextSymbol);
  const form = useStudy(({ study }) => study.nextForm);
  return (
    <section className="next" aria-label="Next chord">
      <CommandButton name="cursor-previous">←</CommandButton>
      <div className="next-chord">
        <span className="label">Next</span>
        <ChordSymbol text={symbol ?? '–'} />
        {form && (
          <span className="next-form">
            {form.form.name} form, {formPlace(form)}
          </span>
        )}
      </div>
      <CommandButton name="cursor-next">→</CommandButton>
    </section>
  );
});

/** The reading in words: what a screen reader speaks when the cursor moves. */
export const ReadingText = memo(function ReadingText() {
  const account = useStudy(({ study }) => study.account);
  return (
    <p className="reading" role="status" aria-label="Reading">
      {account}
    </p>
  );
});

/** What is under the cursor: the chord and its tones. */
export const Head = memo(function Head() {
  const symbol = useStudy(({ study }) => study.symbol);
  return (
    <section className="head" aria-label="Chord under the cursor">
      <h2 className="now">
        <ChordSymbol text={symbol} />
      </h2>
      <ChordTones />
    </section>
  );
});
