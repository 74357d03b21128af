import {
  type BendQuery,
  bendsAtHand,
  connectionsBetween,
  DEFAULT_BEND_LIMITS,
  DEFAULT_WEIGHTS,
  openMidis,
  planRoute,
  type Reading,
  type ReadingQuery,
  type RouteQuery,
  readNeck,
  STANDARD_GUITAR,
} from '#neck';
import { type Chord, type Degree, nameChords, parseChord, pitchClass } from '#theory';
import { type Measure, timed } from './bench.ts';

const SYMBOLS = ['C', 'F#m7', 'Bb13', 'E7#9', 'Dm7b5', 'Abmaj9', 'G7sus4', 'C#dim7'];

/** The default span: index at fret 5, little finger at fret 9. */
const SPAN = { index: 5, little: 9 };

const chordOf = (symbol: string): Chord => {
  const chord = parseChord(symbol);
  if (!chord.ok) throw new Error(`${symbol} is not read`);
  return chord.value;
};

const CHORDS = SYMBOLS.map(chordOf);

const COLOURS: readonly Degree[] = [];

function query(chord: Chord | undefined, position: number): ReadingQuery {
  if (chord === undefined) throw new Error('no chord to read');
  const hand = { position, instrument: STANDARD_GUITAR, span: SPAN };
  return { ...hand, chord, colours: COLOURS, spelling: 'exact' };
}

/** A chord and the one after it, read where the hand is, and what is asked about them. */
interface Change {
  readonly now: Reading;
  readonly next: Reading;
  readonly reading: ReadingQuery;
  readonly bends: BendQuery;
}

function changeAt(position: number, index: number): Change {
  const reading = query(CHORDS[index % CHORDS.length], position);
  const after = query(CHORDS[(index + 1) % CHORDS.length], position);
  const bends = { ...reading, next: after.chord, limits: DEFAULT_BEND_LIMITS };
  return { now: readNeck(reading), next: readNeck(after), reading, bends };
}

const CHANGES: readonly Change[] = Array.from({ length: 12 }, (_, i) => i + 1).flatMap((position) =>
  CHORDS.map((_, index) => changeAt(position, index)),
);

const OPENS = openMidis(STANDARD_GUITAR);

const goOn = ({ now, next, bends }: Change) =>
  connectionsBetween(now, next, bendsAtHand(bends), OPENS);

const routeOf = (length: number): RouteQuery => ({
  chords: Array.from({ length }, (_, i) => CHORDS[(i * 5 + (i >> 3)) % CHORDS.length]),
  instrument: STANDARD_GUITAR,
  span: SPAN,
  weights: DEFAULT_WEIGHTS,
  wish: { kind: 'stay', position: 5 },
  pins: [],
});

/** Sounding pitch classes from the lowest on: plain, inverted, without a root, and without a name. */
const FINGERINGS = [
  [4, 8, 2, 7],
  [0, 4, 7],
  [1, 9, 4, 7],
  [6, 0, 4, 9],
  [0, 1, 2],
].map((classes) => classes.map(pitchClass));

const inTurn = <T>(list: readonly T[], use: (item: T) => unknown): (() => unknown) => {
  let next = 0;
  return () => {
    const item = list[next++ % list.length];
    return item === undefined ? undefined : use(item);
  };
};

/** So many calls in one measured turn lift a short call above the grain of the clock. */
const BATCH = 96;

const batched =
  (call: () => unknown, times: number = BATCH) =>
  (): unknown => {
    let last: unknown;
    for (let i = 0; i < times; i++) last = call();
    return last;
  };

/** A turn of short routes plans as many chords as one of the long route: both wear the machine alike. */
const SHORTS = 10;

/** Issue 3: routes, bends with connections, and the names of a fingering. */
export const measure: Measure = async () => {
  const short = routeOf(64);
  const long = routeOf(640);
  const cost = await timed({
    short: batched(() => planRoute(short), SHORTS),
    long: () => planRoute(long),
    reading: batched(inTurn(CHANGES, ({ reading }) => readNeck(reading))),
    going: batched(inTurn(CHANGES, goOn)),
    naming: batched(
      inTurn(FINGERINGS, (classes) => nameChords(classes, classes[0] ?? pitchClass(0))),
    ),
  });
  return [
    { name: 'route for 64 chords', figure: cost('short') / SHORTS, unit: 'ms', limit: 5 },
    {
      name: 'route for 640 chords against 64',
      figure: (cost('long') / cost('short')) * SHORTS,
      unit: '×',
      limit: 12,
    },
    {
      name: 'bends and connections against a reading',
      figure: cost('going') / cost('reading'),
      unit: '×',
      limit: 1,
    },
    { name: 'naming a fingering', figure: cost('naming') / BATCH, unit: 'ms', limit: 1 },
  ];
};
