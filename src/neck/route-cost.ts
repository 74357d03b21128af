import type { Chord } from '#theory';
import { type FormPlace, formPlaces, gripWidth } from './grips.ts';
import { distanceTo, spanLength } from './reach.ts';
import type { Form, Grip, Instrument, Span } from './types.ts';

/** What a player would rather avoid; every weight is in millimetres of hand movement that it equals. */
export interface RouteWeights {
  /** One millimetre of moving the hand. */
  readonly shift: number;
  /** One millimetre that a grip is wider than four fifths of the player's span. */
  readonly stretch: number;
  /** One finger held down, and one barre. */
  readonly finger: number;
  readonly barre: number;
  /** A form that is seldom used up the neck: once for the C form, twice for the G form. */
  readonly unusual: number;
  /** One millimetre away from where the hand was asked to be. */
  readonly away: number;
  /** A form other than the one to be carried. */
  readonly otherForm: number;
}

export const DEFAULT_WEIGHTS: RouteWeights = {
  shift: 1,
  stretch: 1,
  finger: 2,
  barre: 5,
  unusual: 14,
  away: 0.6,
  otherForm: 400,
};

/** A form of one chord at one place, as a stop of a route. */
export interface Stop {
  readonly form: Form;
  readonly anchor: number;
  readonly grip: Grip;
  /** Fret under the index finger. */
  readonly position: number;
  /** Distance of that fret from the nut. */
  readonly millimetres: number;
  /** What holding it costs by itself. */
  readonly effort: number;
}

/** D, A and E before C, C before G up the neck (common practice). */
const unusualness = (form: string, anchor: number): number =>
  anchor === 0 ? 0 : form === 'G' ? 2 : form === 'C' ? 1 : 0;

const COMFORTABLE_SHARE = 0.8;

function effortOf(place: FormPlace, grip: Grip, terms: RouteTerms): number {
  const { instrument, span, weights } = terms;
  const comfortable = COMFORTABLE_SHARE * spanLength(span, instrument.scale);
  const beyond = Math.max(0, gripWidth(grip, instrument) - comfortable);
  const fingers = new Set(grip.tones.flatMap((tone) => tone.finger ?? [])).size;
  const rare = unusualness(place.form.name, place.anchor - instrument.capo);
  return (
    beyond * weights.stretch +
    fingers * weights.finger +
    grip.barres.length * weights.barre +
    rare * weights.unusual
  );
}

export interface RouteTerms {
  readonly instrument: Instrument;
  readonly span: Span;
  readonly weights: RouteWeights;
}

/** Every way to hold a chord, as stops. */
export function stopsOf(chord: Chord, terms: RouteTerms): readonly Stop[] {
  return formPlaces(chord, terms.instrument).flatMap((place) => {
    if (place.grip === undefined) return [];
    return [
      {
        form: place.form,
        anchor: place.anchor,
        grip: place.grip,
        position: place.position,
        millimetres: distanceTo(terms.instrument.scale, place.position),
        effort: effortOf(place, place.grip, terms),
      },
    ];
  });
}
