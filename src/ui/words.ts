/** What the neck shows, in words: plain data in, text out. */
import { type FormAtHand, mutedWithin, type Reading, type Tone } from '#neck';
import {
  type Chord,
  type Degree,
  degreeOf,
  makeDegree,
  makeNoteName,
  type NoteName,
  noteAt,
  sameDegree,
  sameNote,
} from '#theory';
import { formName, stringsInWords, whereIs } from './form-text.ts';
import { roman } from './roman.ts';
import { symbolInSigns } from './words-aloud.ts';

const NUMBERS = [
  ...['none', 'one', 'two', 'three', 'four', 'five', 'six'],
  ...['seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'],
];

/** A count in words up to twelve, then in digits. */
export const numberWord = (n: number): string => NUMBERS[n] ?? String(n);

/** What stands under the cursor. */
export type Standing =
  | { readonly kind: 'empty' }
  | { readonly kind: 'silent' }
  | { readonly kind: 'unread'; readonly found: string; readonly suggestion?: string }
  | { readonly kind: 'chord' };

/** The next other chord, the form that serves it where the hand is, and how it is come to. */
export interface NextInWords {
  readonly symbol: string;
  readonly form: FormAtHand | undefined;
  readonly words?: string | undefined;
}

/** What there is to say of the other forms and of what the hand lacks; '' where there is nothing. */
export interface Beside {
  /** What the hand lacks of the form; goes on its sentence. */
  readonly lacks: string;
  /** Why the form is called so, with what little is left of the open shape. */
  readonly why: string;
  /** Where the grip is not the plain open shape; goes on behind it. */
  readonly changed: string;
  readonly rival: string;
  readonly colours: string;
  /** Where the hand would have all of the form. */
  readonly whole: string;
  readonly overlap: string;
}

/** What the account is made of. `reading` is of the chord on the neck, `symbol` as typed. */
export interface AccountParts {
  readonly standing: Standing;
  readonly symbol: string;
  readonly position: number;
  readonly reading: Reading | undefined;
  readonly next: NextInWords | undefined;
  /** What is fetched after the page stands. */
  readonly beside?: Beside | undefined;
  /** What is drawn over the neck, in sentences; it goes before the degrees. */
  readonly material?: readonly string[];
}

/** Long enough for what matters, short enough to be listened to at every move of the cursor. */
export const LONGEST_ACCOUNT = 350;

/** The neighbour is on the neck too, so that its sentence is the first to go: some five lines on a telephone. */
const LONGEST_WITH_NEIGHBOUR = 320;

export const counted = ({ under, of }: FormAtHand): string =>
  `${numberWord(under)} of ${numberWord(of)}`;

const share = (form: FormAtHand): string =>
  `${counted(form)} ${form.of === 1 ? 'place' : 'places'}`;

function without(form: FormAtHand): string {
  const missing = form.grip?.missing ?? [];
  if (missing.length === 0) return '';
  return `, without ${missing.map((degree) => makeDegree(degree, 'sign')).join(', ')}`;
}

function muted({ grip }: FormAtHand): string {
  const strings = grip ? mutedWithin(grip) : [];
  return strings.length === 0 ? '' : `, ${stringsInWords(strings)} muted`;
}

/** What a stretch gives of a form. */
const stretchInWords = ({ under, stretched }: FormAtHand): string =>
  stretched === 0 ? '' : `, ${numberWord(stretched)} ${under === 0 ? '' : 'more '}stretched`;

function formSentence(form: FormAtHand | undefined, lacks = ''): string {
  if (!form) return 'no form of it lies near the hand';
  const name = formName(form.form);
  if (!form.grip)
    return `no playable grip: the tones are shown in the nearest form, ${name} ${whereIs(form)}`;
  const more = stretchInWords(form);
  if (form.under === 0) return `the ${name} form lies away from the hand, ${whereIs(form)}${more}`;
  const partly = form.under * 2 <= form.of;
  const out = form.of - form.under - form.stretched;
  // Where it lies only partly the rest goes without saying.
  const beyond = partly || !out ? '' : `, ${numberWord(out)} out of reach`;
  const mostly = partly ? ' only partly' : form.under < form.of ? ' mostly' : '';
  return `the ${name} form lies${mostly} under the hand, ${share(form)}${more}${beyond}${lacks}${without(form)}${muted(form)}`;
}

type Nearness = 'near' | 'beside' | 'stretch' | 'far';

const NEARNESS = {
  hand: 'near',
  open: 'near',
  stretch: 'stretch',
  bend: 'far',
  out: 'far',
} as const;
const ORDER: readonly Nearness[] = ['near', 'beside', 'stretch', 'far'];

interface DegreeAtHand {
  readonly degree: Degree;
  readonly name: NoteName;
  readonly nearness: Nearness;
  readonly isBass: boolean;
}

function nearestOf(tones: readonly Tone[]): Nearness {
  const found = new Set<Nearness>(tones.map((tone) => NEARNESS[tone.reach]));
  return ORDER.find((nearness) => found.has(nearness)) ?? 'far';
}

/** The chord's degrees, and that of a bass that does not belong to it. */
function degreesOf({ chord }: Reading): readonly Degree[] {
  const bass = bassOf(chord);
  const foreign = bass && !chord.tones.some((tone) => sameDegree(tone, bass));
  return foreign ? [...chord.tones, bass] : chord.tones;
}

function bassOf({ root, bass, tones }: Chord): Degree | undefined {
  return bass && (tones.find((tone) => sameNote(noteAt(root, tone), bass)) ?? degreeOf(root, bass));
}

