import { memo } from 'react';
import type { FormAtHand } from '#neck';
import { CommandButton } from '../controls/CommandButton.tsx';
import { formName, formPlace, shareInWords, shareUnder, whereIs } from '../form-text.ts';
import { type AppState, useStudy } from '../store/index.ts';
import { ShareBar } from '../type/ShareBar.tsx';
import { ChordSymbol, NOTHING } from '../type/Symbol.tsx';
import { symbolInSigns } from '../words.ts';
import { type Spelled, spelledTones } from './spell.ts';

/** More tones than this are set smaller, so that those of a thirteenth chord stand in the head too. */
const MANY = 5;

/** The places of as many tones, empty: a chord that has fewer changes no elements. */
const NO_TONES: readonly Spelled[] = Array.from({ length: MANY }, (_, order) => ({
  degree: NOTHING,
  note: NOTHING,
  order,
}));

function ChordTones() {
  const chord = useStudy(({ study }) => study.turned?.chord ?? study.chord);
  const spelling = useStudy(({ workspace }) => workspace.spelling);
  if (chord === undefined) return <dl className="chord-tones" />;
  const tones = spelledTones(chord, spelling);
  return (
    <dl className={tones.length > MANY ? 'chord-tones many' : 'chord-tones'}>
      {[...tones, ...NO_TONES.slice(tones.length)].map(({ degree, note, bass, order }) => (
        <div key={order} className={bass && 'bass'} aria-hidden={note === NOTHING || undefined}>
          <dt>
            {degree}
            {bass && <span className="bass-word">bass</span>}
          </dt>
          <dd>{note}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Nothing of the chord can be gripped where the hand is; where the nearest form lies. */
function NoGrip({ form }: { readonly form: FormAtHand | undefined }) {
  return (
    <p className="form-now none">
      <span className="form-name">no grip here</span>{' '}
      {form?.grip && (
        <span className="form-where">
          <span className="form-place">
            {formName(form.form)} form {whereIs(form)}
          </span>
          <span className="form-share">is the nearest</span>
        </span>
      )}
    </p>
  );
}

/** The answer: the form under the hand as large as the chord, where it lies, how much the hand has. */
function FormNow() {
  const form = useStudy(({ study }) => study.reading?.chosen);
  const chord = useStudy(({ study }) => study.chord);
  if (chord === undefined) return <p className="form-now" />;
  if (form?.grip === undefined || form.under + form.stretched === 0) return <NoGrip form={form} />;
  return (
    <p className="form-now">
      <span className="form-name">{formName(form.form)} form</span>{' '}
      <span className="form-where">
        <span className="form-place">{whereIs(form)}</span>{' '}
        <span className="form-share">
          {shareInWords(form)}
          <ShareBar share={shareUnder(form)} />
        </span>
      </span>
    </p>
  );
}

/** The cell that the arrow leads to, where that is not the chord that is announced. */
function cellBeside({ study }: AppState): string | undefined {
  const { cells, cursor, nextOf } = study;
  const beside = cells[cursor + 1];
  return beside && beside.index !== nextOf[cursor] ? beside.symbol : undefined;
}

/** What is announced as next: a chord, or the silence that is left. */
function nextShown({ study }: AppState): string {
  const { nextSymbol, cells, cursor } = study;
  const rest = cells.slice(cursor + 1).find(({ slot }) => slot.harmony.kind === 'silent');
  return nextSymbol ?? rest?.symbol ?? '–';
}

/** The next other chord as it is played, how it is come to, and steps through the chart as written. */
export const Next = memo(function Next() {
  const symbol = useStudy(nextShown);
  const words = useStudy(({ study }) => study.nextWords);
  const form = useStudy(({ study }) => study.nextForm);
  const beside = useStudy(cellBeside);
  return (
    <section className="next" aria-label="Next chord">
      <CommandButton name="cursor-previous">←</CommandButton>
      <div className="next-chord">
        <span className="label">{words ?? 'Next'}</span>
        <ChordSymbol text={symbol} steady />
        {words === undefined ? (
          <span className="next-form">no more chords</span>
        ) : (
          form && (
            <span className="next-form">
              {formName(form.form)} form, {formPlace(form)}
            </span>
          )
        )}
      </div>
      <CommandButton name="cursor-next" goal={beside && symbolInSigns(beside)}>
        →
      </CommandButton>
    </section>
  );
});

/**
 * The reading in words: what a screen reader speaks when the cursor moves. It keeps silent while
 * music plays, for it would talk over every chord.
 */
export const ReadingText = memo(function ReadingText() {
  const account = useStudy(({ held, study }) => (held ?? study).account);
  const reason = useStudy(({ held, study }) => (held ?? study).reason);
  const at = account.indexOf(reason);
  const [rest, next] = account.slice(at + reason.length).split(/(?= Next: )/);
  const playing = useStudy((state) => state.playing);
  return (
    <div className="reading-slot">
      <p
        className="reading"
        role="status"
        aria-label="Reading"
        aria-live={playing ? 'off' : 'polite'}
      >
        {account.slice(0, at)}
        <span className="reason">{reason}</span>
        {rest}
        <span className="next-said">{next}</span>
      </p>
    </div>
  );
});

/** What is under the cursor: the chord, the form under the hand, and the chord's tones. */
export const Head = memo(function Head() {
  const symbol = useStudy(({ study }) => study.symbol);
  const turned = useStudy(({ study }) => study.turned?.symbol);
  return (
    <section className="head" aria-label="Chord under the cursor">
      <h2 className={turned === undefined ? 'now' : 'now turned'}>
        {turned !== undefined && (
          <span className="turned-from">
            <ChordSymbol text={symbol} /> turned:{' '}
          </span>
        )}
        <ChordSymbol text={turned ?? symbol} steady />
      </h2>
      <FormNow />
      <ChordTones />
    </section>
  );
});
