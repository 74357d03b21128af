/** From words to statements: which tension is altered, added or left out, and what stands alone. */
import { A_TENSION, type Failure, fail, type Token, type Word } from './chord-words.ts';
import { err, ok, type Result } from './result.ts';
import type { Degree } from './types.ts';

/** On which side of its number an accidental stands: `7b9#11` or `79b11#`. */
export type AccidentalSide = 'before' | 'after';

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** One statement of a chord symbol. */
export type Item = Stretch &
  (
    | { readonly kind: 'word'; readonly word: Exclude<Word, 'add' | 'no' | 'sus'> }
    | { readonly kind: 'sus'; readonly tones: readonly Degree[] }
    /** A bare number; `apart` = in brackets, after a slash or a comma: a tension of its own. */
    | { readonly kind: 'plain'; readonly number: number; readonly apart: boolean }
    | { readonly kind: 'altered'; readonly number: number; readonly alter: number }
    | { readonly kind: 'added'; readonly number: number; readonly alter: number }
    | { readonly kind: 'omitted'; readonly number: number }
  );

type NumberToken = Extract<Token, { readonly kind: 'number' }>;

/** The alterations that have a meaning. ♯7 is the major seventh: `m(#7)`. */
const SENSIBLE: Readonly<Record<number, readonly number[]>> = {
  2: [-1, 0, 1],
  3: [-1],
  4: [0, 1],
  5: [-1, 0, 1],
  6: [-1, 0],
  7: [-2, -1, 1],
  9: [-1, 0, 1],
  11: [0, 1],
  13: [-1, 0],
};
/** What a plus or minus before a number raises or lowers; before other numbers it only adds. */
const RAISED = new Set([4, 5, 7, 9, 11]);

const sensible = (number: number, alter: number): boolean =>
  SENSIBLE[number]?.includes(alter) ?? false;

/** Reads tokens from left to right; mutable, and private to this file. */
interface Reader {
  readonly tokens: readonly Token[];
  readonly side: AccidentalSide;
  readonly items: Item[];
  readonly brackets: string[];
  at: number;
  /** A slash, comma or bracket has been passed since the last item. */
  apart: boolean;
}

type Step = Result<null, Failure>;
const DONE: Step = ok(null);

const here = (reader: Reader, ahead = 0): Token | undefined => reader.tokens[reader.at + ahead];
const lastItem = (reader: Reader): Item | undefined => reader.items.at(-1);

function put(reader: Reader, item: Item, used: number): Step {
  reader.items.push(item);
  reader.at += used;
  reader.apart = false;
  return DONE;
}

function skip(reader: Reader): Step {
  reader.at += 1;
  return DONE;
}

const isNumber = (token: Token | undefined): token is NumberToken => token?.kind === 'number';

/** An accidental as a token says it: ♯ 1, ♭ −1; plus and minus count as one when asked. */
function alterOf(token: Token | undefined): number | undefined {
  if (token?.kind === 'sign') return token.alter;
  if (token?.kind === 'plus') return 1;
  return token?.kind === 'dash' ? -1 : undefined;
}

function alteredItem(sign: Token, number: NumberToken, alter: number): Result<Item, Failure> {
  const stretch = {
    from: Math.min(sign.from, number.from),
    to: Math.max(sign.to, number.to),
  };
  if (!sensible(number.number, alter)) return fail('tension', stretch, A_TENSION);
  // A natural sign only says that the tone is not altered.
  if (alter === 0) return ok({ kind: 'added', number: number.number, alter: 0, ...stretch });
  return ok({ kind: 'altered', number: number.number, alter, ...stretch });
}

function putAltered(reader: Reader, sign: Token, number: NumberToken, alter: number): Step {
  const item = alteredItem(sign, number, alter);
  return item.ok ? put(reader, item.value, 2) : item;
}

/** `b9`, `#11`, `♮13`. */
function readSign(reader: Reader, sign: Token & { readonly kind: 'sign' }): Step {
  const next = here(reader, 1);
  if (!isNumber(next)) return fail('tension', sign, 'a number after the accidental');
  return putAltered(reader, sign, next, sign.alter);
}

