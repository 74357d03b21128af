/** Tones heard one after the other. */
import { type Instrument, midiAtPlace, type Place } from '#neck';
import { type Struck, struckAt } from '#sound';

/** Seconds from tone to tone: slow enough to sing along. */
const STEP_SECONDS = 0.42;

/** Places struck one by one, from the lowest pitch up. */
export function struckInTurn(
  places: readonly Place[],
  instrument: Instrument,
  semitones: number,
): readonly Struck[] {
  const pitch = (place: Place): number => midiAtPlace(instrument, place) ?? 0;
  const upwards = [...places].sort((a, b) => pitch(a) - pitch(b));
  return upwards.flatMap((place, i) =>
    struckAt([place], instrument, semitones).map((struck) => ({
      ...struck,
      note: { ...struck.note, start: i * STEP_SECONDS },
    })),
  );
}
