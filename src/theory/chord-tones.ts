/** From statements to tones: what a chord's quality means, as degrees above the root. */
import type { Item } from './chord-items.ts';
import { type Failure, fail } from './chord-words.ts';
import { compareDegrees, sameDegree } from './degrees.ts';
import { ok, type Result } from './result.ts';
import { lookUpQuality } from './tonal.ts';
import type { Degree } from './types.ts';

type Triad = 'major' | 'minor' | 'dim' | 'power';

/** What has been said so far; mutable, and private to this file. */
interface Draft {
  triad?: Triad;
  half: boolean;
  alt: boolean;
  sus?: readonly Degree[];
  /** Against the major seventh: 0, -1, -2. Absent = as the extension asks. */
  seventh?: number;
  /** The largest of 7, 9, 11, 13 that was written as the chord's size; 0 = a triad. */
  size: number;
  readonly altered: Degree[];
  readonly added: Degree[];
  readonly omitted: { readonly number: number; readonly item: Item }[];
}

type Said = Failure | undefined;

const degree = (number: number, alter = 0): Degree => ({ number, alter });
const ROOT = degree(1);

/** Tones that are named an octave higher unless they take the third's place. */
const RAISED: Readonly<Record<number, number>> = { 2: 9, 4: 11 };
const asTension = (number: number): number => RAISED[number] ?? number;

const conflict = (item: Item, ...expected: readonly string[]): Failure =>
  fail('conflict', item, ...expected).error;

/** The quality names under which tonal keeps each triad, by its seventh. */
const TONAL_NAMES: Readonly<Record<Triad | 'sus', Readonly<Record<string, string>>>> = {
  major: { none: 'M', '0': 'maj7', '-1': '7' },
  minor: { none: 'm', '0': 'mM7', '-1': 'm7' },
  dim: { none: 'dim', '0': 'oM7', '-1': 'm7b5', '-2': 'dim7' },
  power: { none: '5' },
  sus: { none: 'sus4', '0': 'M7sus4', '-1': '7sus4' },
};

/** Triad and seventh from the dictionary, which has no major triad with 𝄫7 and the like. */
function coreTones(triad: Triad | 'sus', seventh: number | undefined): readonly Degree[] {
  const names = TONAL_NAMES[triad];
  const found = lookUpQuality(names[String(seventh ?? 'none')] ?? '?');
  if (found.ok) return found.value;
  const plain = lookUpQuality(names['none'] ?? '?');
  const tones = plain.ok ? plain.value : [ROOT];
  return seventh === undefined ? tones : [...tones, degree(7, seventh)];
}

const cores = new Map<string, readonly Degree[]>();

function core(triad: Triad | 'sus', seventh: number | undefined): readonly Degree[] {
  const key = `${triad}${seventh}`;
  const known = cores.get(key) ?? coreTones(triad, seventh);
  cores.set(key, known);
  return known;
}

function sayTriad(draft: Draft, triad: Triad, item: Item): Said {
  if (draft.triad !== undefined) return conflict(item, 'one word for the triad');
  draft.triad = triad;
  return undefined;
}

function saySeventh(draft: Draft, seventh: number, item: Item): Said {
  if (draft.seventh !== undefined) return conflict(item, 'one seventh');
  draft.seventh = seventh;
  return undefined;
}

const isSize = (number: number): boolean => number === 7 || number >= 9;

function saySize(draft: Draft, number: number, item: Item): Said {
  if (draft.size === number || (number === 7 && draft.seventh !== undefined && draft.size > 0)) {
    return conflict(item, 'each number once');
  }
  draft.size = Math.max(draft.size, number);
  return undefined;
}

/** `7(maj7)`: only a diminished chord can hold both sevenths. */
function saySecondSeventh(draft: Draft, item: Item): Said {
  if (draft.triad !== 'dim') return conflict(item, 'one seventh');
  draft.added.push(degree(7));
  return undefined;
}

const isMajor = (item: Item | undefined): boolean =>
  item?.kind === 'word' && (item.word === 'major' || item.word === 'triangle');

/** A plain 7, or the 7 of `maj7`, whose word has had its say. */
function saySeven(draft: Draft, item: Item, before: Item | undefined): Said {
  if (!isMajor(before)) return saySize(draft, 7, item);
  draft.size = Math.max(draft.size, 7);
  return undefined;
}

