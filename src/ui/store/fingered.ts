/** The fingering that was typed or put down: what it is called and what each string sounds. */
import type { Workspace } from '#lesson';
import {
  checkFingering,
  demandsOf,
  type Frets,
  fingeringOf,
  fret,
  fretsIn,
  type Instrument,
  stringNumber,
} from '#neck';
import {
  type Chord,
  midi,
  midiOf,
  type NameReading,
  nameChords,
  noteAt,
  pitchAt,
  pitchClass,
  pitchClassOf,
  plainName,
  type TextError,
} from '#theory';
import type { Fingered, FingeredPlace, Study } from './types.ts';

/** Names beyond these are too far-fetched to be of use. */
const MOST_NAMES = 12;

function midisOf(frets: Frets, { strings }: Instrument): readonly number[] {
  return frets.flatMap((f, i) => {
    const string = strings[i];
    return f === null || string === undefined ? [] : [midiOf(string.pitch) + f];
  });
}

function namesOf(frets: Frets, instrument: Instrument): readonly NameReading[] {
  const midis = midisOf(frets, instrument);
  if (midis.length === 0) return [];
  const bass = pitchClass(Math.min(...midis));
  return nameChords(midis.map(pitchClass), bass).slice(0, MOST_NAMES);
}

function soundOf(chord: Chord | undefined, sounds: number) {
  const pc = pitchClass(sounds);
  const degree =
    chord && demandsOf(chord).byOffset[pitchClass(pc - pitchClassOf(chord.root))]?.degree;
  const name = chord && degree ? noteAt(chord.root, degree) : plainName(pc);
  return { pitch: pitchAt(name, midi(sounds)), ...(degree && { degree }) };
}

function placesOf(
  frets: Frets,
  chord: Chord | undefined,
  { strings, capo }: Instrument,
): readonly FingeredPlace[] {
  const fingers = fingeringOf(frets, capo)?.fingers;
  return frets.flatMap((f, i) => {
    const open = strings[i];
    if (f === null || open === undefined) return [];
    const finger = fingers?.[i];
    const place = { string: stringNumber(i + 1), fret: fret(f) };
    const sound = soundOf(chord, midiOf(open.pitch) + f);
    return [{ ...place, ...sound, ...(finger !== undefined && { finger }) }];
  });
}

const errorInWords = ({ found, expected }: TextError<string>): string =>
  `“${found}”: expected ${expected.join(' or ')}`;

/** The strings as far as they are typed, from the lowest; none where that cannot be read. */
function soFar(text: string, instrument: Instrument): Frets {
  const silent = /[\s,\-–]/.test(text.trim()) ? '-x' : 'x';
  for (let rest = 1; rest <= instrument.strings.length; rest += 1) {
    const read = fretsIn(text + silent.repeat(rest), instrument);
    if (read.ok) return read.value;
  }
  return [];
}

function afresh(
  text: string,
  frets: Frets,
  instrument: Instrument,
  names = namesOf(frets, instrument),
): Fingered {
  const checked = checkFingering(frets, instrument, text);
  return {
    text,
    frets,
    names,
    chosen: names.length > 0 ? 0 : -1,
    places: placesOf(frets, names[0]?.chord, instrument),
    ...(!checked.ok && { error: errorInWords(checked.error) }),
  };
}

const sameNeck = (a: Instrument, b: Instrument): boolean =>
  a.strings === b.strings && a.frets === b.frets && a.capo === b.capo;

/**
 * The fingering of a workspace; the one before if it is the same. Of what is half typed the strings
 * so far are shown, so that text, neck and names always agree; what no hand could hold is named and
 * says so.
 */
export function fingeredOf(
  { fingering: text, instrument }: Workspace,
  before: Study | undefined,
): Fingered | undefined {
  if (text.trim() === '') return undefined;
  const last = before && sameNeck(before.of.instrument, instrument) ? before.fingered : undefined;
  if (last?.text === text) return last;
  const read = fretsIn(text, instrument);
  if (read.ok) return afresh(text, read.value, instrument);
  const frets = soFar(text, instrument);
  // The root may be on its way still: a name without one would be far-fetched.
  const names = namesOf(frets, instrument).filter(({ rootless }) => !rootless);
  const half = afresh(text, frets, instrument, names);
  return { ...half, error: errorInWords(read.error) };
}

/** The fingering with another of its names chosen; one that does not exist changes nothing. */
export function naming(fingered: Fingered, index: number, instrument: Instrument): Fingered {
  const name = fingered.names[index];
  if (!name || index === fingered.chosen) return fingered;
  return { ...fingered, chosen: index, places: placesOf(fingered.frets, name.chord, instrument) };
}
