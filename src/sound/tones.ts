/** How the strings of an instrument sound, from what is known of them. */
import { type Instrument, type OpenString, openMidis } from '#neck';
import { type Midi, midi } from '#theory';
import type { StringTone } from './string.ts';

/**
 * A wound string has more mass to swing and rubs in its windings: longer, and duller for its pitch.
 * With the amplifier's filters these lie where recorded guitars do (tests/sound/recorded.test.ts).
 */
const WOUND = { sustain: 11, highs: 1.1 } as const;
const PLAIN = { sustain: 5.5, highs: 1.15 } as const;
/** Heavier strings are duller: highs shrink with each thousandth of an inch (our own, by ear of the spectrum). */
const DULLER_BY_GAUGE = 0.008;
const USUAL_PICK = 0.16;

/** The tone of a guitar's string sounding at `open` (MIDI). */
export function stringTone(string: OpenString, open: Midi): StringTone {
  const kind = string.wound ? WOUND : PLAIN;
  return {
    open,
    pickAt: USUAL_PICK,
    sustain: kind.sustain,
    highs: Math.max(0.4, kind.highs - DULLER_BY_GAUGE * string.gauge),
  };
}

/** The tones of an instrument's strings, string 1 first; a capo shortens them. */
export function tonesOf(instrument: Instrument): readonly StringTone[] {
  const opens = openMidis(instrument);
  return instrument.strings.map((string, i) =>
    stringTone(string, midi((opens[i] ?? 0) + instrument.capo)),
  );
}
