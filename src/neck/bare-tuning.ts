import { midiOf, type NoteName, type Pitch, parseNoteName } from '#theory';

const STANDARD_MIDIS = [40, 45, 50, 55, 59, 64] as const;

/** The octave that brings a bare letter nearest to the standard pitch of its string. */
function nearestOctave(name: NoteName, target: number): Pitch {
  const candidates = [1, 2, 3, 4, 5].map((octave): Pitch => ({ ...name, octave }));
  return candidates.reduce((best, pitch) =>
    Math.abs(midiOf(pitch) - target) < Math.abs(midiOf(best) - target) ? pitch : best,
  );
}

/** Six note letters without octaves (`DADGAD`, `E A D G B E`, `EbAbDbGbBbEb`), string 1 first. */
export function parseBareTuning(text: string): readonly Pitch[] | undefined {
  const words = text.replace(/[\s,\-–]+/g, '').match(/[A-G][#b♯♭]*/g) ?? [];
  if (words.join('') !== text.replace(/[\s,\-–]+/g, '') || words.length !== 6) return undefined;
  const pitches = words.flatMap((word, i) => {
    const name = parseNoteName(word);
    return name.ok ? [nearestOctave(name.value, STANDARD_MIDIS[i] ?? 40)] : [];
  });
  return pitches.length === 6 ? pitches.reverse() : undefined;
}
