import { type SyntheticEvent, useId } from 'react';
import type { ChartProblem } from '#theory';
import { Suggestion } from '../lane/Suggestion.tsx';
import { problemText, slotOf } from '../problem-text.ts';
import { useIntents, useStudy } from '../store/index.ts';

const MAX_PROBLEMS = 6;

function Problem({ problem }: { readonly problem: ChartProblem }) {
  const slot = useStudy(({ study }) =>
    slotOf(
      study.cells.map((cell) => cell.slot),
      problem,
    ),
  );
  return (
    <li>
      <span className="problem-place">
        {problem.line}:{problem.column}
      </span>{' '}
      {problemText(problem, slot?.symbol)} <Suggestion problem={problem} whole={slot?.span} />
    </li>
  );
}

function Problems({ id }: { readonly id: string }) {
  const problems = useStudy(({ study }) => study.problems);
  if (problems.length === 0) return null;
  const more = problems.length - MAX_PROBLEMS;
  return (
    <ul className="problems" id={id} aria-label="What could not be read">
      {problems.slice(0, MAX_PROBLEMS).map((problem) => (
        <Problem key={`${problem.span.at}${problem.code}`} problem={problem} />
      ))}
      {more > 0 && <li>and {more} more</li>}
    </ul>
  );
}

const HOW: readonly (readonly [sample: string, meaning: string])[] = [
  ['| Am7 | D7 |', 'bars; without any bar line, each chord is a bar'],
  ['| C G |', 'chords in a bar share it evenly'],
  ['| C / / G |', 'a slash holds the chord one more beat'],
  ['| % |', 'the bar before once more'],
  ['|: … :| x3', 'a repeat, here three times in all'],
  ['|1. … :|2. …', 'first and second ending'],
  ['3/4', 'a time signature, anywhere'],
  ['[Verse]', 'a section name on a line of its own'],
  ['N.C.', 'no chord'],
];

function HowTo() {
  return (
    <details className="how">
      <summary>How to write a chart</summary>
      <dl>
        {HOW.map(([sample, meaning]) => (
          <div key={sample}>
            <dt>
              <code>{sample}</code>
            </dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

/** The progression as text; the lane beside it is the same thing drawn. */
export function ProgressionField() {
  const id = useId();
  const text = useStudy(({ workspace }) => workspace.progression);
  const unread = useStudy(({ study }) => study.problems.length > 0);
  const { setProgression, moveCursorToOffset } = useIntents();
  const follow = ({ currentTarget }: SyntheticEvent<HTMLTextAreaElement>) =>
    moveCursorToOffset(currentTarget.selectionStart);
  return (
    <div className="field">
      <label className="label" htmlFor={id}>
        Progression
      </label>
      <textarea
        id={id}
        className="chart-text"
        value={text}
        rows={5}
        spellCheck={false}
        autoCapitalize="off"
        autoComplete="off"
        autoCorrect="off"
        aria-invalid={unread}
        aria-describedby={unread ? `${id}-problems` : undefined}
        onChange={({ currentTarget }) =>
          setProgression(currentTarget.value, currentTarget.selectionStart)
        }
        onKeyUp={follow}
        onClick={follow}
      />
      <Problems id={`${id}-problems`} />
      <HowTo />
    </div>
  );
}
