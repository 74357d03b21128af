/** What the settings of routes and bends may be. */
import type { BendLimits, RouteWeights } from '#neck';
import { err, ok, type Result } from '#theory';

export const WEIGHT_NAMES = [
  'shift',
  'stretch',
  'finger',
  'barre',
  'unusual',
  'away',
  'otherForm',
] as const satisfies readonly (keyof RouteWeights)[];
export type WeightName = keyof RouteWeights;

export const BEND_LIMIT_NAMES = [
  'comfortableForce',
  'comfortableTravel',
  'hardForce',
  'hardTravel',
  'woundFactor',
  'unsupportedFactor',
] as const;
export type BendLimitName = (typeof BEND_LIMIT_NAMES)[number];

export interface Range {
  readonly min: number;
  readonly max: number;
}

/** Millimetres of hand movement that each is worth. */
export const WEIGHT_RANGES: Readonly<Record<WeightName, Range>> = {
  shift: { min: 0, max: 10 },
  stretch: { min: 0, max: 10 },
  finger: { min: 0, max: 100 },
  barre: { min: 0, max: 200 },
  unusual: { min: 0, max: 200 },
  away: { min: 0, max: 10 },
  otherForm: { min: 0, max: 2000 },
};

/** Newtons, millimetres, and how many times as stiff. */
export const BEND_LIMIT_RANGES: Readonly<Record<BendLimitName, Range>> = {
  comfortableForce: { min: 1, max: 200 },
  comfortableTravel: { min: 1, max: 100 },
  hardForce: { min: 1, max: 200 },
  hardTravel: { min: 1, max: 100 },
  woundFactor: { min: 1, max: 10 },
  unsupportedFactor: { min: 1, max: 10 },
};

/** `range`: not a number within its range. `order`: what is comfortable would be beyond what is hard. */
export interface LimitError {
  readonly code: 'range' | 'order';
  readonly found: string;
  readonly expected: string;
}

function checkRange(value: number, { min, max }: Range): Result<number, LimitError> {
  if (value >= min && value <= max) return ok(value);
  return err({ code: 'range', found: String(value), expected: `a number from ${min} to ${max}` });
}

/** The weights with one of them changed; the same weights if it is that already. */
export function withWeight(
  weights: RouteWeights,
  name: WeightName,
  value: number,
): Result<RouteWeights, LimitError> {
  const checked = checkRange(value, WEIGHT_RANGES[name]);
  if (!checked.ok) return checked;
  return ok(weights[name] === value ? weights : { ...weights, [name]: value });
}

/** One of the limits by its name: newtons, millimetres or times. */
export const bendLimit = (limits: BendLimits, name: BendLimitName): number =>
  ({
    comfortableForce: limits.comfortable.force,
    comfortableTravel: limits.comfortable.travel,
    hardForce: limits.hard.force,
    hardTravel: limits.hard.travel,
    woundFactor: limits.woundFactor,
    unsupportedFactor: limits.unsupportedFactor,
  })[name];

function replaced(limits: BendLimits, name: BendLimitName, value: number): BendLimits {
  const { comfortable, hard } = limits;
  switch (name) {
    case 'comfortableForce':
      return { ...limits, comfortable: { ...comfortable, force: value } };
    case 'comfortableTravel':
      return { ...limits, comfortable: { ...comfortable, travel: value } };
    case 'hardForce':
      return { ...limits, hard: { ...hard, force: value } };
    case 'hardTravel':
      return { ...limits, hard: { ...hard, travel: value } };
    default:
      return { ...limits, [name]: value };
  }
}

function checkOrder(limits: BendLimits, found: number): Result<BendLimits, LimitError> {
  const { comfortable, hard } = limits;
  if (comfortable.force <= hard.force && comfortable.travel <= hard.travel) return ok(limits);
  const expected = 'no more for a comfortable bend than for a hard one';
  return err({ code: 'order', found: String(found), expected });
}

/** The limits with one of them changed; the same limits if it is that already. */
export function withBendLimit(
  limits: BendLimits,
  name: BendLimitName,
  value: number,
): Result<BendLimits, LimitError> {
  const checked = checkRange(value, BEND_LIMIT_RANGES[name]);
  if (!checked.ok) return checked;
  if (bendLimit(limits, name) === value) return ok(limits);
  return checkOrder(replaced(limits, name, value), value);
}

/** Limits that are all within their ranges and in order. */
export function checkBendLimits(limits: BendLimits): Result<BendLimits, LimitError> {
  for (const name of BEND_LIMIT_NAMES) {
    const checked = checkRange(bendLimit(limits, name), BEND_LIMIT_RANGES[name]);
    if (!checked.ok) return checked;
  }
  return checkOrder(limits, limits.comfortable.force);
}