type Plain = Item & { readonly kind: 'plain' };

/** Whether the number after a word like `maj` is the size of the chord whose seventh it makes major. */
const claimsSize = (size: Plain | undefined): boolean =>
  size !== undefined && isSize(size.number) && (!size.apart || size.number === 7);

/** A triangle stands for the seventh too, unless a small number such as 6 follows. */
const claimsSeventh = (size: Plain | undefined): boolean =>
  size === undefined || size.number > 6 || size.apart;

/** `maj7`, `mM7`, `7M`, `Δ`: whether the word makes the triad or the seventh major. */
function sayMajor(draft: Draft, item: Item, next: Item | undefined, triangle: boolean): Said {
  const size = next?.kind === 'plain' ? next : undefined;
  if (size?.number === 7 && draft.size === 7) return saySecondSeventh(draft, item);
  const claims = claimsSize(size);
  const later = draft.triad !== undefined || draft.sus !== undefined || draft.size > 0;
  if (claims || later || (triangle && claimsSeventh(size))) {
    const failure = saySeventh(draft, 0, item);
    if (failure) return failure;
    if (!claims) draft.size ||= 7;
  }
  return later ? undefined : sayTriad(draft, 'major', item);
}

function sayWord(draft: Draft, item: Item & { kind: 'word' }, next: Item | undefined): Said {
  switch (item.word) {
    case 'minor':
      return sayTriad(draft, 'minor', item);
    case 'dim':
      return sayTriad(draft, 'dim', item);
    case 'half':
      draft.half = true;
      return sayTriad(draft, 'dim', item);
    case 'aug':
      draft.altered.push(degree(5, 1));
      return undefined;
    case 'major':
      return sayMajor(draft, item, next, false);
    case 'triangle':
      return sayMajor(draft, item, next, true);
    case 'alt':
      draft.alt = true;
      return undefined;
    case 'dom':
      if (!(next?.kind === 'plain' && isSize(next.number))) draft.size = Math.max(draft.size, 7);
      return undefined;
    case 'phrygian':
      draft.sus ??= [degree(4)];
      draft.altered.push(degree(9, -1));
      return undefined;
  }
}

function saySus(draft: Draft, item: Item & { kind: 'sus' }): Said {
  const tones = item.tones.length > 0 || draft.sus ? item.tones : [degree(4)];
  draft.sus = [...(draft.sus ?? []), ...tones];
  return undefined;
}

function sayPlain(draft: Draft, item: Plain, before: Item | undefined): Said {
  const { number, apart } = item;
  if (number === 7) return saySeven(draft, item, before);
  if (number === 5 && !before) return sayTriad(draft, 'power', item);
  if (number === 5 || number === 3)
    return fail('tension', item, 'a tension that adds something').error;
  if (number === 4 && (draft.triad === undefined || draft.triad === 'power')) {
    draft.sus = [...(draft.sus ?? []), degree(4)];
    return undefined;
  }
  const sixth = draft.added.some((tone) => tone.number === 6);
  if (number >= 9 && !apart && draft.size === 0 && !sixth && draft.triad !== 'power') {
    return saySize(draft, number, item);
  }
  const tone = degree(asTension(number));
  const twice = draft.added.some((known) => sameDegree(known, tone)) || draft.size === number;
  if (twice) return conflict(item, 'each number once');
  draft.added.push(tone);
  return undefined;
}

function sayAltered(draft: Draft, item: Item & { kind: 'altered' }): Said {
  const { number, alter } = item;
  if (number === 7) return saySeventhSign(draft, alter, item);
  if (number === 3) return sayTriad(draft, 'minor', item);
  const tone = degree(asTension(number), alter);
  if (draft.altered.some((known) => sameDegree(known, tone)) && number !== 5) {
    return conflict(item, 'each alteration once');
  }
  draft.altered.push(tone);
  return undefined;
}

function saySeventhSign(draft: Draft, alter: number, item: Item): Said {
  // ♯7 raises the minor seventh that the plain number would be.
  const failure = saySeventh(draft, alter === 1 ? 0 : alter, item);
  if (!failure && draft.size === 0) draft.size = 7;
  return failure;
}

