/** Routes, bends, own forms and comparisons out of plain JSON. */
import {
  BEND_MODELS,
  type BendLimits,
  FRETS_BEHIND,
  LIMITS,
  type RouteWeights,
  TURNS,
} from '#neck';
import { makeAt, parseAt, parseChord } from '#theory';
import { isJson, listOf, objectOf, oneOf, type Reader, text, valueIn, whole } from './json.ts';
import { checkBendLimits, type WEIGHT_NAMES, WEIGHT_RANGES } from './limits.ts';
import { LONGEST_FORM_NAME, MOST_OWN_FORMS, ownFormOf } from './own-forms.ts';
import type { Comparison, OwnForm, PinnedForm, RouteGoal } from './types.ts';

/** UTF-16 units; far more than eight strings need. */
export const LONGEST_FINGERING = 100;
const LONGEST_SYMBOL = 100;
const MOST_PINS = 10_000;
const MOST_BARS = 100_000;

const lastFret = LIMITS.frets.max;

const number: Reader<number> = (value) => (typeof value === 'number' ? value : undefined);

const weight = (name: (typeof WEIGHT_NAMES)[number]): Reader<number> => {
  const { min, max } = WEIGHT_RANGES[name];
  return (value) => (typeof value === 'number' && value >= min && value <= max ? value : undefined);
};

export const weights: Reader<RouteWeights> = objectOf({
  shift: weight('shift'),
  stretch: weight('stretch'),
  finger: weight('finger'),
  barre: weight('barre'),
  unusual: weight('unusual'),
  away: weight('away'),
  otherForm: weight('otherForm'),
});

const effort = objectOf({ force: number, travel: number });

const uncheckedLimits: Reader<BendLimits> = objectOf({
  model: oneOf(BEND_MODELS),
  comfortable: effort,
  hard: effort,
  woundFactor: number,
  unsupportedFactor: number,
});

export const bendLimits: Reader<BendLimits> = (value) => {
  const read = uncheckedLimits(value);
  return read && valueIn(checkBendLimits(read));
};

const formName = text(LONGEST_FORM_NAME);

const at: Reader<string> = (value) => {
  const moment = typeof value === 'string' ? valueIn(parseAt(value)) : undefined;
  return moment && makeAt(moment);
};

export const pins: Reader<readonly PinnedForm[]> = listOf(
  objectOf({ at, form: formName, anchor: whole(-FRETS_BEHIND, lastFret) }),
  MOST_PINS,
);

export const routeTo: Reader<RouteGoal> = objectOf({
  position: whole(1, lastFret),
  bar: whole(1, MOST_BARS),
});

const ownForm: Reader<OwnForm> = (value) => {
  const read = objectOf<OwnForm>({
    name: formName,
    fingering: text(LONGEST_FINGERING),
    symbol: text(LONGEST_SYMBOL),
    tuning: text(LONGEST_FINGERING),
  })(value);
  return read && ownFormOf(read) ? read : undefined;
};

export const ownForms: Reader<readonly OwnForm[]> = listOf(ownForm, MOST_OWN_FORMS);

export const turn: Reader<string> = (value) => TURNS.find(({ name }) => name === value)?.name;

export const compare: Reader<Comparison> = (value) => {
  if (!isJson(value)) return undefined;
  if (value['kind'] === 'form') {
    const form = formName(value['form']);
    return form === undefined ? undefined : { kind: 'form', form };
  }
  const symbol = text(LONGEST_SYMBOL)(value['symbol']);
  const fits = value['kind'] === 'chord' && symbol !== undefined && parseChord(symbol).ok;
  return fits ? { kind: 'chord', symbol } : undefined;
};
