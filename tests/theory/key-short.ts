import { type Key, parseKey } from '#theory';

/** The key of `Am`, `Eb major`. */
export function key(text: string): Key {
  const result = parseKey(text);
  if (!result.ok) throw new Error(`not a key: ${text}`);
  return result.value;
}
