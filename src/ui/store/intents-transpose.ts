/** Intents that move the whole progression to another key. */
import type { PinnedForm, Workspace } from '#lesson';
import { type Key, pitchClassOf, stepKey, transposeText } from '#theory';
import { patched, step } from './state.ts';
import type { AppState } from './types.ts';

/** Pinned forms go the same way as their chords, or an octave further where the neck ends. */
function movedPins({ pins, instrument }: Workspace, semitones: number): readonly PinnedForm[] {
  const { capo, frets } = instrument;
  return pins.map((pin) => {
    const anchors = [0, 12, -12].map((octave) => pin.anchor + semitones + octave);
    const anchor = anchors.find((a) => a >= capo && a <= frets - 3) ?? pin.anchor;
    return { ...pin, anchor };
  });
}

/** Half steps from one key to another, the shorter way: -6 to 5. */
const distance = (from: Key, to: Key): number =>
  ((pitchClassOf(to.tonic) - pitchClassOf(from.tonic) + 18) % 12) - 6;

/** Transposes the whole progression to a key, spelled as that key has it. The hand stays. */
export function transposeTo(state: AppState, to: Key): AppState {
  const { workspace, study } = state;
  if (!study.key) return state;
  const progression = transposeText(workspace.progression, study.key, to);
  if (progression === workspace.progression) return state;
  const pins = movedPins(workspace, distance(study.key, to));
  const moved = patched(workspace, { progression, ...(pins.length > 0 && { pins }) });
  return step(state, workspace.key ? patched(moved, { key: to }) : moved);
}

/** Transposes the whole progression by semitones, to the key with the fewest accidentals. */
export function transposeBy(state: AppState, semitones: number): AppState {
  const { key } = state.study;
  return key && semitones !== 0 ? transposeTo(state, stepKey(key, semitones)) : state;
}
