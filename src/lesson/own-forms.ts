/** Forms that a player put down, and the instrument that has them. */
import {
  type Form,
  fretsIn,
  type Instrument,
  LIMITS,
  makeInstrument,
  makeTuning,
  ownForm,
  withOwnForms,
} from '#neck';
import { parseChord } from '#theory';
import type { OwnForm, Workspace } from './types.ts';

/** UTF-16 units. */
export const LONGEST_FORM_NAME = 30;
export const MOST_OWN_FORMS = 200;

const made = new WeakMap<OwnForm, { readonly form: Form | undefined }>();

/** A form is counted from its lowest fret, so that neither capo nor number of frets has a say. */
function formOf({ name, fingering, symbol, tuning }: OwnForm): Form | undefined {
  const instrument = makeInstrument({ tuning, frets: LIMITS.frets.max });
  const chord = parseChord(symbol);
  if (!instrument.ok || !chord.ok) return undefined;
  const frets = fretsIn(fingering, instrument.value);
  return frets.ok ? ownForm(name, frets.value, chord.value, instrument.value) : undefined;
}

/** The form that was put down; undefined where its parts do not go together. Made once. */
export function ownFormOf(own: OwnForm): Form | undefined {
  const known = made.get(own) ?? { form: formOf(own) };
  made.set(own, known);
  return known.form;
}

/** The tuning of an instrument, as own forms name it. */
export const tuningOf = (instrument: Instrument): string =>
  makeTuning(instrument.strings.map((string) => string.pitch));

/** Those own forms that belong to an instrument's tuning. */
export function formsFor(instrument: Instrument, ownForms: readonly OwnForm[]): readonly Form[] {
  const tuning = tuningOf(instrument);
  return ownForms.filter((own) => own.tuning === tuning).flatMap((own) => ownFormOf(own) ?? []);
}

const sameForms = (a: readonly Form[], b: readonly Form[]): boolean =>
  a.length === b.length && a.every((form, i) => form === b[i]);

function equipped(instrument: Instrument, forms: readonly Form[]): Instrument {
  if (sameForms(instrument.ownForms ?? [], forms)) return instrument;
  if (forms.length > 0) return withOwnForms(instrument, forms);
  const { ownForms: _none, ...bare } = instrument;
  return bare;
}

/**
 * The workspace on an instrument that has those of its own forms which belong to the tuning. Much is
 * remembered for each instrument, so an instrument that has them already is taken as it is.
 */
export function withInstrument(workspace: Workspace, instrument: Instrument): Workspace {
  const own = workspace.ownForms.length + (instrument.ownForms?.length ?? 0);
  const fitting =
    own === 0 ? instrument : equipped(instrument, formsFor(instrument, workspace.ownForms));
  return fitting === workspace.instrument ? workspace : { ...workspace, instrument: fitting };
}
