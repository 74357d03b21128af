/** Reading plain JSON, value by value. */
import type { Result } from '#theory';

export type Json = Readonly<Record<string, unknown>>;
/** `undefined` = makes no sense. */
export type Reader<T> = (value: unknown) => T | undefined;

export const isJson = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const valueIn = <T>(result: Result<T, unknown>): T | undefined =>
  result.ok ? result.value : undefined;

export const oneOf =
  <T extends string>(words: readonly T[]): Reader<T> =>
  (value) =>
    words.find((word) => word === value);

/** Text of so many UTF-16 units at most. */
export const text =
  (longest: number): Reader<string> =>
  (value) =>
    typeof value === 'string' && value.length <= longest ? value : undefined;

/** A whole number from `min` on, up to `max`. */
export const whole =
  (min: number, max = Number.MAX_SAFE_INTEGER): Reader<number> =>
  (value) =>
    Number.isInteger(value) && Number(value) >= min && Number(value) <= max
      ? Number(value)
      : undefined;

export const flag: Reader<boolean> = (value) => (typeof value === 'boolean' ? value : undefined);

/** A list of at most so many items, all of which make sense. */
export const listOf =
  <T>(item: Reader<T>, most: number): Reader<readonly T[]> =>
  (value) => {
    if (!Array.isArray(value) || value.length > most) return undefined;
    const read = value.map(item);
    return read.every((one) => one !== undefined) ? read : undefined;
  };

/** An object all of whose named parts make sense; whatever else it has is left out. */
export const objectOf =
  <T extends object>(parts: { readonly [Part in keyof T]: Reader<T[Part]> }): Reader<T> =>
  (value) => {
    if (!isJson(value)) return undefined;
    const read: Partial<T> = {};
    for (const part in parts) {
      const found = parts[part](value[part]);
      if (found === undefined) return undefined;
      read[part] = found;
    }
    return isWhole(read, parts) ? read : undefined;
  };

const isWhole = <T extends object>(
  read: Partial<T>,
  parts: { readonly [Part in keyof T]: unknown },
): read is T => Object.keys(parts).every((part) => part in read);
