/** Tones heard one after the other. */
import { type Instrument, midiAtPlace, type Place } from '#neck';
import { type Struck, struckAt } from '#sound';
import type { StruckGroup } from './marking.ts';

/** Seconds from tone to tone: slow enough to sing along. */
const STEP_SECONDS = 0.42;

function upwards(places: readonly Place[], instrument: Instrument): readonly Place[] {
  const pitch = (place: Place): number => midiAtPlace(instrument, place) ?? 0;
  return [...places].sort((a, b) => pitch(a) - pitch(b));
}

/** When each of the places is struck. */
export const groupsInTurn = (
  places: readonly Place[],
  instrument: Instrument,
): readonly StruckGroup[] =>
  upwards(places, instrument).map((place, i) => ({ places: [place], after: i * STEP_SECONDS }));

/** Places struck one by one, from the lowest pitch up. */
export function struckInTurn(
  places: readonly Place[],
  instrument: Instrument,
  semitones: number,
): readonly Struck[] {
  return upwards(places, instrument).flatMap((place, i) =>
    struckAt([place], instrument, semitones).map((struck) => ({
      ...struck,
      note: { ...struck.note, start: i * STEP_SECONDS },
    })),
  );
}
