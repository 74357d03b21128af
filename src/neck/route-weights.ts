/** What a player would rather avoid; every weight is in millimetres of hand movement that it equals. */
export interface RouteWeights {
  /** One millimetre of moving the hand. */
  readonly shift: number;
  /** One millimetre that a grip is wider than four fifths of the player's span. */
  readonly stretch: number;
  /** One finger held down, and one barre. */
  readonly finger: number;
  readonly barre: number;
  /** A form that is seldom used up the neck: once for the C form, twice for the G form. */
  readonly unusual: number;
  /** One millimetre away from where the hand was asked to be. */
  readonly away: number;
  /** A form other than the one to be carried. */
  readonly otherForm: number;
}

export const DEFAULT_WEIGHTS: RouteWeights = {
  shift: 1,
  stretch: 1,
  finger: 2,
  barre: 5,
  unusual: 14,
  away: 0.6,
  otherForm: 400,
};
