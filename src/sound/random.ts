/** Numbers that look random and are the same every time, so that what is rendered can be compared. */
export interface Random {
  state: number;
}

export const randomFrom = (seed: number): Random => ({ state: seed | 0 || 1 });

/** The next number, evenly between −1 and 1 (xorshift, G. Marsaglia 2003). */
export function nextRandom(random: Random): number {
  let x = random.state;
  x ^= x << 13;
  x ^= x >>> 17;
  x ^= x << 5;
  random.state = x;
  return x / 2147483648;
}
