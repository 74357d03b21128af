/** What reading outside text gives: a value, or an error that says where and why. */
export type Result<T, E> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E };

export const ok = <T>(value: T): { readonly ok: true; readonly value: T } => ({ ok: true, value });

export const err = <E>(error: E): { readonly ok: false; readonly error: E } => ({
  ok: false,
  error,
});

/**
 * Why a piece of outside text could not be read. `at` counts UTF-16 units from 0 within the text
 * handed to the parser, `length` is how much of it is meant (0 = the text ended too early).
 */
export interface TextError<Code extends string = string> {
  readonly code: Code;
  readonly at: number;
  readonly length: number;
  readonly found: string;
  /** What would have been accepted there, as short phrases for people. */
  readonly expected: readonly string[];
  /** The whole text as it was probably meant, where one is near. */
  readonly suggestion?: string;
}
