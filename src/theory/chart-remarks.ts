/** Lines of a chart that are not for reading as bars: remarks, facts, words that are sung. */
import { type Line, type Token, tokensOf } from './chart-lex.ts';
import { kindsOf } from './chart-names.ts';
import { type Reading, report } from './chart-state.ts';

const FACTS = 'title|artist|composer|written by|words|music|by|style|feel|tuning|copyright|key';
const FACT = new RegExp(
  `^\\s*(?:(?:${FACTS})\\s*[:=]|(?:tempo|capo|bpm)\\s*[:=]?\\s*\\d|\\d+\\s*bpm|[♩♪]\\s*=)|^\\s*\\{[^{}]*:[^{}]*\\}\\s*$`,
  'iu',
);
const BRACKETS = /\[([^[\]|‖]{1,40})\]/g;

const hasBars = (line: Line): boolean => /[|‖]/.test(line.text);

/** Whether a line states a fact about the piece: `Key: G`, `Tempo 120`. */
export const isFact = (line: Line): boolean => FACT.test(line.text);

/** Whether a line without bars is made of words that say nothing about chords. */
export function isRemark(reading: Reading, line: Line): boolean {
  if (hasBars(line)) return false;
  const kinds = kindsOf(reading, line.text);
  const others = kinds.filter((kind) => kind === 'other').length;
  const chords = kinds.filter((kind) => kind === 'chord').length;
  return others >= 2 && others > chords;
}

/** Notes a line that is left out. */
export function remark(reading: Reading, line: Line): void {
  const found = line.text.trim();
  const span = { at: line.at + line.text.indexOf(found), length: found.length };
  const expected = ['chords, or the name of a passage as [Verse]'];
  report(reading, { code: 'word', span, found, expected });
}

const isChordText = (reading: Reading, text: string): boolean => {
  const kinds = kindsOf(reading, text);
  return kinds.length > 0 && kinds.every((kind) => kind === 'chord');
};

/** The tokens within brackets of a line of sung words with chords between them: `[C]Row, [G]row`. */
export function sungTokens(reading: Reading, line: Line): readonly Token[] | undefined {
  if (hasBars(line)) return undefined;
  const chords = [...line.text.matchAll(BRACKETS)].filter(([, inner]) =>
    isChordText(reading, inner ?? ''),
  );
  const words = kindsOf(reading, line.text.replaceAll(BRACKETS, ' '));
  if (chords.length === 0 || !words.includes('other')) return undefined;
  return chords.flatMap(({ index, 1: text = '' }) =>
    tokensOf({ number: line.number, at: line.at + index + 1, text }),
  );
}
