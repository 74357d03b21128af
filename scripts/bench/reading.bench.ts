import { Chord as TonalChord } from 'tonal';
import {
  type Instrument,
  makeInstrument,
  type ReadingQuery,
  readNeck,
  STANDARD_GUITAR,
} from '#neck';
import { parseChord } from '#theory';
import { type Measure, timed } from './bench.ts';

const SYMBOLS = ['C', 'F#m7', 'Bb13', 'E7#9', 'Dm7b5', 'Abmaj9', 'G7sus4', 'C#dim7'];

/** The default span: index at fret 5, little finger at fret 9. */
const SPAN = { index: 5, little: 9 };

/** Grips are remembered for a chord on an instrument: a new one of either has to begin anew. */
const newGuitar = (): Instrument => {
  const made = makeInstrument({});
  if (!made.ok) throw new Error('the standard guitar is refused');
  return made.value;
};

const queryOf = (symbol: string, position: number): ReadingQuery => {
  const chord = parseChord(symbol);
  if (!chord.ok) throw new Error(`${symbol} is not read`);
  const query = {
    instrument: STANDARD_GUITAR,
    span: SPAN,
    colours: [],
    spelling: 'exact',
  } as const;
  return { ...query, chord: chord.value, position };
};

/** Goes round the list, so that no call can live on the answer to the one before. */
const inTurn = <T>(list: readonly T[], use: (item: T) => unknown): (() => unknown) => {
  let next = 0;
  return () => {
    const item = list[next++ % list.length];
    return item === undefined ? undefined : use(item);
  };
};

/** So many calls in one measured turn lift a short call above the grain of the clock. */
const BATCH = 100;

const batched = (call: () => unknown) => (): unknown => {
  let last: unknown;
  for (let i = 0; i < BATCH; i++) last = call();
  return last;
};

/** Issue 2, section 6: one full reading costs at most this many calls of tonal's `Chord.get`. */
const CALLS = 25;

export const measure: Measure = async () => {
  const queries = Array.from({ length: 12 }, (_, i) => i + 1).flatMap((position) =>
    SYMBOLS.map((symbol) => queryOf(symbol, position)),
  );
  const cost = await timed({
    reading: batched(inTurn(queries, readNeck)),
    unseen: batched(inTurn(queries, (query) => readNeck({ ...query, chord: { ...query.chord } }))),
    anew: batched(inTurn(queries, (query) => readNeck({ ...query, instrument: newGuitar() }))),
    tonal: batched(inTurn(SYMBOLS, (symbol) => TonalChord.get(symbol))),
  });
  const calls = (name: 'reading' | 'unseen') => cost(name) / cost('tonal');
  const microseconds = (name: Parameters<typeof cost>[0]) => (cost(name) / BATCH) * 1000;
  return [
    { name: "one Chord.get of tonal's", figure: microseconds('tonal'), unit: 'µs' },
    { name: 'one full reading', figure: microseconds('reading'), unit: 'µs' },
    { name: '… of a chord never seen', figure: microseconds('unseen'), unit: 'µs' },
    { name: '… on an instrument never seen', figure: microseconds('anew'), unit: 'µs' },
    { name: 'one full reading', figure: calls('reading'), unit: '× Chord.get', limit: CALLS },
    { name: '… of a chord never seen', figure: calls('unseen'), unit: '× Chord.get', limit: CALLS },
  ];
};