function sayAdded(draft: Draft, item: Item & { kind: 'added' }): Said {
  draft.added.push(degree(asTension(item.number), item.alter));
  return undefined;
}

function say(draft: Draft, item: Item, before: Item | undefined, next: Item | undefined): Said {
  switch (item.kind) {
    case 'word':
      return sayWord(draft, item, next);
    case 'sus':
      return saySus(draft, item);
    case 'plain':
      return sayPlain(draft, item, before);
    case 'altered':
      return sayAltered(draft, item);
    case 'added':
      return sayAdded(draft, item);
    case 'omitted':
      draft.omitted.push({ number: item.number, item });
      return undefined;
  }
}

/** A bare `susb9` is the dominant chord of that name, not a triad. */
function isDominantSus(draft: Draft): boolean {
  return draft.sus !== undefined && draft.altered.some((tone) => tone.number === 9);
}

function seventhOf(draft: Draft): number | undefined {
  if (draft.seventh !== undefined) return draft.seventh;
  if (draft.half) return -1;
  if (draft.size >= 7) return draft.triad === 'dim' ? -2 : -1;
  return draft.alt || isDominantSus(draft) ? -1 : undefined;
}

/** The thirds stacked up to the chord's size, but for those that an alteration or the sus replaces. */
function stackedTones(draft: Draft): readonly Degree[] {
  const replaced = new Set(alteredTones(draft).map((tone) => tone.number));
  for (const tone of draft.sus ?? []) replaced.add(asTension(tone.number));
  return [9, 11, 13]
    .filter((number) => number <= draft.size && !replaced.has(number))
    .map((number) => degree(number));
}

/** `alt` without further words: raised fifth and raised ninth. */
function alteredTones(draft: Draft): readonly Degree[] {
  if (!draft.alt) return draft.altered;
  const has = (number: number) => draft.altered.some((tone) => tone.number === number);
  const defaults = [degree(5, 1), degree(9, 1)].filter((tone) => !has(tone.number));
  return [...draft.altered, ...defaults];
}

function baseTones(draft: Draft): readonly Degree[] {
  const triad = draft.triad ?? 'major';
  const seventh = seventhOf(draft);
  if (!draft.sus) return core(triad, seventh);
  const rest = core('sus', seventh).filter((tone) => tone.number !== 4);
  return [...rest, ...draft.sus];
}

function allTones(draft: Draft): readonly Degree[] {
  const altered = alteredTones(draft);
  const fifth = altered.some((tone) => tone.number === 5);
  const base = baseTones(draft).filter((tone) => !(fifth && sameDegree(tone, degree(5))));
  return [...base, ...stackedTones(draft), ...altered, ...draft.added];
}

/** A sixth beside a seventh is the thirteenth. */
function namedTones(tones: readonly Degree[]): readonly Degree[] {
  const seventh = tones.some((tone) => tone.number === 7 && tone.alter > -2);
  return seventh
    ? tones.map((tone) => (tone.number === 6 && tone.alter === 0 ? degree(13) : tone))
    : tones;
}

/** Each degree once, by number then alteration. */
export function inOrder(tones: readonly Degree[]): readonly Degree[] {
  const sorted = [...tones].sort(compareDegrees);
  return sorted.filter((tone, i) => i === 0 || !sameDegree(tone, sorted[i - 1] ?? ROOT));
}

function leaveOut(tones: readonly Degree[], draft: Draft): Result<readonly Degree[], Failure> {
  let left = tones;
  for (const { number, item } of draft.omitted) {
    const fewer = left.filter((tone) => tone.number !== number);
    const nothing = fewer.length === left.length && number !== 3 && number !== 5;
    const added = draft.added.some((tone) => tone.number === asTension(number));
    if (nothing || added) return fail('conflict', item, 'a tone of the chord to leave out');
    left = fewer;
  }
  return ok(left);
}

/** The tones of a quality, root first; or the first statement that contradicts those before it. */
export function tonesOf(items: readonly Item[]): Result<readonly Degree[], Failure> {
  const draft: Draft = { half: false, alt: false, size: 0, altered: [], added: [], omitted: [] };
  for (const [index, item] of items.entries()) {
    const failure = say(draft, item, items[index - 1], items[index + 1]);
    if (failure) return { ok: false, error: failure };
  }
  return leaveOut(inOrder(namedTones(allTones(draft))), draft);
}
