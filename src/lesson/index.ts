/** What a person keeps: the workspace, its example progressions, its address and its storage. */
export { makeAddress, parseAddress, type ReadAddress } from './address.ts';
export { BEGINNING, DEFAULT_WORKSPACE } from './defaults.ts';
export { EXAMPLES, type Example } from './examples.ts';
export { ADDRESS_KEYS, type AddressKey, KEPT, type Keeping, returnedTo, sameWork } from './kept.ts';
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
  LABELS,
  type Labels,
  type Moment,
  ROUTES,
  type RouteKind,
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
