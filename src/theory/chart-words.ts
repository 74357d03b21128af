/** What the words of a chart mean that are not chords. */

const SAME = new Set(['%', './.', '·/·', '•/•', '-/-', '٪']);
const MARK = /^[-–—−‑‒~_.…·•*+=<>!?'"`´’“”:&]+$/;
const COUNT = /^[([{]?\s*(?:[x×✕]\s*(\d{1,4})|(\d{1,4})\s*(?:[x×✕]|times))\s*[)\]}]?[.,;]?$/i;
const ENDING = /^[([{]?\d{1,2}(?:st|nd|rd|th)?(?:[,.&+–-]+\d{1,2})*[.,):\]}]*$/;
const METRE_LIKE = /^[([{]?(\d{1,3}\/\d{1,3})[)\]}:,;.]*$/;

const ROAD_SIGNS = [
  'd\\.?c\\.?|d\\.?s\\.?|da|dal|al|to|capo|segno|fine|coda|codas|tocoda|dc|ds|repeat|repeats|rep\\.?',
  'times|time|play|end|until|till|fade|fade-?out|bis|ad|lib\\.?|rit\\.?|rall\\.?|rubato|tempo|a\\.?tempo',
  'open|solos?|fill|break|stop|hold|let|ring|cue|on|only|and|then|last|first|second|1st|2nd|3rd',
  'etc|no|simile|sim\\.?|tacet|tutti|fermata|swing|straight|𝄋|𝄌|𝄐',
].join('|');
const ROAD_SIGN = new RegExp(`^(?:${ROAD_SIGNS})[.,;:!]?$`, 'iu');

const PART_NAMES = [
  'intro(?:duction)?|verses?|vers|strophe|estrofa|estribillo|pre-?chorus|post-?chorus|chorus(?:es)?',
  'refrain|refrão|refrao|coro|bridge|ponte|puente|pont|solos?|outro|interlude|coda|codetta|head|tag',
  'ending|vamp|turn-?around|instrumental|break-?down|break|hook|theme|thema|tema|part|teil|parte',
  'section|middle|middle (?:8|eight)|shout|shout chorus|riff|lead|link|build|drop|release|channel',
  'pre chorus|post chorus|sezione|couplet|final|finale',
].join('|');
const PART_NAME = new RegExp(
  `^(?:(?:${PART_NAMES})(?:[ -]?(?:\\d{1,2}|[A-Z]|[ivx]{1,4}))?['’]?|[A-Z] (?:section|part|theme|teil))$`,
  'iu',
);
const LEADING_NAME = new RegExp(
  `^\\s*((?:${PART_NAMES})(?:[ -]?\\d{1,2}|[ -][A-Z](?=\\s*[|‖:]))?)(?=\\s*[|‖]|\\s+[|‖:A-GN%[(/\\d])`,
  'iu',
);
const LETTER_NAME = /^[A-Z](?:\d{1,2}|['’′]{1,2})?$/;

/** `%` and other ways to write "as before". */
export const isSame = (text: string): boolean => SAME.has(text);

/** Punctuation standing alone between chords. */
export const isMark = (text: string): boolean => MARK.test(text);

/** `D.C.`, `Fine`, `al`, …: where to go on playing, not what. */
export const isRoadSign = (text: string): boolean => ROAD_SIGN.test(text);

/** `Swing`, `open`, `solo`, …: a road sign that may also begin a passage's name. */
export const isFeel = (text: string): boolean =>
  /^(?:swing|straight|open|solos?|break|half|double|rubato|first|last|second)$/i.test(text);

/** `Verse`, `chorus 2`, …: the usual names of passages. */
export const isPartName = (text: string): boolean => PART_NAME.test(text.trim());

/** `A`, `A1`, `B'`: a rehearsal letter. */
export const isLetterName = (text: string): boolean => LETTER_NAME.test(text);

/** The usual name with which a line begins that goes on with bars or chords (`Verse | C | F |`). */
export const leadingPartName = (line: string): string | undefined => LEADING_NAME.exec(line)?.[1];

/** How often, of `x3`, `3x`, `×3`; any number, also a senseless one. */
export function countOf(text: string): number | undefined {
  const found = COUNT.exec(text);
  return found === null ? undefined : Number(found[1] ?? found[2]);
}

/** The time signature as `beats/unit` text, possible or not, of a word that looks like one. */
export const metreText = (text: string): string | undefined => METRE_LIKE.exec(text)?.[1];

const rangeOf = (from: number, to: number): readonly number[] =>
  to < from ? [] : Array.from({ length: to - from + 1 }, (_, i) => from + i);

function roundsOf(part: string): readonly number[] {
  const [from, to] = part.split('-').map(Number);
  return from === undefined ? [] : rangeOf(from, to ?? from);
}

/**
 * The rounds of an ending: `1.` [1], `1,2.` [1, 2], `1-3.` [1, 2, 3]. Undefined for a word that is
 * none, empty for rounds out of order.
 */
export function endingOf(text: string): readonly number[] | undefined {
  if (!ENDING.test(text)) return undefined;
  const numbers = text
    .replaceAll(/[^\d,.&+–-]/g, '')
    .replaceAll(/[,.]*[-–]+/g, '-')
    .split(/[,.&+]+/);
  const rounds = numbers.filter((part) => /\d/.test(part)).flatMap(roundsOf);
  const ascending = rounds.every((n, i) => n > (rounds[i - 1] ?? 0));
  return ascending ? rounds : [];
}

/** `1.`, `1,2.`, `1-3.`: runs of three and more are drawn together. */
export function makeEnding(rounds: readonly number[]): string {
  const runs: number[][] = [];
  for (const round of rounds) {
    const run = runs.at(-1);
    if (run?.at(-1) === round - 1) run.push(round);
    else runs.push([round]);
  }
  return `${runs.map(makeRun).join(',')}.`;
}

const makeRun = (run: readonly number[]): string =>
  run.length < 3 ? run.join(',') : `${run[0]}-${run.at(-1)}`;
