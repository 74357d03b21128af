const PARTS = [
  [10, 'X'],
  [9, 'IX'],
  [5, 'V'],
  [4, 'IV'],
  [1, 'I'],
] as const;

/** A position as a Roman numeral, for 1 to 39; anything else in digits. */
export function roman(position: number): string {
  if (!Number.isInteger(position) || position < 1 || position > 39) return String(position);
  const fits = PARTS.find(([value]) => value <= position);
  if (fits === undefined) return '';
  const [value, letters] = fits;
  return position === value ? letters : letters + roman(position - value);
}
