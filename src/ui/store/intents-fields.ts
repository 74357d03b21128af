/** Intents of the fields for instrument and hand. A refused value leaves the last good one. */
import { DEFAULT_WORKSPACE, type Workspace, withInstrument } from '#lesson';
import {
  type FieldError,
  formsOf,
  type Instrument,
  type InstrumentSpec,
  makeInstrument,
  makeSpan,
  specOf,
} from '#neck';
import { accept, patched, refuse, step, without } from './state.ts';
import type { AppState } from './types.ts';

const inWords = ({ found, expected }: FieldError): string => `“${found}”: expected ${expected}`;

/** The hand stays on the neck, and a form that the tuning does not have is not asked for. */
function fitted(workspace: Workspace, instrument: Instrument): Workspace {
  const position = Math.max(instrument.capo + 1, Math.min(workspace.position, instrument.frets));
  const on = withInstrument(patched(workspace, { position }), instrument);
  const known = formsOf(on.instrument).some((form) => form.name === on.form);
  return on.form === undefined || known ? on : without(on, 'form');
}

const sameSpec = (a: Instrument, b: Instrument): boolean =>
  JSON.stringify(specOf(a)) === JSON.stringify(specOf(b));

/** Much is remembered for each instrument, so an equal one is not put in its place. */
function equipped(state: AppState, instrument: Instrument, run: string): AppState {
  const { workspace } = state;
  if (sameSpec(instrument, workspace.instrument)) return state;
  return step(state, fitted(workspace, instrument), `instrument.${run}`);
}

type Field = FieldError['field'];

function change(state: AppState, field: Field, patch: InstrumentSpec): AppState {
  const made = makeInstrument({ ...specOf(state.workspace.instrument), ...patch });
  if (!made.ok) return refuse(state, field, inWords(made.error));
  return equipped(accept(state, field), made.value, field);
}

/** A tuning as typed, lowest string first: `E2-A2-D3-G3-B3-E4`. It brings its usual gauges. */
export function setTuning(state: AppState, text: string): AppState {
  const { gauges: _otherStrings, ...rest } = specOf(state.workspace.instrument);
  const made = makeInstrument({ ...rest, tuning: text });
  if (!made.ok) return refuse(state, 'tuning', inWords(made.error));
  const same = specOf(made.value).tuning === specOf(state.workspace.instrument).tuning;
  const accepted = accept(state, 'tuning');
  return same ? accepted : equipped(accepted, made.value, 'tuning');
}

/** Number of frets, 12 to 27. */
export const setFrets = (state: AppState, frets: number): AppState =>
  change(state, 'frets', { frets });

/** Fret the capo lies behind, 0 = none. */
export const setCapo = (state: AppState, capo: number): AppState => change(state, 'capo', { capo });

/** Scale length in millimetres, nut to bridge. */
export const setScale = (state: AppState, scale: number): AppState =>
  change(state, 'scale', { scale });

/** Gauges in thousandths of an inch, string 1 first. */
export const setGauges = (state: AppState, gauges: readonly number[]): AppState =>
  change(state, 'gauges', { gauges });

/** Mirrors the neck, or not. */
export function setLeftHanded(state: AppState, leftHanded: boolean): AppState {
  const instrument = patched(state.workspace.instrument, { leftHanded });
  return step(state, patched(state.workspace, { instrument }));
}

/** "Index at fret `index`, my little finger holds fret `little`." */
export function setSpan(state: AppState, index: number, little: number): AppState {
  const made = makeSpan(index, little);
  if (!made.ok) return refuse(state, 'span', inWords(made.error));
  const { span } = state.workspace;
  const same = span.index === index && span.little === little;
  const accepted = accept(state, 'span');
  return same ? accepted : step(accepted, patched(state.workspace, { span: made.value }), 'span');
}

/** The standard guitar again, and the span of a first visit. */
export function resetInstrument(state: AppState): AppState {
  const { instrument, span } = DEFAULT_WORKSPACE;
  const fields = ['tuning', 'frets', 'capo', 'scale', 'gauges', 'span'] as const;
  const cleared = fields.reduce(accept, state);
  const { workspace } = state;
  const standard = sameSpec(workspace.instrument, instrument) ? workspace.instrument : instrument;
  return step(cleared, patched(fitted(workspace, standard), { span }));
}
