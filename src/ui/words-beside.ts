/** What the reading says of the other forms and of what the hand lacks; fetched after the page stands. */
import {
  bassBeyondHand,
  type FormAtHand,
  type FormRival,
  formWithoutGrip,
  type Reading,
  sameGripAs,
} from '#neck';
import { makeDegree, makeNoteName } from '#theory';
import { formName } from './form-text.ts';
import { type Beside, capital, numberWord, share } from './words.ts';

function withoutBass(reading: Reading): string {
  const bass = bassBeyondHand(reading);
  return bass ? `, without the bass ${makeNoteName(bass.pitch, 'sign')} under the hand` : '';
}

function noGripSentence(reading: Reading): string {
  const form = formWithoutGrip(reading);
  return form === undefined
    ? ''
    : `The ${formName(form.form)} form lies here, but no hand can grip it`;
}

function coloursSentence({ tones }: Reading): string {
  const words = tones
    .filter(({ kind, reach }) => kind === 'colour' && (reach === 'hand' || reach === 'open'))
    .map(({ degree, pitch }) => `${makeDegree(degree, 'sign')} ${makeNoteName(pitch, 'sign')}`);
  return words.length === 0 ? '' : `Colours under the hand: ${[...new Set(words)].join(', ')}`;
}

const HAS = {
  whole: 'has as much; it is a part of this one',
  narrow: 'has as much; this one needs no stretch in itself',
  near: 'has as much; this one lies nearer',
  usual: 'has as much; this one is the more usual',
} as const;

/** What the form that comes next has, and why that is not better. */
function rivalHas(at: FormAtHand, by: Exclude<FormRival['by'], 'alone'>): string {
  if (at.under === 0) return 'is only a stretch away';
  switch (by) {
    case 'share':
      return `has a smaller share, ${share(at)}`;
    case 'stretch':
      return `has ${share(at)}, but less with a stretch`;
    case 'part':
      return `has ${share(at)}, but is only a part of another`;
    default:
      return HAS[by];
  }
}

/** Why this form and not another. */
function rivalSentence(reading: Reading): string {
  const { rival } = reading;
  if (!rival || sameGripAs(reading)?.form === rival.at.form) return '';
  if (rival.by === 'alone') return 'No other form lies under the hand';
  return `The ${formName(rival.at.form)} form ${rivalHas(rival.at, rival.by)}`;
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
  const belong = most.shared.length === 1 ? 'belongs' : 'belong';
  return `${capital(count)} of these places ${belong} to the ${name} form too`;
}

/** The sentences of a reading that go beyond its form and its tones. */
export const besideInWords = (reading: Reading): Beside => ({
  bass: withoutBass(reading),
  rival: rivalSentence(reading),
  noGrip: noGripSentence(reading),
  colours: coloursSentence(reading),
  overlap: overlapSentence(reading),
});
