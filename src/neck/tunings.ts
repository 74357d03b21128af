/** A tuning to pick from; `text` as `parseTuning` reads it. Names and pitches are common practice. */
export interface NamedTuning {
  readonly name: string;
  readonly text: string;
}

export const TUNINGS: readonly NamedTuning[] = [
  { name: 'Standard', text: 'E2-A2-D3-G3-B3-E4' },
  { name: 'Half step down', text: 'Eb2-Ab2-Db3-Gb3-Bb3-Eb4' },
  { name: 'Whole step down', text: 'D2-G2-C3-F3-A3-D4' },
  { name: 'Drop D', text: 'D2-A2-D3-G3-B3-E4' },
  { name: 'D A D G A D', text: 'D2-A2-D3-G3-A3-D4' },
  { name: 'Open G', text: 'D2-G2-D3-G3-B3-D4' },
  { name: 'Open D', text: 'D2-A2-D3-F#3-A3-D4' },
  { name: 'Open E', text: 'E2-B2-E3-G#3-B3-E4' },
  { name: 'All fourths', text: 'E2-A2-D3-G3-C4-F4' },
  { name: 'Baritone', text: 'B1-E2-A2-D3-F#3-B3' },
  { name: 'Seven strings', text: 'B1-E2-A2-D3-G3-B3-E4' },
  { name: 'Eight strings', text: 'F#1-B1-E2-A2-D3-G3-B3-E4' },
  { name: 'Four-string bass', text: 'E1-A1-D2-G2' },
  { name: 'Five-string bass', text: 'B0-E1-A1-D2-G2' },
];
