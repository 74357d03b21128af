/** A workspace as JSON, for keeping. */
import {
  type Instrument,
  type InstrumentSpec,
  makeInstrument,
  makeSpan,
  type Span,
  specOf,
} from '#neck';
import {
  type Degree,
  err,
  type Key,
  MODES,
  makeDegree,
  makeNoteName,
  ok,
  parseDegree,
  parseNoteName,
  type Result,
} from '#theory';
import { DEFAULT_WORKSPACE } from './defaults.ts';
import { flag, isJson, type Json, oneOf, type Reader, text, valueIn, whole } from './json.ts';
import * as material from './json-material.ts';
import { sound } from './json-sound.ts';
import { KEPT } from './kept.ts';
import { withInstrument } from './own-forms.ts';
import {
  LABELS,
  LENSES,
  type Moment,
  ROUTES,
  SPACINGS,
  SPELLINGS,
  THEMES,
  type Workspace,
} from './types.ts';

export const WORKSPACE_VERSION = 1;
/** UTF-16 units; far beyond any chart, short of what makes a page unusable. */
export const LONGEST_PROGRESSION = 500_000;

/** Why nothing of a kept workspace could be used. */
export interface WorkspaceError {
  readonly code: 'not-an-object' | 'version';
  readonly found: string;
  readonly expected: string;
}

/** A workspace that was read; the parts in `refused` made no sense and are as on a first visit. */
export interface ReadWorkspace {
  readonly workspace: Workspace;
  readonly refused: readonly (keyof Workspace)[];
}

const moment: Reader<Moment> = (value) => {
  if (!isJson(value)) return undefined;
  const { bar, beat } = value;
  const fits =
    Number.isInteger(bar) && Number(bar) >= 1 && Number.isFinite(beat) && Number(beat) >= 1;
  return fits ? { bar: Number(bar), beat: Number(beat) } : undefined;
};

const span: Reader<Span> = (value) =>
  isJson(value) ? valueIn(makeSpan(Number(value['index']), Number(value['little']))) : undefined;

const degrees: Reader<readonly Degree[]> = (value) => {
  if (!Array.isArray(value)) return undefined;
  const read = value.map((word) => valueIn(parseDegree(String(word))));
  return read.every((degree) => degree !== undefined) ? read : undefined;
};

const key: Reader<Key> = (value) => {
  if (!isJson(value)) return undefined;
  const tonic = valueIn(parseNoteName(String(value['tonic'])));
  const mode = oneOf(MODES)(value['mode']);
  return tonic && mode ? { tonic, mode } : undefined;
};

const isSpec = (value: Json): value is Json & InstrumentSpec =>
  ['frets', 'capo', 'scale'].every((part) => typeof value[part] === 'number') &&
  typeof value['tuning'] === 'string' &&
  typeof value['leftHanded'] === 'boolean' &&
  Array.isArray(value['gauges']) &&
  value['gauges'].every((gauge) => typeof gauge === 'number');

const instrument: Reader<Instrument> = (value) =>
  isJson(value) && isSpec(value) ? valueIn(makeInstrument(value)) : undefined;

const READERS: { readonly [Part in keyof Required<Workspace>]: Reader<Required<Workspace>[Part]> } =
  {
    progression: text(LONGEST_PROGRESSION),
    at: moment,
    position: whole(1),
    form: text(64),
    instrument,
    span,
    show: degrees,
    key,
    spelling: oneOf(SPELLINGS),
    labels: oneOf(LABELS),
    spacing: oneOf(SPACINGS),
    theme: oneOf(THEMES),
    shortcuts: flag,
    route: oneOf(ROUTES),
    routeTo: material.routeTo,
    weights: material.weights,
    pins: material.pins,
    bendLimits: material.bendLimits,
    ownForms: material.ownForms,
    lens: oneOf(LENSES),
    turn: material.turn,
    compare: material.compare,
    fingering: text(material.LONGEST_FINGERING),
    sound,
    cautioned: flag,
  };

const PARTS = Object.keys(READERS) as (keyof Workspace)[];

function withPart<Part extends keyof Workspace>(
  { workspace, refused }: ReadWorkspace,
  part: Part,
  value: unknown,
): ReadWorkspace {
  if (value === undefined) return { workspace, refused };
  const read = READERS[part](value);
  if (read === undefined) return { workspace, refused: [...refused, part] };
  return { workspace: { ...workspace, [part]: read }, refused };
}

/** The hand cannot stand beyond the last fret, whichever of the two was kept wrongly. */
function withinNeck(read: ReadWorkspace): ReadWorkspace {
  const { workspace, refused } = read;
  if (workspace.position <= workspace.instrument.frets) return read;
  const { position } = DEFAULT_WORKSPACE;
  return { workspace: { ...workspace, position }, refused: [...refused, 'position'] };
}

/**
 * Reads a kept workspace, part by part: what is absent is as on a first visit, what makes no sense
 * too, and is named. Error codes: `not-an-object`, `version` (made by a later program).
 */
export function parseWorkspace(json: unknown): Result<ReadWorkspace, WorkspaceError> {
  if (!isJson(json)) {
    return err({ code: 'not-an-object', found: typeof json, expected: 'an object' });
  }
  if (json['version'] !== WORKSPACE_VERSION) {
    const found = String(json['version']);
    return err({ code: 'version', found, expected: `version ${WORKSPACE_VERSION}` });
  }
  const first: ReadWorkspace = { workspace: DEFAULT_WORKSPACE, refused: [] };
  const read = withinNeck(PARTS.reduce((soFar, part) => withPart(soFar, part, json[part]), first));
  return ok({ ...read, workspace: withInstrument(read.workspace, read.workspace.instrument) });
}

const keyJson = ({ tonic, mode }: Key): Json => ({ tonic: makeNoteName(tonic), mode });

/** The workspace as plain JSON; `parseWorkspace` gives an equal one back. */
export function makeWorkspace(workspace: Workspace): Json {
  const all: Readonly<Record<keyof Workspace, unknown>> = {
    ...workspace,
    form: workspace.form,
    route: workspace.route,
    routeTo: workspace.routeTo,
    turn: workspace.turn,
    compare: workspace.compare,
    instrument: specOf(workspace.instrument),
    show: workspace.show.map((degree) => makeDegree(degree)),
    key: workspace.key && keyJson(workspace.key),
  };
  const kept = PARTS.filter((part) => KEPT[part].storage && all[part] !== undefined);
  const parts = kept.map((part) => [part, all[part]] as const);
  return { version: WORKSPACE_VERSION, ...Object.fromEntries(parts) };
}
