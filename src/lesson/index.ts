/** What a person keeps: the workspace, its example progressions, its address and its storage. */
export { makeAddress, parseAddress, type ReadAddress } from './address.ts';
export { BEGINNING, DEFAULT_SOUND, DEFAULT_WORKSPACE } from './defaults.ts';
export { EXAMPLES } from './examples.ts';
export { type Example, FIRST_EXAMPLE } from './first-example.ts';
export { LONGEST_FINGERING } from './json-material.ts';
export { ADDRESS_KEYS, type AddressKey, KEPT, type Keeping, returnedTo, sameWork } from './kept.ts';
export {
  BEND_LIMIT_NAMES,
  BEND_LIMIT_RANGES,
  type BendLimitName,
  bendLimit,
  type LimitError,
  type Range,
  WEIGHT_NAMES,
  WEIGHT_RANGES,
  type WeightName,
  withBendLimit,
  withWeight,
} from './limits.ts';
export {
  formsFor,
  LONGEST_FORM_NAME,
  MOST_OWN_FORMS,
  ownFormOf,
  tuningOf,
  withInstrument,
} from './own-forms.ts';
export { usualGoal, withoutText } from './route-goal.ts';
export {
  ASIDE_KEY,
  type Kept,
  loadKept,
  MOST_ASIDE,
  type StorageError,
  type StorageLike,
  saveAside,
  saveWork,
  UNREAD_KEY,
  WORK_KEY,
} from './storage.ts';
export {
  type Comparison,
  LABELS,
  type Labels,
  LENSES,
  type Lens,
  type Moment,
  type OwnForm,
  PEDALS,
  type Pedal,
  type PinnedForm,
  ROUTES,
  type RouteGoal,
  type RouteKind,
  type SoundSetup,
  SPACINGS,
  SPELLINGS,
  type Spacing,
  type Spelling,
  THEMES,
  type Theme,
  type Workspace,
} from './types.ts';
export {
  makeWorkspace,
  parseWorkspace,
  type ReadWorkspace,
  WORKSPACE_VERSION,
  type WorkspaceError,
} from './workspace-json.ts';
