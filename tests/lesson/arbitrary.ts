import fc from 'fast-check';
import {
  type Comparison,
  DEFAULT_SOUND,
  LABELS,
  LENSES,
  type OwnForm,
  PEDALS,
  ROUTES,
  SPACINGS,
  SPELLINGS,
  THEMES,
  WEIGHT_RANGES,
  type Workspace,
  withInstrument,
} from '#lesson';
import { STUDIES } from '#line';
import {
  BEND_MODELS,
  DEFAULT_BEND_LIMITS,
  DEFAULT_WEIGHTS,
  makeInstrument,
  makeSpan,
  TURNS,
} from '#neck';
import { FEELS, GUITAR_SOUNDS, SETTING_RANGES } from '#sound';
import { LETTERS, MODES, type Result } from '#theory';

/** The value of a result that the test knows to be good. */
export function value<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(`not ok: ${JSON.stringify(result.error)}`);
  return result.value;
}

const alter = fc.integer({ min: -2, max: 2 });
const degree = fc.record({ number: fc.integer({ min: 1, max: 13 }), alter });
const tonic = fc.record({ letter: fc.constantFrom(...LETTERS), alter });

const TUNINGS = ['E2-A2-D3-G3-B3-E4', 'D2-A2-D3-G3-A3-D4', 'E1-A1-D2-G2', 'B1-E2-A2-D3-G3-B3-E4'];

const instrument = fc
  .record({
    tuning: fc.constantFrom(...TUNINGS),
    frets: fc.integer({ min: 12, max: 27 }),
    capo: fc.integer({ min: 0, max: 11 }),
    scale: fc.integer({ min: 300, max: 1000 }),
    leftHanded: fc.boolean(),
  })
  .map((spec) => value(makeInstrument(spec)));

const span = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 3, max: 7 }))
  .map(([index, more]) => value(makeSpan(index, index + more)));

const progression = fc.oneof(
  fc.constantFrom('Dm7 G7 C', '| A | % | D/F# A |\n[B]\n| N.C. | E7#9 |', ''),
  fc.string({ unit: 'binary' }),
);

const between = ({ min, max }: { readonly min: number; readonly max: number }) =>
  fc.double({ min, max, noNaN: true }).map((n) => n + 0);

const weights = fc.record({
  shift: between(WEIGHT_RANGES.shift),
  stretch: between(WEIGHT_RANGES.stretch),
  finger: between(WEIGHT_RANGES.finger),
  barre: between(WEIGHT_RANGES.barre),
  unusual: between(WEIGHT_RANGES.unusual),
  away: between(WEIGHT_RANGES.away),
  otherForm: between(WEIGHT_RANGES.otherForm),
});

const effort = (min: number, max: number) =>
  fc.record({ force: between({ min, max }), travel: between({ min, max: max / 2 }) });

const bendLimits = fc.record({
  model: fc.constantFrom(...BEND_MODELS),
  comfortable: effort(1, 50),
  hard: effort(50, 200),
  woundFactor: between({ min: 1, max: 10 }),
  unsupportedFactor: between({ min: 1, max: 10 }),
});

const pin = fc.record({
  at: fc.constantFrom('1.1', '2.3', '17.2.5'),
  form: fc.constantFrom('C', 'E', 'shell'),
  anchor: fc.integer({ min: -2, max: 27 }),
});

/** One for a standard tuning and one for another. */
const OWN_FORMS: readonly OwnForm[] = [
  { name: 'shell', fingering: 'x5453x', symbol: 'D7', tuning: 'E2-A2-D3-G3-B3-E4' },
  { name: 'low', fingering: '555xxx', symbol: 'G5', tuning: 'D2-A2-D3-G3-A3-D4' },
];

const comparison: fc.Arbitrary<Comparison> = fc.oneof(
  fc.record({ kind: fc.constant('form' as const), form: fc.constantFrom('C', 'G') }),
  fc.record({ kind: fc.constant('chord' as const), symbol: fc.constantFrom('D9', 'Am7/G') }),
);

const routeTo = fc.record({
  position: fc.integer({ min: 1, max: 27 }),
  bar: fc.integer({ min: 1, max: 999 }),
});

const partMix = fc.record({
  level: between({ min: 0, max: 1 }),
  mute: fc.boolean(),
  solo: fc.boolean(),
});

const loopBars = fc
  .tuple(fc.integer({ min: 1, max: 99 }), fc.integer({ min: 0, max: 16 }))
  .map(([first, more]) => ({ first, last: first + more }));

