import type { Chord } from '#theory';
import { type FormPlace, formPlaces, gripWidth } from './grips.ts';
import { distanceTo, spanLength } from './reach.ts';
import type { RouteWeights } from './route-weights.ts';
import type { Form, Grip, Instrument, Span } from './types.ts';

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
