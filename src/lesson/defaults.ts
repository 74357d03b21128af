/** What a first visit finds. */
import { DEFAULT_BEND_LIMITS, DEFAULT_WEIGHTS, STANDARD_GUITAR } from '#neck';
import { DEFAULT_MIX, DEFAULT_SETTINGS } from '#sound';
import { FIRST_EXAMPLE } from './first-example.ts';
import type { Moment, SoundSetup, Workspace } from './types.ts';

/** The first beat of the first bar. */
export const BEGINNING: Moment = { bar: 1, beat: 1 };

/** Single notes over a straight backing: one hears the form and the chord at once. */
export const DEFAULT_SOUND: SoundSetup = {
  study: 'singles',
  feel: 'straight',
  touch: true,
  pedal: 'plays',
  transport: DEFAULT_SETTINGS,
  mix: DEFAULT_MIX,
};

/** Our own example, the cursor on its first chord, the hand where it serves most of it. */
export const DEFAULT_WORKSPACE: Workspace = {
  progression: FIRST_EXAMPLE.progression,
  at: BEGINNING,
  position: FIRST_EXAMPLE.position,
  instrument: STANDARD_GUITAR,
  span: { index: 5, little: 9 },
  show: [],
  spelling: 'exact',
  labels: 'degrees',
  spacing: 'true',
  theme: 'system',
  shortcuts: true,
  weights: DEFAULT_WEIGHTS,
  pins: [],
  bendLimits: DEFAULT_BEND_LIMITS,
  ownForms: [],
  lens: 'none',
  fingering: '',
  sound: DEFAULT_SOUND,
  cautioned: false,
};
