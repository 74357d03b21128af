import { err, type TextError } from './result.ts';

/**
 * The failure of a parser. `from`/`to` are UTF-16 offsets into `text`; `to` before or at `from`
 * means that the text ended too early or that something is missing there.
 */
export function textError<Code extends string>(
  code: Code,
  text: string,
  from: number,
  to: number,
  expected: readonly string[],
  suggestion?: string,
): { readonly ok: false; readonly error: TextError<Code> } {
  const at = Math.min(from, text.length);
  const found = text.slice(at, to);
  const error = { code, at, length: found.length, found, expected };
  return err(suggestion === undefined ? error : { ...error, suggestion });
}
