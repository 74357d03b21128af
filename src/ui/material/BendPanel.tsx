import { memo, useMemo } from 'react';
import type { Bend } from '#neck';
import { makeDegree, makePitch } from '#theory';
import { Choice } from '../controls/Choice.tsx';
import type { AppState, Study } from '../store/index.ts';
import { symbolInSigns } from '../words-aloud.ts';
import { BendLimits } from './BendLimits.tsx';
import { DRAWN, type Drawn, draw, useDrawn, useHeld } from './emphasis.ts';
import { EASE_WORDS, HOW_FAR, targetInWords } from './material-words.ts';
import { bendKey } from './overlay-marks.ts';
import { Rows } from './Rows.tsx';
import { useStudyAtRest } from './rest.ts';

interface RowProps {
  readonly bend: Bend;
  /** Symbol of the next chord. */
  readonly next: string;
  /** The one stop of the list for the Tab key. */
  readonly stop: boolean;
}

const hundredth = (value: number): string => value.toFixed(2);

const BendRow = memo(function BendRow({ bend, next, stop }: RowProps) {
  const { string, fret, steps, pitch, degree, of, finger, travel, force, ease } = bend;
  const key = bendKey(bend);
  const held = useHeld(key);
  return (
    <li
      data-bend=""
      data-string={string}
      data-fret={fret}
      data-steps={steps}
      data-pitch={makePitch(pitch)}
      data-degree={makeDegree(degree)}
      data-of={of}
      data-ease={ease}
      data-mm={hundredth(travel)}
      data-newton={hundredth(force)}
    >
      <button type="button" data-row={key} aria-pressed={held} tabIndex={stop ? 0 : -1}>
        <span className="bend-from">
          string {string} fret {fret}
        </span>{' '}
        <b className="bend-far">{HOW_FAR[steps]}</b>{' '}
        <span className="bend-to">to {targetInWords(bend, next)}</span>{' '}
        <span className="bend-finger">finger {finger}</span>{' '}
        <span className="bend-work">{travel.toFixed(1)} mm</span>{' '}
        <span className="bend-work">{force.toFixed(1)} N</span>{' '}
        <span className={`ease ${ease}`}>{EASE_WORDS[ease]}</span>
      </button>
    </li>
  );
});

interface ListProps {
  readonly bends: readonly Bend[];
  readonly next: string;
  readonly label: string;
}

const BendList = memo(function BendList({ bends, next, label }: ListProps) {
  return (
    <Rows className="row-list bends" label={label}>
      {bends.map((bend, i) => (
        <BendRow key={bendKey(bend)} bend={bend} next={next} stop={i === 0} />
      ))}
    </Rows>
  );
});

const DRAWN_WORDS: Readonly<Record<Drawn, string>> = {
  now: 'this chord',
  next: 'the next',
  both: 'both',
};
const CHOICES = DRAWN.map((drawn) => [drawn, DRAWN_WORDS[drawn]] as const);

/** Arcs to both chords at once are many: which are drawn can be chosen. */
function DrawnChoice() {
  return (
    <Choice label="On the neck: bends into" options={CHOICES} value={useDrawn()} onChange={draw} />
  );
}

const studyOf = ({ study }: AppState): Study => study;

/** What is listed, and the chord that is next: they come late together. */
function useBends(open: boolean) {
  const { bends, nextSymbol = '', symbol, turned } = useStudyAtRest(studyOf, open);
  const over = turned?.symbol ?? symbol;
  return useMemo(
    () => ({
      practical: bends.filter(({ ease }) => ease !== 'no'),
      others: bends.filter(({ ease }) => ease === 'no'),
      next: symbolInSigns(nextSymbol),
      over: symbolInSigns(over),
    }),
    [bends, nextSymbol, over],
  );
}

export function BendPanel({ open }: { readonly open: boolean }) {
  const { practical, others, next, over } = useBends(open);
  return (
    <div className="panel-columns">
      <div className="panel-main">
        <div className="panel-head-row">
          <h3>Bends under the hand over {over}, easiest first</h3>
          <DrawnChoice />
        </div>
        <p className="footnote">
          An arc leads from the fret to what the bend reaches; dashed is hard, → is a tone of the
          next chord. Point at a row, or tap it, to see it alone. String 1 is the thinnest.
        </p>
        {practical.length === 0 && <p>None is practical here.</p>}
        <BendList bends={practical} next={next} label="Bends" />
        {others.length > 0 && (
          <details className="not-practical">
            <summary>{others.length} more that are not practical</summary>
            <BendList bends={others} next={next} label="Bends that are not practical" />
          </details>
        )}
      </div>
      <BendLimits />
    </div>
  );
}