const nothingYet = (reader: Reader): boolean => reader.items.length === 0;

/** Right after the root, where `+` and `-` name the triad. */
const isLeading = (reader: Reader): boolean =>
  nothingYet(reader) && reader.brackets.length === 0 && !reader.apart;

/** Whether a plus only adds: `+2`, `+6`, and a ninth to a minor chord, which has its ♯9 as ♭3. */
const addsOnly = (reader: Reader, number: number): boolean =>
  number === 2 ||
  number === 6 ||
  (number === 9 && reader.items.some((item) => item.kind === 'word' && item.word === 'minor'));

/** `+` alone, or before a number: `+7`, `7+5`, `m+7`, `7(+9)`. */
function readPlus(reader: Reader, plus: Token): Step {
  const next = here(reader, 1);
  const leading = isLeading(reader);
  if (isNumber(next) && addsOnly(reader, next.number)) {
    return put(
      reader,
      { kind: 'added', number: next.number, alter: 0, from: plus.from, to: next.to },
      2,
    );
  }
  if (isNumber(next) && (!leading || next.number === 5)) {
    const alter = RAISED.has(next.number) ? 1 : 0;
    return putAltered(reader, plus, next, alter);
  }
  return put(reader, { kind: 'word', word: 'aug', from: plus.from, to: plus.to }, 1);
}

const SIZED: ReadonlySet<Word> = new Set(['minor', 'major', 'dom'] as const);

/** The hyphen of `maj-7`, `min-9`, `dim-7`, `7-sus4`, `7-b9`, which says nothing. */
function isHyphen(reader: Reader, next: Token | undefined): boolean {
  if (next?.kind === 'sign' || next?.kind === 'word') return true;
  const before = here(reader, -1);
  if (before?.kind !== 'word' || !isNumber(next)) return false;
  return next.number === 7 || (next.number !== 5 && SIZED.has(before.word));
}

/** `-` for minor, `-5` `7-9` for a lowered tone, or a mere hyphen: `7-sus4`. */
function readDash(reader: Reader, dash: Token): Step {
  const next = here(reader, 1);
  const leading = isLeading(reader);
  if (!leading && isHyphen(reader, next)) return skip(reader);
  const lowers = isNumber(next) && next.number !== 3 && (!leading || next.number === 5);
  if (lowers) return putAltered(reader, dash, next, -1);
  if (leading) return put(reader, { kind: 'word', word: 'minor', from: dash.from, to: dash.to }, 1);
  return fail('quality', dash, A_TENSION);
}

/** Whether the accidental after a number belongs to it, being on the side that is read. */
function trailingAlter(reader: Reader, number: NumberToken): number | undefined {
  const sign = here(reader, 1);
  const alter = alterOf(sign);
  if (sign === undefined || alter === undefined || alter === 0) return undefined;
  if (reader.side === 'before' && isNumber(here(reader, 2))) return undefined;
  // `9+` is the ninth chord with a raised fifth, `7+` likewise.
  const first = nothingYet(reader) && !reader.apart && number.number !== 5;
  if (sign.kind === 'plus' && (first || number.number === 7)) return undefined;
  const alterable = number.number !== 3 && number.number !== 7;
  return alterable && sensible(number.number, alter) ? alter : undefined;
}

const isStacked = (number: number): boolean => number === 9 || number === 11 || number === 13;

function isApart(reader: Reader): boolean {
  const last = lastItem(reader);
  const afterMajor = last?.kind === 'word' && (last.word === 'major' || last.word === 'triangle');
  return reader.apart || (reader.brackets.length > 0 && !afterMajor);
}

