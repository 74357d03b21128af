/** Typed chord symbols made plain: the many characters that mean one sign become that sign. */

/** `text` in plain characters; `offsets[i]` is where its unit `i` stood in the typed text. */
export interface PlainText {
  readonly text: string;
  /** Absent = every unit stands where it stood. One entry more than `text` has units. */
  readonly offsets?: readonly number[];
}

/** The private signs are those of music fonts (SMuFL 1.4), which text copied out of a score keeps. */
const rows: readonly (readonly [string, string])[] = [
  ['♯＃﹟\ue262\ued62', '#'],
  ['♭\ue260\ued60', 'b'],
  ['𝄪', '##'],
  ['𝄫', 'bb'],
  ['−–—‒―‐‑⁃﹣－⁻₋\ue874', '-'],
  ['∆△▵▲▴⊿Ʌ∧⌂ᐃ🛆ˆ\ue873', 'Δ'],
  ['Ø∅⌀⊘𝆩ɸφΦϕ⦵\ue871', 'ø'],
  ['º˚ᵒ◦○⁰∘⚬\ue870', '°'],
  ['\ue872', '+'],
  ['⁄∕⧸＼∖ᐟ╱', '/'],
  ['、', ','],
  ['・', '·'],
  ['\u200b\u200c\u200d\u2060\ufeff\ufe0e\ufe0f\u00ad', ''],
];

const PLAIN: ReadonlyMap<string, string> = new Map(
  rows.flatMap(([from, to]) => [...from].map((character) => [character, to] as const)),
);

/** Superscripts, subscripts and full-width forms become what they stand for (Unicode NFKC). */
const plainCharacter = (character: string): string =>
  PLAIN.get(character) ?? (character > '~' ? character.normalize('NFKC') : character);

/** Brings a typed symbol into plain characters. Plain text comes back as it is. */
export function plainText(typed: string): PlainText {
  if (/^[ -~]*$/.test(typed)) return { text: typed };
  let text = '';
  const offsets: number[] = [];
  let at = 0;
  for (const character of typed) {
    const plain = plainCharacter(character);
    offsets.push(...Array.from(plain, () => at));
    text += plain;
    at += character.length;
  }
  return { text, offsets: [...offsets, at] };
}

/** Where a unit of the plain text stood in the typed text (UTF-16 offset). */
export const typedOffset = (plain: PlainText, at: number): number => plain.offsets?.[at] ?? at;
