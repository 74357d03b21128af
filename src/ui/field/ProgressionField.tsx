import { type ReactNode, type SyntheticEvent, useId, useState } from 'react';
import type { ChartProblem } from '#theory';
import { Behind } from '../behind.tsx';
import { Menu } from '../controls/Menu.tsx';
import { Suggestion } from '../lane/Suggestion.tsx';
import { problemText, slotOf } from '../problem-text.ts';
import { useIntents, useStudy } from '../store/index.ts';

const MAX_PROBLEMS = 6;

interface ProblemProps {
  readonly problem: ChartProblem;
  readonly children: ReactNode;
}

function Problem({ problem, children }: ProblemProps) {
  const slot = useStudy(({ study }) =>
    slotOf(
      study.cells.map((cell) => cell.slot),
      problem,
    ),
  );
  return (
    <li>
      {children}
      <span className="problem-place">
        {problem.line}:{problem.column}
      </span>{' '}
      {problemText(problem, slot?.symbol)} <Suggestion problem={problem} whole={slot?.span} />
    </li>
  );
}

/** All of them, one after the other from a chosen one on: there may be room for no more than that. */
function Problems({ id }: { readonly id: string }) {
  const problems = useStudy(({ study }) => study.problems);
  const [turn, setTurn] = useState(0);
  const count = problems.length;
  if (count === 0) return null;
  const first = turn % count;
  const more = count - MAX_PROBLEMS;
  return (
    <ul className="problems" id={id} aria-label="What could not be read">
      {[...problems.slice(first), ...problems.slice(0, first)]
        .slice(0, MAX_PROBLEMS)
        .map((problem, i) => (
          <Problem key={`${problem.span.at}${problem.code}`} problem={problem}>
            {i === 0 && count > 1 && (
              <button
                type="button"
                className="suggestion problem-count"
                onClick={() => setTurn(first + 1)}
              >
                {first + 1} of {count}, next
              </button>
            )}
          </Problem>
        ))}
      {more > 0 && <li>and {more} more</li>}
    </ul>
  );
}

/** Lines of the field: as many as are typed, within these. */
const LINES = { least: 2, most: 6 };

const linesOf = (text: string): number =>
  Math.min(LINES.most, Math.max(LINES.least, text.split('\n').length));

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
        rows={linesOf(text)}
        spellCheck={false}
        autoCapitalize="off"
        autoComplete="off"
        autoCorrect="off"
        aria-invalid={unread}
        aria-describedby={unread ? `${id}-problems` : undefined}
        onChange={({ currentTarget }) =>
          setProgression(currentTarget.value, currentTarget.selectionStart)
        }
        // Back at the chords, as with the other fields: the arrow keys move the cursor again.
        onKeyDown={({ key, currentTarget }) => key === 'Escape' && currentTarget.blur()}
        onKeyUp={follow}
        onClick={follow}
      />
      <Problems id={`${id}-problems`} />
      <Menu label="How to write a chart">
        {() => <Behind>{(parts) => <parts.ChartGuide />}</Behind>}
      </Menu>
    </div>
  );
}
