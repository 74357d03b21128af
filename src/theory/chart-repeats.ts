/** Repeats and endings, while a chart is being read. */
import {
  type DraftBar,
  type LinePlace,
  type Reading,
  report,
  type Trouble,
} from './chart-state.ts';
import { makeEnding } from './chart-words.ts';
import type { TextSpan } from './types.ts';

const FEWEST_ROUNDS = 2;
const MOST_ROUNDS = 99;

function complain(
  reading: Reading,
  found: string,
  span: TextSpan,
  expected: string,
  line?: LinePlace,
): void {
  const trouble: Trouble = { code: 'repeat', span, found, expected: [expected] };
  report(reading, trouble, line);
}

/**
 * `|:` – the repeat opens on the next bar. One that lies in an open repeat is not heeded, unless
 * that has come to its endings and only lacks its close.
 */
export function openRepeat(reading: Reading, sign: TextSpan): void {
  const { repeat } = reading;
  const nested = repeat.open !== undefined || repeat.opening !== undefined;
  if (nested) complain(reading, '|:', sign, ':| before the next |:');
  if (nested && repeat.lastRound === 0) return;
  repeat.opening = { span: sign, line: reading.line };
  dropEnding(reading, sign);
}

/** An ending without a bar, before a repeat opens. */
function dropEnding(reading: Reading, sign: TextSpan): void {
  const { repeat } = reading;
  if (repeat.ending === undefined || repeat.ending.rounds[0] === 1) return;
  repeat.ending = undefined;
  report(reading, { code: 'ending', span: sign, found: '|:', expected: ['a bar in the ending'] });
}

/** The rounds that a count stands for; a senseless one is noted and counts as 2. */
export function roundsFrom(reading: Reading, count: number, found: string, span: TextSpan): number {
  if (count >= FEWEST_ROUNDS && count <= MOST_ROUNDS) return count;
  complain(reading, found, span, `a count from ${FEWEST_ROUNDS} to ${MOST_ROUNDS}`);
  return FEWEST_ROUNDS;
}

/** `:|` – goes back to `|:`, or else to the last `:|`, or else to the start. */
export function closeRepeat(reading: Reading, sign: TextSpan, rounds: number): void {
  const { repeat, bars } = reading;
  const last = bars.at(-1);
  if (last === undefined || bars.length === repeat.from) {
    complain(reading, ':|', sign, 'a bar before :|');
    return;
  }
  resumeRepeat(reading);
  last.closesRepeat = rounds;
  repeat.open = undefined;
  repeat.from = bars.length;
  repeat.endingOver = true;
}

/** A repeat without an opening, after an ending that a double bar has ended, begins behind it. */
function resumeRepeat(reading: Reading): void {
  const { repeat, bars } = reading;
  const bar = repeat.resume === undefined ? undefined : bars[repeat.resume];
  if (repeat.open === undefined && bar !== undefined) bar.opensRepeat = true;
  repeat.resume = undefined;
}

/** `||` ends the ending that is running, unless it lies inside a repeat that is still open. */
export function endEnding(reading: Reading): void {
  const { repeat } = reading;
  if (repeat.lastRound > 0 && repeat.open === undefined) repeat.endingOver = true;
}

/** `|1.`, `|2.`, … – an ending begins on the next bar. */
export function beginEnding(
  reading: Reading,
  rounds: readonly number[],
  found: string,
  span: TextSpan,
): void {
  const { repeat } = reading;
  const pending = repeat.ending?.rounds ?? [];
  const due = (pending.at(-1) ?? (repeat.opening === undefined ? repeat.lastRound : 0)) + 1;
  if (rounds[0] === due)
    repeat.ending = { rounds: [...pending, ...rounds], span, line: reading.line };
  else {
    const expected = [due === 1 ? 'the first ending, |1.' : `ending ${due} or a bar without one`];
    report(reading, { code: 'ending', span, found, expected });
  }
}

function endGroup(reading: Reading): void {
  const { repeat, bars } = reading;
  if (repeat.lastRound > 0 && repeat.from < bars.length) repeat.resume = bars.length;
  repeat.lastRound = 0;
}

/** What the signs before it make of the bar that is added next. */
export function takeSigns(reading: Reading): Pick<DraftBar, 'opensRepeat' | 'ending'> {
  const { repeat, bars } = reading;
  const { opening } = repeat;
  const ending = repeat.ending?.rounds;
  if (opening !== undefined) {
    repeat.open = opening;
    repeat.from = bars.length;
    repeat.lastRound = 0;
    repeat.resume = undefined;
  } else if (ending === undefined && repeat.endingOver) endGroup(reading);
  repeat.opening = undefined;
  repeat.ending = undefined;
  repeat.endingOver = false;
  if (ending === undefined) return { opensRepeat: opening !== undefined };
  if (repeat.lastRound > 0) repeat.open = undefined;
  else if (opening === undefined) resumeRepeat(reading);
  repeat.lastRound = ending.at(-1) ?? repeat.lastRound;
  return { opensRepeat: opening !== undefined, ending };
}

/** Notes a repeat that was opened and not closed. */
export function endRepeats(reading: Reading): void {
  const { opening, open, ending } = reading.repeat;
  if (ending !== undefined) {
    const found = makeEnding(ending.rounds);
    const trouble = { code: 'ending', span: ending.span, found } as const;
    report(reading, { ...trouble, expected: ['a bar in the ending'] }, ending.line);
  }
  if (opening !== undefined) complain(reading, '|:', opening.span, 'a bar after |:', opening.line);
  if (open !== undefined) complain(reading, '|:', open.span, ':| after it', open.line);
}

/** A count at the end of a line without repeat signs: the line's bars from `first` on, again. */
export function repeatLine(reading: Reading, first: number, rounds: number, span: TextSpan): void {
  const { repeat, bars } = reading;
  const start = bars[Math.max(first, repeat.from)];
  if (start === undefined) {
    complain(reading, `x${rounds}`, span, 'bars in the line that the count repeats');
    return;
  }
  const known = repeat.open !== undefined || repeat.resume !== undefined || repeat.lastRound > 0;
  if (!known) start.opensRepeat = true;
  closeRepeat(reading, span, rounds);
}
