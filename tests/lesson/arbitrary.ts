import fc from 'fast-check';
import { LABELS, ROUTES, SPACINGS, SPELLINGS, THEMES, type Workspace } from '#lesson';
import { makeInstrument, makeSpan } from '#neck';
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

/** Workspaces as they can come about; the cursor is on the first beat, which every chart has. */
export const workspaces: fc.Arbitrary<Workspace> = fc.record(
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
    ],
  },
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
};
