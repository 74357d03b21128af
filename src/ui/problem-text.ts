import type { ChartProblem, Slot, TextSpan } from '#theory';

/** Why something in the chart could not be used, for each code. */
const REASONS: Readonly<Record<ChartProblem['code'], string>> = {
  chord: 'is no chord symbol',
  beats: 'is more than the bar has beats',
  'nothing-before': 'has nothing before it to repeat',
  repeat: 'does not make a repeat',
  ending: 'is an ending without its repeat',
  metre: 'is no time signature',
  word: 'is neither a chord nor a name',
};

function either(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]}`;
}

/** What is wrong: the symbol as far as it could be read, or the thing that is out of place. */
function whatIsWrong({ code, found }: ChartProblem, symbol: string): string {
  if (found === symbol || code !== 'chord') return `“${found}” ${REASONS[code]}`;
  return `“${found}” in “${symbol}” is not understood`;
}

/**
 * A problem of the chart in words: what was found, why it is refused, what would have done. `symbol`
 * is the whole chord symbol when the problem is a part of it.
 */
export function problemText(problem: ChartProblem, symbol = problem.found): string {
  const wrong = whatIsWrong(problem, symbol);
  const { expected } = problem;
  return expected.length === 0 ? wrong : `${wrong}: expected ${either(expected.slice(0, 2))}`;
}

/**
 * The text with the problem's suggestion put in its place. A suggestion for a chord stands for the
 * `whole` symbol, of which the problem may be a part.
 */
export function withSuggestion(
  text: string,
  { span, suggestion }: ChartProblem,
  whole: TextSpan = span,
): string {
  if (suggestion === undefined) return text;
  return text.slice(0, whole.at) + suggestion + text.slice(whole.at + whole.length);
}

/** The chord in whose symbol a problem stands, if it stands in one. */
export const slotOf = (slots: readonly Slot[], { span }: ChartProblem): Slot | undefined =>
  slots.find((slot) => slot.span.at <= span.at && span.at < slot.span.at + slot.span.length);
