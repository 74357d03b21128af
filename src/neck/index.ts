/** The neck: instruments, places, reach, forms and grips, and the reading under the hand. */
export {
  bestAtHand,
  copyAt,
  formsAlongNeck,
  formsAtHand,
  type Hand,
  nearestCopy,
} from './at-hand.ts';
export {
  BEND_MODELS,
  type BendLimits,
  type BendModel,
  DEFAULT_BEND_LIMITS,
} from './bend-limits.ts';
export {
  BEND_STEPS,
  type Bend,
  type BendQuery,
  type BendSteps,
  bendsAtHand,
  EASES,
  type Ease,
  easeOf,
  reachedByBends,
} from './bends.ts';
export {
  bassBeyondHand,
  besideShape,
  formWithoutGrip,
  isBeyondSpan,
  keptOfShape,
  positionForAll,
  rootExtreme,
  sameGripAs,
} from './beside.ts';
export { type ComparedPlace, type CompareWhat, compareReadings } from './comparing.ts';
export { type Connection, connectionsBetween } from './connections.ts';
export { type Demands, demandsOf } from './demands.ts';
export {
  checkFingering,
  type FingeringErrorCode,
  fretsIn,
  makeFingering,
  parseFingering,
} from './fingering-text.ts';
export { type Frets, fingeringOf } from './fingers.ts';
export { formsOf, lowestAnchor } from './forms.ts';
export {
  type FormPlace,
  FRETS_BEHIND,
  formPlaces,
  gripsOf,
  makeGripText,
  positionOf,
} from './grips.ts';
export {
  type FieldError,
  type InstrumentSpec,
  LIMITS,
  makeInstrument,
  makeSpan,
  makeTuning,
  parseTuning,
  STANDARD_GUITAR,
  STANDARD_TUNING,
  specOf,
} from './instrument.ts';
export { ownForm, withOwnForms } from './own-forms.ts';
export { fret, midiAtPlace, millimetres, openMidis, samePlace, stringNumber } from './places.ts';
export {
  DEFAULT_SPAN,
  distanceBetween,
  distanceTo,
  HAND_FRETS,
  reachByFret,
  spanLength,
  stretchLimits,
} from './reach.ts';
export { readNeck } from './reading.ts';
export { formReason } from './reason.ts';
export { rivalAtHand } from './rival.ts';
export { type RouteTerms, type Stop, stopsOf } from './route-cost.ts';
export { DEFAULT_WEIGHTS, type RouteWeights } from './route-weights.ts';
export {
  advanceRoute,
  beginRoute,
  layersOf,
  moveCost,
  type Pin,
  planRoute,
  type Route,
  type RouteError,
  type RouteLayer,
  type RoutePlan,
  type RouteQuery,
  type RouteWish,
  routesOf,
  stopCost,
  WAYS_KEPT,
} from './routes.ts';
export {
  type BendWork,
  bendAngle,
  bendWork,
  bentFrequency,
  bentTension,
  densityOf,
  mechanicsOf,
  type StringMechanics,
} from './string-model.ts';
export { type NamedTuning, TUNINGS } from './tunings.ts';
export { type Turned, type TurnedString, turnChord, turnForm } from './turning.ts';
export { TURNS, type Turn } from './turns.ts';
export type * from './types.ts';
export { KINDS, REACHES } from './types.ts';
export { mutedWithin } from './why.ts';
