/** Lines: single notes in time. */
export {
  barAt,
  barsInARow,
  harmoniesOf,
  loopApart,
  type Played,
  type PlayedBar,
  type PlayedSlot,
  playedOf,
  type Stretch,
  slotAt,
  tickOfSlot,
} from './played.ts';
export {
  connectionNotes,
  type Plan,
  type Planned,
  singlesOf,
  strumOf,
  studyNotes,
} from './study.ts';
export {
  isTempo,
  makeTempoMap,
  secondsAt,
  secondsPerTick,
  TEMPO_RANGE,
  type TempoChange,
  type TempoMap,
  tickAt,
} from './tempo.ts';
export type { Attack, BendPoint, LineNote, Playing, StudyName } from './types.ts';
export { ATTACKS, STUDIES } from './types.ts';
