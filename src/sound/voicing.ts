/** Where the comp holds a chord for which nothing is planned. */
import {
  fret,
  type Grip,
  gripsOf,
  type Instrument,
  openMidis,
  type Place,
  positionOf,
  stringNumber,
} from '#neck';
import { type Chord, type Degree, noteAt, pitchClassOf } from '#theory';

/** About where accompaniment lies well and does not cover a bass (common practice). */
const HOME = 5;

const nearest = (grips: readonly Grip[], position: number, capo: number): Grip | undefined => {
  const far = (grip: Grip): number => Math.abs(positionOf(grip, capo) - position);
  return grips.reduce<Grip | undefined>(
    (best, grip) => (best === undefined || far(grip) < far(best) ? grip : best),
    undefined,
  );
};

/** What makes a chord what it is, first: third and seventh, then colours, the fifth last. */
function byWeight(chord: Chord): readonly Degree[] {
  const weight = ({ number }: Degree): number =>
    [3, 7, 1].indexOf(number) === -1 ? (number === 5 ? 9 : 5) : [3, 7, 1].indexOf(number);
  return [...chord.tones].sort((a, b) => weight(a) - weight(b));
}

/** Four tones on the middle strings, each the nearest to home; for chords that no form can hold. */
function plainVoicing(chord: Chord, instrument: Instrument): readonly Place[] {
  const opens = openMidis(instrument);
  const strings = [3, 4, 2, 5].filter((string) => string <= opens.length);
  return byWeight(chord)
    .slice(0, strings.length)
    .flatMap((degree, i) => {
      const string = strings[i] ?? 3;
      const open = opens[string - 1] ?? 0;
      const tone = pitchClassOf(noteAt(chord.root, degree));
      const lowest = Math.max(instrument.capo, HOME - 3);
      const at = lowest + ((((tone - open - lowest) % 12) + 12) % 12);
      return at <= instrument.frets ? [{ string: stringNumber(string), fret: fret(at) }] : [];
    });
}

/** The places of a chord's grip nearest to a position (fret under the index finger), or a plain voicing. */
export function voicingOf(
  chord: Chord,
  instrument: Instrument,
  position: number = HOME,
): readonly Place[] {
  const grip = nearest(gripsOf(chord, instrument), position, instrument.capo);
  return grip?.tones ?? plainVoicing(chord, instrument);
}
