/** What is heard, as pure computation: strings, parts, time. The browser's side is `#sound/browser`. */
export {
  AHEAD_SECONDS,
  type Ahead,
  aheadOf,
  changeAhead,
  type Given,
  scheduleAhead,
} from './ahead.ts';
export { AMPS, type Amp, type AmpName, amplify, makeAmp } from './amp.ts';
export { type BackingQuery, countIn, makePerformance } from './backing.ts';
export {
  type Band,
  BLOCK,
  bandDelay,
  beginRun,
  makeBand,
  renderBand,
  schedule,
  scheduleRun,
  setMix,
  silence,
  takeBack,
} from './band.ts';
export { BASS_TONES } from './bass-tones.ts';
export { type Caution, HEARING, niosh } from './cautions.ts';
export { type Drive, driveInPlace, makeDrive } from './drive.ts';
export { DRUMS, type DrumName, renderDrum } from './drums.ts';
export { FEEL_ROWS, type Feel, type Group } from './feels.ts';
export { CEILING, limiterDelay, limitInPlace, makeLimiter } from './limiter.ts';
export { loopBeyond, loopWithin } from './loop.ts';
export { gainOfLevel, gainOfPart, onlyParts, withMaster, withPart } from './mix.ts';
export {
  eventsOf,
  type HitEvent,
  lineEvents,
  type NoteEvent,
  type Owned,
  type PartEvent,
  type Performance,
} from './performance.ts';
export {
  advanceRender,
  bandEventOf,
  beginRender,
  type Rendering,
  type RenderQuery,
  renderPerformance,
} from './render.ts';
export { frameOf, renderString } from './render-string.ts';
export {
  makeLoop,
  parseLoop,
  parseTempo,
  spanOfLoop,
  tempoIn,
  withLoop,
  withOnce,
  withRise,
  withSetting,
  withTempoHeard,
} from './settings.ts';
export {
  DEFAULT_MIX,
  DEFAULT_SETTINGS,
  type LoopBars,
  type Rise,
  SETTING_RANGES,
  type TransportSettings,
} from './setup.ts';
export { struckAt } from './strike.ts';
export { delayFor, type Loop, loopFor, pitchOf, type StringTone } from './string.ts';
export { type Taps, tappedTempo, withTap } from './tap.ts';
export { stringTone, tonesOf } from './tones.ts';
export {
  type Advanced,
  advance,
  advanceUntil,
  type Mark,
  type Position,
  positionAt,
  startTransport,
  type Timed,
  type Transport,
  tickOfBar,
  WAKE_SECONDS,
  WINDOW_SECONDS,
  withPerformance,
  withSettings,
} from './transport.ts';
export {
  type BandEvent,
  FEELS,
  type FeelName,
  GUITAR_SOUNDS,
  type GuitarSound,
  type Mix,
  PARTS,
  type PartMix,
  type PartName,
  type StringNote,
  type Struck,
} from './types.ts';
export { makeVoice, renderVoice, startNote, toneAt, type Voice } from './voice.ts';
export { voicingOf } from './voicing.ts';
export { makeWav } from './wav.ts';
