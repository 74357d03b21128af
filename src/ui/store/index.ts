/** The state of the workspace and what a person can do to it. */
export { createStudyStore, openStudyStore, type StudyStore } from './app.ts';
export { StudyStoreContext, useIntents, useStudy, useStudyStore } from './context.ts';
export type { Intents } from './intents.ts';
export { chordOf, sameChord } from './lane.ts';
export { lensesComeBy, whenLenses } from './lenses.ts';
export { goingOn } from './material.ts';
export { type Page, type PageEvent, pageOf } from './page.ts';
export { fieldError, fieldNoticeId, holding, patched, stateOf } from './state.ts';
export { readingAt, studyOf } from './study.ts';
export {
  type AppState,
  type Compared,
  FIELDS,
  type FieldName,
  type Fingered,
  type FingeredPlace,
  type History,
  type LaneCell,
  type Notice,
  PANELS,
  type Panel,
  type RouteStep,
  type RouteStudy,
  type Study,
  type TurnedForm,
} from './types.ts';
export { type Cell, createCell } from './zustand.ts';
