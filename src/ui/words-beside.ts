/** What the reading says of the other forms and of what the hand lacks; fetched after the page stands. */
import {
  bassBeyondHand,
  besideShape,
  type FormAtHand,
  type FormRival,
  formReason,
  formWithoutGrip,
  type GripTone,
  type Hand,
  isBeyondSpan,
  keptOfShape,
  positionForAll,
  type Reading,
  rivalAtHand,
  rootExtreme,
  sameGripAs,
} from '#neck';
import { makeDegree, makeNoteName } from '#theory';
import { formName, stringsInWords } from './form-text.ts';
import { roman } from './roman.ts';
import { whyInWords } from './why-words.ts';
import { type Beside, counted, numberWord } from './words.ts';

function withoutBass(reading: Reading): string {
  const bass = bassBeyondHand(reading);
  return bass
    ? `, but not its bass ${makeNoteName(bass.pitch, 'sign')} on string ${bass.string}`
    : '';
}

const tooWide = (reading: Reading, hand: Hand): string =>
  isBeyondSpan(reading.chosen, hand) ? ', its grip wider than your span' : '';

function noGripSentence(reading: Reading): string {
  const form = formWithoutGrip(reading);
  return form === undefined
    ? ''
    : `The ${formName(form.form)} form lies here, but has no grip for this chord`;
}

function coloursSentence({ tones }: Reading): string {
  const words = tones
    .filter(({ kind, reach }) => kind === 'colour' && (reach === 'hand' || reach === 'open'))
    .map(({ degree, pitch }) => `${makeDegree(degree, 'sign')} ${makeNoteName(pitch, 'sign')}`);
  return words.length === 0 ? '' : `Colours under the hand: ${[...new Set(words)].join(', ')}`;
}

/** What decides where the hand has as much of the other, or more. */
const DECIDED = {
  narrow: 'wider than four frets',
  near: 'its first finger lies further off',
  clean: 'a string muted in it',
  usual: 'its form is less usual',
} as const;

const moreStretched = ({ stretched }: FormAtHand): string =>
  stretched === 0 ? '' : `, ${numberWord(stretched)} more stretched`;

/** Places of a grip that the hand lacks without a stretch. */
const lackOf = ({ under, of }: FormAtHand): number => of - under;

/** Where the hand has no fewer places of the other form, or lacks no more of them, the share tells. */
const smallerShare = (best: FormAtHand | undefined, at: FormAtHand): string =>
  best && (lackOf(at) <= lackOf(best) || at.under >= best.under) ? ', the smaller share' : '';

/** `as much`, where the hand has the same share of both. */
const hasOf = (at: FormAtHand, best: FormAtHand | undefined): string =>
  best && at.under * best.of === best.under * at.of ? 'as much under the hand' : counted(at);

/** What no stretch reaches of a form of which no less lies under the hand. */
const outOfReach = ({ of, under, stretched }: FormAtHand): string =>
  of === under + stretched
    ? 'less with a stretch'
    : `${numberWord(of - under - stretched)} out of reach`;

/** How much the hand has of the form that comes second, and why that is not more. */
function rivalHas({ at, by, within }: FormRival, best: FormAtHand | undefined): string {
  if (at.under === 0) return 'nothing of it without a stretch';
  switch (by) {
    case 'share':
      return counted(at) + moreStretched(at) + smallerShare(best, at);
    case 'part':
    case 'whole':
      return `only a part of ${wholeInWords(within, best)}`;
    case 'alone':
      return '';
    case 'stretch':
      return `${hasOf(at, best)}${moreStretched(at)}, but ${outOfReach(at)}`;
    default:
      return `${hasOf(at, best)}, but ${DECIDED[by]}`;
  }
}

const wholeInWords = (within: FormRival['within'], best: FormAtHand | undefined): string => {
  if (within === undefined) return 'another form';
  return within === best?.form ? 'this one' : `the ${formName(within)} form`;
};