const transport = fc.record(
  {
    tempo: between(SETTING_RANGES.tempo),
    share: between(SETTING_RANGES.share),
    semitones: fc.integer(SETTING_RANGES.semitones),
    countInBars: fc.integer(SETTING_RANGES.countInBars),
    once: fc.constant(true as const),
    loop: loopBars,
    rise: fc.record({
      by: between(SETTING_RANGES.by),
      every: fc.integer(SETTING_RANGES.every),
      most: between(SETTING_RANGES.tempo),
    }),
  },
  { requiredKeys: ['tempo', 'share', 'semitones', 'countInBars'] },
);

const sound = fc.record({
  study: fc.constantFrom(...STUDIES),
  feel: fc.constantFrom(...FEELS),
  touch: fc.boolean(),
  pedal: fc.constantFrom(...PEDALS),
  transport,
  mix: fc.record({
    parts: fc.record({
      line: partMix,
      comp: partMix,
      bass: partMix,
      drums: partMix,
      click: partMix,
      count: partMix,
    }),
    master: between({ min: 0, max: 1 }),
    sound: fc.constantFrom(...GUITAR_SOUNDS),
  }),
});

const parts = fc.record(
  {
    progression,
    at: fc.constant({ bar: 1, beat: 1 }),
    position: fc.integer({ min: 1, max: 12 }),
    form: fc.constantFrom('C', 'A', 'G', 'E', 'D'),
    instrument,
    span,
    show: fc.uniqueArray(degree, { selector: (d) => `${d.number} ${d.alter}`, maxLength: 4 }),
    key: fc.record({ tonic, mode: fc.constantFrom(...MODES) }),
    spelling: fc.constantFrom(...SPELLINGS),
    labels: fc.constantFrom(...LABELS),
    spacing: fc.constantFrom(...SPACINGS),
    theme: fc.constantFrom(...THEMES),
    shortcuts: fc.boolean(),
    route: fc.constantFrom(...ROUTES),
    routeTo,
    weights,
    pins: fc.uniqueArray(pin, { selector: ({ at }) => at }),
    bendLimits,
    ownForms: fc.subarray([...OWN_FORMS]),
    lens: fc.constantFrom(...LENSES),
    turn: fc.constantFrom(...TURNS.map(({ name }) => name)),
    compare: comparison,
    fingering: fc.oneof(fc.constantFrom('', 'x7678x'), fc.string({ maxLength: 40 })),
    sound,
    cautioned: fc.boolean(),
  },
  {
    requiredKeys: [
      'progression',
      'at',
      'position',
      'instrument',
      'span',
      'show',
      'spelling',
      'labels',
      'spacing',
      'theme',
      'shortcuts',
      'weights',
      'pins',
      'bendLimits',
      'ownForms',
      'lens',
      'fingering',
      'sound',
      'cautioned',
    ],
  },
);

/** Workspaces as they can come about; the cursor is on the first beat, which every chart has. */
export const workspaces: fc.Arbitrary<Workspace> = parts.map((workspace) =>
  withInstrument(workspace, workspace.instrument),
);

/** A workspace in which nothing is as on a first visit. */
export const OTHER: Required<Workspace> = {
  progression: '3/4\n| Gm | D7/F# |',
  at: { bar: 2, beat: 3 },
  position: 3,
  form: 'E',
  instrument: value(
    makeInstrument({
      tuning: 'D2-A2-D3-G3-B3-E4',
      frets: 24,
      capo: 2,
      scale: 630,
      leftHanded: true,
    }),
  ),
  span: { index: 3, little: 7 },
  show: [
    { number: 7, alter: -1 },
    { number: 9, alter: 0 },
  ],
  key: { tonic: { letter: 'G', alter: 0 }, mode: 'minor' },
  spelling: 'plain',
  labels: 'notes',
  spacing: 'even',
  theme: 'dark',
  shortcuts: false,
  route: 'stay',
  routeTo: { position: 9, bar: 2 },
  weights: { ...DEFAULT_WEIGHTS, barre: 9 },
  pins: [{ at: '1.1', form: 'E', anchor: 5 }],
  bendLimits: { ...DEFAULT_BEND_LIMITS, model: 'sounding', woundFactor: 3 },
  // Of another tuning than the instrument's: it waits.
  ownForms: [{ name: 'low', fingering: '555xxx', symbol: 'G5', tuning: 'D2-A2-D3-G3-A3-D4' }],
  lens: 'bends',
  turn: 'minor',
  compare: { kind: 'chord', symbol: 'D9' },
  fingering: 'x7678x',
  cautioned: true,
  sound: {
    ...DEFAULT_SOUND,
    feel: 'shuffle',
    transport: { ...DEFAULT_SOUND.transport, tempo: 72, loop: { first: 1, last: 2 } },
  },
};
