/** What the reading says of the other forms and of what the hand lacks; fetched after the page stands. */
import {
  bassBeyondHand,
  type FormAtHand,
  type FormTie,
  formWithoutGrip,
  type Reading,
  sameGripAs,
} from '#neck';
import { makeDegree, makeNoteName } from '#theory';
import { formName } from './form-text.ts';
import { type Beside, numberWord } from './words.ts';

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

const DECIDED: Readonly<Record<FormTie['by'], string>> = {
  whole: 'it is a part of this one',
  narrow: 'this one needs no stretch in itself',
  near: 'this one lies nearer',
  usual: 'this one is the more usual',
};

/** Why this form and not another of which the hand has as much. */
function tieSentence(reading: Reading): string {
  const { tie } = reading;
  if (!tie || sameGripAs(reading)?.form === tie.form) return '';
  return `The ${formName(tie.form)} form has as much; ${DECIDED[tie.by]}`;
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
  const name = `The ${formName(most.form)} form`;
  return same ? `${name} is the same ${count} places` : `${name} shares ${count} of them`;
}

/** The sentences of a reading that go beyond its form and its tones. */
export const besideInWords = (reading: Reading): Beside => ({
  bass: withoutBass(reading),
  tie: tieSentence(reading),
  noGrip: noGripSentence(reading),
  colours: coloursSentence(reading),
  overlap: overlapSentence(reading),
});
