/** Readings that are taken over from what is known instead of being made again. */
import { type Reading, type ReadingQuery, readNeck } from '#neck';

const askedBy = new WeakMap<Reading, ReadingQuery>();

/** Chord, instrument, span and colours are shared objects: alike means the same. */
const sameQuery = (a: ReadingQuery, b: ReadingQuery): boolean =>
  a.chord === b.chord &&
  a.position === b.position &&
  a.form === b.form &&
  a.anchor === b.anchor &&
  a.instrument === b.instrument &&
  a.span === b.span &&
  a.colours === b.colours &&
  a.spelling === b.spelling;

const plain = new WeakMap<Reading, Reading>();

/** A reading without what `viewOf` added to it. */
export const plainOf = (reading: Reading | undefined): Reading | undefined =>
  reading && (plain.get(reading) ?? reading);

/** Remembers of which reading a richer view was made. */
export function viewOf(view: Reading, reading: Reading): Reading {
  if (view !== reading) plain.set(view, reading);
  return view;
}

/** The plain reading of a query: one of those known if it answers the same, else a new one. */
export function reread(query: ReadingQuery, known: readonly (Reading | undefined)[]): Reading {
  for (const one of known) {
    const reading = plainOf(one);
    const asked = reading && askedBy.get(reading);
    if (reading && asked && sameQuery(asked, query)) return reading;
  }
  const reading = readNeck(query);
  askedBy.set(reading, query);
  return reading;
}