function degreesAtHand(reading: Reading): readonly DegreeAtHand[] {
  const bass = bassOf(reading.chord);
  const missing = reading.chosen?.grip?.missing ?? [];
  return degreesOf(reading).map((degree) => {
    const tones = reading.tones.filter((tone) => sameDegree(tone.degree, degree));
    const name = tones[0]?.pitch ?? noteAt(reading.chord.root, degree);
    const isBass = bass !== undefined && sameDegree(degree, bass);
    const nearest = nearestOf(tones);
    const beside = nearest === 'near' && missing.some((one) => sameDegree(one, degree));
    return { degree, name, nearness: beside ? 'beside' : nearest, isBass };
  });
}

const inWords = ({ degree, name, isBass }: DegreeAtHand): string =>
  `${isBass ? 'bass ' : ''}${makeDegree(degree, 'sign')} ${makeNoteName(name, 'sign')}`;

const GROUP_WORDS: Readonly<Record<Nearness, string>> = {
  near: '',
  beside: 'also under the hand ',
  stretch: 'a stretch away ',
  far: 'out of reach ',
};

/** `brief`: without what the form's own sentence names as left out of the grip. */
function degreesSentence(reading: Reading, brief = false): string {
  const all = degreesAtHand(reading).filter(({ nearness }) => !brief || nearness !== 'beside');
  const groups = ORDER.map((nearness) => ({
    nearness,
    words: all
      .filter((d) => d.nearness === nearness)
      .map(inWords)
      .join(', '),
  }));
  return groups
    .filter(({ words }) => words !== '')
    .map(({ nearness, words }) => GROUP_WORDS[nearness] + words)
    .join('; ');
}

const nextHead = ({ next }: AccountParts): string =>
  next ? `${next.words ?? 'Next'}: ${symbolInSigns(next.symbol)}` : '';

function nextSentence(parts: AccountParts): string {
  const { next } = parts;
  const head = nextHead(parts);
  if (!next?.form?.grip) return head;
  if (next.form.under === 0)
    return `${head}, the ${formName(next.form.form)} form, away from the hand`;
  return `${head}, the ${formName(next.form.form)} form, ${counted(next.form)}`;
}

/** Joins sentences, leaving out the less useful ones (the later in `extras`) until it is short enough. */
function fitted(
  first: readonly string[],
  extras: readonly string[],
  last: string,
  longest = LONGEST_ACCOUNT,
): string {
  const sentences = [...first, ...extras, last].filter((sentence) => sentence !== '');
  const text = sentences.map((sentence) => `${sentence}.`).join(' ');
  if (text.length <= longest || extras.length === 0) return text;
  return fitted(first, extras.slice(0, -1), last);
}

function standingSentence({ standing, symbol }: AccountParts): string {
  if (standing.kind === 'unread') {
    const meant = standing.suggestion ? `; perhaps ${symbolInSigns(standing.suggestion)}` : '';
    const stays = symbol === '' ? '' : `. Still on the neck: ${symbolInSigns(symbol)}`;
    return `“${standing.found}” cannot be read${meant}${stays}`;
  }
  return symbolInSigns(symbol);
}

/** The reading in words, and the part of it that says why; '' where nothing does. */
export interface Account {
  readonly account: string;
  readonly reason: string;
}

const plain = (account: string): Account => ({ account, reason: '' });

function accountOfReading(parts: AccountParts, reading: Reading, head: string): Account {
  const { beside, material = [] } = parts;
  const { why = '', changed = '', rival, colours = '', whole = '', overlap = '' } = beside ?? {};
  const degrees = degreesSentence(reading);
  const reasons = [[why + changed, rival], [why, rival], [why]].map((said) =>
    said.filter(Boolean).join('. '),
  );
  const next = nextSentence(parts);
  const [reason = ''] = reasons;
  const most = [reason, degrees, colours, whole];
  const drawn = material.length > 0;
  const rest = drawn ? [...most, overlap] : [overlap];
  let account = fitted([head, ...(drawn ? material : most)], rest, next, LONGEST_WITH_NEIGHBOUR);
  // Each shorter telling is made only where the one before is too long: this runs at every move.
  const shorter = drawn
    ? []
    : reasons.flatMap((one) => [false, true].map((brief) => ({ one, brief })));
  for (const { one, brief } of shorter) {
    if (account.length <= LONGEST_ACCOUNT) break;
    const said = brief ? degreesSentence(reading, true) : degrees;
    account = fitted([head, one, said], [whole, colours], nextHead(parts));
  }
  return { account, reason: reasons.find((reason) => account.includes(reason)) ?? '' };
}

/**
 * The reading in words, most useful first: chord, position, form and how much of it lies under the
 * hand, why it is called so and was chosen, every degree with its note, what is a stretch away, the
 * next chord and the form that serves it at this position. At most about `LONGEST_ACCOUNT`
 * characters for any usual chord.
 */
export function accountOf(parts: AccountParts): Account {
  const { standing, reading, position, beside, material = [] } = parts;
  if (standing.kind === 'empty') {
    return plain(fitted(['No chord yet. Type a progression, such as Dm7 G7 C'], material, ''));
  }
  const next = nextSentence(parts);
  const place = `position ${roman(position)}`;
  if (standing.kind === 'silent')
    return plain(fitted([`N.C., no chord, ${place}`], material, next));
  const subject = standingSentence(parts);
  if (!reading) return plain(fitted([subject], material, next));
  const form = formSentence(reading.chosen, beside?.lacks);
  return accountOfReading(parts, reading, `${subject}, ${place}: ${form}`);
}

export { degreeAloud, noteAloud, symbolAloud, symbolInSigns } from './words-aloud.ts';
