/**
 * Which part of the string takes up the stretch. `whole`: from nut to bridge, slipping under finger
 * and over the frets. `sounding`: only what vibrates, as if clamped at the fret. They agree at
 * fret 12; real instruments lie between.
 */
export const BEND_MODELS = ['whole', 'sounding'] as const;
export type BendModel = (typeof BEND_MODELS)[number];

/**
 * What a player calls comfortable and what hard. Force in newtons as felt (see `woundFactor`),
 * travel in millimetres at the finger; whatever is beyond `hard` is not practical.
 */
export interface BendLimits {
  readonly model: BendModel;
  readonly comfortable: { readonly force: number; readonly travel: number };
  readonly hard: { readonly force: number; readonly travel: number };
  /** Windings catch on the frets: a wound string feels so many times as stiff as the model says. */
  readonly woundFactor: number;
  /** An index finger has none behind it to help. */
  readonly unsupportedFactor: number;
}

/**
 * Set so that common practice comes out: a whole step on plain strings at fret 12 comfortable; more
 * than a half step on a wound string, or at fret 1, hard.
 */
export const DEFAULT_BEND_LIMITS: BendLimits = {
  model: 'whole',
  comfortable: { force: 12.5, travel: 21 },
  hard: { force: 30, travel: 32 },
  woundFactor: 2,
  unsupportedFactor: 2,
};
