import { describe, expect, it } from 'vitest';
import { type Grip, gripsOf, type Instrument, type InstrumentSpec, midiAtPlace } from '#neck';
import { noteAt, pitchClass, pitchClassOf } from '#theory';
import { chord, instrument } from './support.ts';

const QUALITIES =
  ' m 7 maj7 m7 6 sus2 sus4 add9 9 maj9 m9 13 6/9 dim7 m7b5 aug 7b9 7#9 7alt 9sus4 m(maj7) 5 /E /G'.split(
    ' ',
  );
const SYMBOLS = ['C', 'F#', 'A', 'Eb', 'D', 'B'].flatMap((root) =>
  QUALITIES.map((quality) => root + quality),
);

const INSTRUMENTS: readonly (readonly [string, InstrumentSpec])[] = [
  ['in D A D G A D', { tuning: 'D2-A2-D3-G3-A3-D4' }],
  ['in an open G', { tuning: 'D2-G2-D3-G3-B3-D4' }],
  ['with the lowest string down', { tuning: 'D2-A2-D3-G3-B3-E4' }],
  ['with seven strings', { tuning: 'B1-E2-A2-D3-G3-B3-E4' }],
  ['with four strings', { tuning: 'G3-C4-E4-A4' }],
  ['with a capo at III', { capo: 3 }],
  ['with a capo at V and 19 frets', { capo: 5, frets: 19 }],
];

/** What is wrong with a grip; '' for nothing. */
function wrongWith(grip: Grip, symbol: string, on: Instrument): string {
  const { root } = chord(symbol);
  const wrong = grip.tones.find((tone) => {
    const sounds = pitchClass(midiAtPlace(on, tone) ?? 0);
    const open = tone.fret === on.capo;
    const off = tone.fret < on.capo || tone.fret > on.frets;
    return (
      off ||
      open === (tone.finger !== undefined) ||
      sounds !== pitchClassOf(noteAt(root, tone.degree))
    );
  });
  return wrong ? `${symbol} ${grip.form.name} ${grip.anchor}: ${wrong.string}:${wrong.fret}` : '';
}

describe('grips on other instruments', () => {
  it.each(INSTRUMENTS)(
    '%s sound what they say, with a finger on all but open strings',
    (_, spec) => {
      const on = instrument(spec);
      const grips = SYMBOLS.flatMap((symbol) =>
        gripsOf(chord(symbol), on).map((grip) => ({ grip, symbol })),
      );
      expect(grips.length).toBeGreaterThan(500);
      expect(grips.map(({ grip, symbol }) => wrongWith(grip, symbol, on)).filter(Boolean)).toEqual(
        [],
      );
    },
  );
});
