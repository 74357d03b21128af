import type { ChartProblem, TextSpan } from '#theory';
import { withSuggestion } from '../problem-text.ts';
import { useIntents, useStudyStore } from '../store/index.ts';

/** Offers what was probably meant; pressing it puts that into the text. */
export function Suggestion(props: {
  readonly problem: ChartProblem;
  /** The whole symbol that the problem is a part of. */
  readonly whole: TextSpan | undefined;
}) {
  const { problem, whole = problem.span } = props;
  const { setProgression } = useIntents();
  const store = useStudyStore();
  if (problem.suggestion === undefined) return null;
  return (
    <button
      type="button"
      className="suggestion"
      onClick={() => {
        const text = store.cell.get().workspace.progression;
        setProgression(withSuggestion(text, problem, whole), whole.at);
      }}
    >
      {problem.suggestion}?
    </button>
  );
}