const onStrings = (tones: readonly GripTone[]): string =>
  tones
    .map(
      ({ degree, string }, i) =>
        `${makeDegree(degree, 'sign')} on ${i === 0 ? 'string ' : ''}${string}`,
    )
    .join(', ');

const listed = (told: string, tones: readonly GripTone[]): string =>
  tones.length === 0 ? '' : `, ${told}: ${onStrings(tones)}`;

/** What is like the open shape where none of it is left but the root. */
const LEFT = { highest: 'no fret higher', lowest: 'no fret lower', root: 'nothing else' } as const;

/** What else a grip has in common with its shape than the root, where that is little. */
function keptWords(reading: Reading): string {
  const kept = keptOfShape(reading);
  const form = reading.chosen?.form;
  if (!kept || !form) return '';
  const what = kept.length > 0 ? onStrings(kept) : LEFT[rootExtreme(reading) ?? 'root'];
  return `, ${what} as in ${formName(form)}`;
}

/** Why the form is called so, as a sentence begins. */
function whySentence(reading: Reading, { instrument }: Hand): string {
  const { chosen } = reading;
  const words = chosen ? whyInWords(chosen, formReason(chosen, instrument)) : '';
  return words.charAt(0).toUpperCase() + words.slice(1) + keptWords(reading);
}

/** Where the grip is not the plain open shape. */
function changedWords(reading: Reading): string {
  const { changed, added, silent } = besideShape(reading);
  const rests = silent.length === 0 ? '' : `, ${stringsInWords(silent)} left out`;
  return listed('changed', changed) + listed('added', added) + rests;
}

/** Where else the hand would have it all. */
function wholeSentence(reading: Reading, hand: Hand): string {
  const position = positionForAll(reading, hand);
  return position === undefined ? '' : `Position ${roman(position)} has all of it`;
}

/** What would come first where a form was asked for. */
function bestSentence({ forms: [best] }: Reading): string {
  if (!best || best.under + best.stretched === 0) return '';
  return `Best here is the ${formName(best.form)} form, ${counted(best)}${moreStretched(best)}`;
}

/** Why this form and not another; where it was asked for, which one would come first. */
function rivalSentence(reading: Reading, hand: Hand): string {
  const { chord, chosen, forms } = reading;
  if (chosen !== forms[0]) return bestSentence(reading);
  const rival = rivalAtHand(chord, hand);
  if (!rival || sameGripAs(reading)?.form === rival.at.form) return '';
  if (rival.by === 'alone') return 'No other form lies under the hand';
  const has = rivalHas(rival, forms[0]);
  const wide =
    isBeyondSpan(rival.at, hand) && rival.by !== 'narrow' ? ', its grip wider than your span' : '';
  return `Second best: the ${formName(rival.at.form)} form, ${has}${wide}`;
}

function overlapSentence(reading: Reading): string {
  const same = sameGripAs(reading);
  const most =
    same ??
    reading.chosen?.overlaps.reduce<FormAtHand['overlaps'][number] | undefined>(
      (best, overlap) => (overlap.shared.length > (best?.shared.length ?? 0) ? overlap : best),
      undefined,
    );
  if (!most) return '';
  const count = numberWord(most.shared.length);
  const name = formName(most.form);
  if (same) return `The ${name} form is the same ${count} places`;
  return `Overlaps the ${name} form in ${count} ${most.shared.length === 1 ? 'place' : 'places'}`;
}

/** The sentences of a reading that go beyond its form and its tones. */
export function besideInWords(reading: Reading, hand: Hand): Beside {
  return {
    lacks: withoutBass(reading) + tooWide(reading, hand),
    why: whySentence(reading, hand),
    changed: changedWords(reading),
    rival: [rivalSentence(reading, hand), noGripSentence(reading)].filter(Boolean).join('. '),
    whole: wholeSentence(reading, hand),
    colours: coloursSentence(reading),
    overlap: overlapSentence(reading),
  };
}