function readNumber(reader: Reader, token: NumberToken): Step {
  const { number, from, to } = token;
  const last = lastItem(reader);
  const apart = isApart(reader);
  const sign = here(reader, 1);
  const alter = trailingAlter(reader, token);
  if (sign && alter !== undefined) {
    // `9b` alone is a ninth chord whose ninth is flat.
    const extension = !apart && isStacked(number) && !reader.items.some((i) => i.kind === 'plain');
    if (extension) reader.items.push({ kind: 'plain', number, apart: false, from, to });
    return putAltered(reader, sign, token, alter);
  }
  if (last?.kind === 'omitted' && (number === 3 || number === 5)) {
    return put(reader, { kind: 'omitted', number, from, to }, 1);
  }
  if (last?.kind === 'added' && (number === 3 || (sensible(number, 0) && number !== 5))) {
    return put(reader, { kind: 'added', number, alter: 0, from, to }, 1);
  }
  return put(reader, { kind: 'plain', number, apart, from, to }, 1);
}

const skipGaps = (reader: Reader): void => {
  while (here(reader)?.kind === 'gap') reader.at += 1;
};

/** `add9`, `add#11`, `add maj7`, `add3`. */
function readAdded(reader: Reader, add: Token): Step {
  reader.at += 1;
  skipGaps(reader);
  const first = here(reader);
  const major = first?.kind === 'word' && (first.word === 'major' || first.word === 'triangle');
  const alter = major ? 1 : alterOf(first);
  const number = alter === undefined ? first : here(reader, 1);
  if (!isNumber(number)) return fail('tension', first ?? { from: add.to, to: add.to }, A_TENSION);
  // Added to a chord, a plain 7 is the minor seventh, as in MusicXML.
  const plainSeventh = number.number === 7 ? -1 : 0;
  const item: Item = {
    kind: 'added',
    number: number.number,
    alter: number.number === 7 && alter === 1 ? 0 : (alter ?? plainSeventh),
    from: add.from,
    to: number.to,
  };
  const known = item.number === 3 || item.number === 7 || sensible(item.number, item.alter);
  if (!known) return fail('tension', number, A_TENSION);
  return put(reader, item, alter === undefined ? 1 : 2);
}

/** `no3`, `omit5`, `(no 3rd)`. */
function readOmitted(reader: Reader, no: Token): Step {
  reader.at += 1;
  skipGaps(reader);
  const number = here(reader);
  if (!isNumber(number)) {
    return fail('tension', number ?? { from: no.to, to: no.to }, 'the tone left out, such as no3');
  }
  return put(reader, { kind: 'omitted', number: number.number, from: no.from, to: number.to }, 1);
}

const isSuspended = (token: Token | undefined): token is NumberToken =>
  isNumber(token) && (token.number === 2 || token.number === 4);

/** Whether a bracket opens here that holds suspended tones and nothing else: `sus(4)`, `sus(2,4)`. */
function opensSuspended(reader: Reader): boolean {
  if (here(reader)?.kind !== 'open') return false;
  const rest = reader.tokens.slice(reader.at + 1);
  const close = rest.findIndex((token) => token.kind === 'close');
  const inner = rest.slice(0, close);
  const fits = (token: Token) =>
    isSuspended(token) || token.kind === 'gap' || token.kind === 'sign';
  return close > 0 && inner.every(fits) && inner.some(isSuspended);
}

/** The suspended tone at the reader, with the tokens it takes: `4`, `#4`, `b2`, `/2`. */
function suspendedTone(reader: Reader, first: boolean): { tone: Degree; used: number } | undefined {
  const gap = here(reader);
  // After the first tone a slash leads on only to the other suspended tone: `sus2/4`.
  let ahead = gap?.kind === 'gap' && !(first && gap.apart) ? 1 : 0;
  const sign = here(reader, ahead);
  const alter = sign?.kind === 'sign' ? sign.alter : 0;
  if (sign?.kind === 'sign') ahead += 1;
  const number = here(reader, ahead);
  if (!isSuspended(number) || !sensible(number.number, alter)) return undefined;
  return { tone: { number: number.number, alter }, used: ahead + 1 };
}

function suspendedTones(reader: Reader): Degree[] {
  const tones: Degree[] = [];
  for (;;) {
    const next = suspendedTone(reader, tones.length === 0);
    if (!next || tones.some((tone) => tone.number === next.tone.number)) return tones;
    tones.push(next.tone);
    reader.at += next.used;
  }
}

