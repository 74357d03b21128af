/** Which keystrokes belong together when they are taken back. */

/** How many UTF-16 units two texts have in common at the start. */
function commonStart(a: string, b: string): number {
  const longest = Math.min(a.length, b.length);
  let at = 0;
  while (at < longest && a.charCodeAt(at) === b.charCodeAt(at)) at += 1;
  return at;
}

const isInsertion = (before: string, after: string, at: number, length: number): boolean =>
  before.slice(at) === after.slice(at + length);

/**
 * The run of undo to which an edit belongs: single characters typed in a row are one, single
 * characters deleted in a row another. A bar line or line end begins a new one; so does anything
 * pasted, cut or replaced, which is a step of its own (`undefined`).
 */
export function typingRun(before: string, after: string): string | undefined {
  const grown = after.length - before.length;
  const at = commonStart(before, after);
  if (grown === 1 && isInsertion(before, after, at, 1)) {
    return /[|\n]/.test(after.charAt(at)) ? undefined : 'typing';
  }
  return grown === -1 && isInsertion(after, before, at, 1) ? 'deleting' : undefined;
}
