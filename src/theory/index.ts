/** Notes, degrees, chords, keys and progressions: pure computation, no view. */

export { makeProgression } from './chart-make.ts';
export {
  barTicks,
  beatTicks,
  COMMON_TIME,
  makeMetre,
  parseMetre,
  TICKS_PER_QUARTER,
  ticks,
} from './chart-time.ts';
export {
  barsOf,
  beatAt,
  type ChartPlace,
  makeAt,
  nextInPlay,
  type PlacedSlot,
  parseAt,
  slotAtOffset,
  slotAtPlace,
  slotsOf,
  unfold,
} from './chart-walk.ts';
export { makeChord } from './chord-make.ts';
export {
  chordSymbolParts,
  chordSymbolSlots,
  PART_ROLES,
  type PartRole,
  type SymbolPart,
} from './chord-parts.ts';
export type { ChordErrorCode } from './chord-words.ts';
export { type ChordResult, chordNotes, isSilent, parseChord } from './chords.ts';
export { type Colour, coloursFor } from './colours.ts';
export {
  compareDegrees,
  type DegreeErrorCode,
  degreeOf,
  makeDegree,
  noteAt,
  parseDegree,
  sameDegree,
  semitonesOf,
} from './degrees.ts';
export { estimateKey, type KeyEstimate, type KeyScore } from './key-estimate.ts';
export {
  type KeyErrorCode,
  keysAt,
  makeKey,
  parseKey,
  sameKey,
  scaleNotes,
  sharpsOf,
  stepKey,
} from './keys.ts';
export { type NameReading, nameChords } from './naming.ts';
export {
  type AccidentalStyle,
  frequencyOf,
  makeNoteName,
  makePitch,
  midi,
  midiOf,
  type NoteErrorCode,
  parseNoteName,
  parsePitch,
  pitchAt,
  pitchClass,
  pitchClassOf,
  plainName,
  sameNote,
} from './notes.ts';
export { parseProgression, type ReadChart } from './progression.ts';
export { err, ok, type Result, type TextError } from './result.ts';
export { makeRoman, type RomanNumeral, type RomanTarget, romanNumeral } from './roman.ts';
export { chordDictionary, type DictionaryEntry, degreeOfInterval, lookUpQuality } from './tonal.ts';
export { transposeNote, transposeText } from './transpose.ts';
export {
  type Bar,
  type Brand,
  CHART_PROBLEMS,
  type Chart,
  type ChartProblem,
  type Chord,
  type Degree,
  type Harmony,
  type Key,
  LETTERS,
  type Letter,
  type Metre,
  type Midi,
  MODES,
  type Mode,
  type NoteName,
  type Pitch,
  type PitchClass,
  type Section,
  type Slot,
  type TextSpan,
  type Ticks,
} from './types.ts';