/** In `2sus` the tone stands first. */
function suspendedBefore(reader: Reader): Degree | undefined {
  const last = lastItem(reader);
  if (last?.kind !== 'plain' || last.number !== 2 || last.apart) return undefined;
  reader.items.pop();
  return { number: 2, alter: 0 };
}

/** `sus`, `sus4`, `sus24`, `sus2/4`, `sus(2)`, `sus#4`, `2sus`. */
function readSuspended(reader: Reader, sus: Token): Step {
  reader.at += 1;
  const brackets = opensSuspended(reader) ? 1 : 0;
  reader.at += brackets;
  const tones = suspendedTones(reader);
  reader.at += here(reader)?.kind === 'close' ? brackets : 0;
  const before = tones.length === 0 ? suspendedBefore(reader) : undefined;
  if (before) tones.push(before);
  return put(reader, { kind: 'sus', tones, from: sus.from, to: here(reader, -1)?.to ?? sus.to }, 0);
}

/** `dim5`, `aug9`: before a number that cannot be the chord's size, these alter it. */
function alteringWord(reader: Reader, word: Word): number | undefined {
  const next = here(reader, 1);
  if (!isNumber(next)) return undefined;
  const later = !nothingYet(reader) && next.number !== 7;
  const alter = word === 'aug' ? 1 : -1;
  return (next.number === 5 || later) && sensible(next.number, alter) ? alter : undefined;
}

function readWord(reader: Reader, token: Token & { readonly kind: 'word' }): Step {
  const { word, from, to } = token;
  if (word === 'add') return readAdded(reader, token);
  if (word === 'no') return readOmitted(reader, token);
  if (word === 'sus') return readSuspended(reader, token);
  if (word === 'aug' || word === 'dim') {
    const next = here(reader, 1);
    const alter = alteringWord(reader, word);
    if (isNumber(next) && alter !== undefined) return putAltered(reader, token, next, alter);
  }
  return put(reader, { kind: 'word', word, from, to }, 1);
}

function openBracket(reader: Reader, token: Token & { readonly bracket: string }): Step {
  reader.brackets.push(token.bracket);
  reader.apart = true;
  return skip(reader);
}

function closeBracket(reader: Reader, token: Token & { readonly bracket: string }): Step {
  const expected = reader.brackets.pop();
  if (expected === undefined) return fail('bracket', token, 'no bracket closes here');
  if (expected !== token.bracket) return fail('bracket', token, `the closing ${expected}`);
  if (here(reader, -1)?.kind === 'open') return fail('bracket', token, A_TENSION);
  return skip(reader);
}

function passGap(reader: Reader, token: Token & { readonly kind: 'gap' }): Step {
  if (token.apart && reader.at === reader.tokens.length - 1) return fail('bass', token, A_TENSION);
  reader.apart ||= token.apart;
  return skip(reader);
}

function readToken(reader: Reader, token: Token): Step {
  switch (token.kind) {
    case 'word':
      return readWord(reader, token);
    case 'number':
      return readNumber(reader, token);
    case 'sign':
      return readSign(reader, token);
    case 'plus':
      return readPlus(reader, token);
    case 'dash':
      return readDash(reader, token);
    case 'open':
      return openBracket(reader, token);
    case 'close':
      return closeBracket(reader, token);
    case 'gap':
      return passGap(reader, token);
  }
}

/** The statements of a chord's quality, in the order written, or the first thing without sense. */
export function readItems(
  tokens: readonly Token[],
  side: AccidentalSide,
): Result<readonly Item[], Failure> {
  const reader: Reader = { tokens, side, items: [], brackets: [], at: 0, apart: false };
  for (let token = here(reader); token; token = here(reader)) {
    const step = readToken(reader, token);
    if (!step.ok) return err(step.error);
  }
  const open = reader.brackets.at(-1);
  const end = tokens.at(-1)?.to ?? 0;
  if (open !== undefined) return fail('bracket', { from: end, to: end }, `the closing ${open}`);
  return ok(reader.items);
}
