import { err, ok, type Result } from '#theory';

/** A number as typed; an empty field is no number. */
export const numberOf = (text: string): number =>
  text.trim() === '' ? Number.NaN : Number(text.trim().replace(',', '.'));

/** What was typed, as one quotes it, and what would have done. */
const refused = (found: string, expected: string): Result<never, string> => {
  const typed = found.trim() === '' ? 'Nothing is typed' : `“${found.trim()}”`;
  return err(`${typed}: expected ${expected}`);
};

/** A number as typed, or in words why it is none. Its range is not looked at. */
export function readNumber(text: string, expected: string): Result<number, string> {
  const value = numberOf(text);
  return Number.isFinite(value) ? ok(value) : refused(text, expected);
}

/** A whole number in a range as typed, or in words why it is none and what is used instead. */
export function readWhole(
  text: string,
  { min, max }: { readonly min: number; readonly max: number },
  instead: string,
): Result<number, string> {
  const value = numberOf(text);
  const fits = Number.isInteger(value) && value >= min && value <= max;
  return fits ? ok(value) : refused(text, `a whole number from ${min} to ${max}; ${instead}`);
}

const BETWEEN = /[\s,;]+/;

/**
 * Gauges as typed, the thickest string first, as players read their strings from below. Gives them
 * with string 1 first, or in words what is wrong with them.
 */
export function readGauges(
  text: string,
  strings: number,
  expected: string,
): Result<readonly number[], string> {
  const words = text.split(BETWEEN).filter((word) => word !== '');
  const wrong = words.find((word) => !Number.isFinite(Number(word)));
  if (wrong !== undefined || words.length !== strings) return refused(wrong ?? text, expected);
  return ok(words.map(Number).reverse());
}

/** Gauges as they stand in the field: the thickest string first. */
export const gaugesText = (gauges: readonly number[]): string => [...gauges].reverse().join(' ');

/** The next whole number up or down from what stands in a field, within a range. */
export function stepped(
  text: string,
  by: 1 | -1,
  { min, max }: { readonly min: number; readonly max: number },
): string | undefined {
  const value = numberOf(text);
  return Number.isFinite(value)
    ? String(Math.min(max, Math.max(min, Math.round(value) + by)))
    : undefined;
}
