/** A small room: four delay lines that feed each other, after J.-M. Jot's feedback delay networks. */

/** A room and its memory. */
export interface Room {
  readonly lines: readonly Float32Array[];
  readonly lengths: readonly number[];
  readonly gains: readonly number[];
  readonly lows: Float32Array;
  at: number;
  /** Samples since anything was heard in it. */
  quiet: number;
}

/** Lengths without common echoes, milliseconds; the walls of a room of some six by five metres. */
const MILLISECONDS = [17.3, 23.9, 29.7, 37.1] as const;
const DECAY_SECONDS = 0.45;
/** Share of the upper sound that a wall gives back. */
const BRIGHTNESS = 0.45;

export function makeRoom(rate: number): Room {
  const lengths = MILLISECONDS.map((ms) => Math.round((ms / 1000) * rate));
  const size = 2 ** Math.ceil(Math.log2(Math.max(...lengths) + 1));
  return {
    lines: lengths.map(() => new Float32Array(size)),
    lengths,
    gains: lengths.map((length) => 10 ** ((-3 * length) / (DECAY_SECONDS * rate))),
    lows: new Float32Array(lengths.length),
    at: 0,
    quiet: Number.POSITIVE_INFINITY,
  };
}

const SILENCE = 1e-6;

const isSilent = (samples: Float32Array, count: number): boolean => {
  for (let i = 0; i < count; i++) if (Math.abs(samples[i] ?? 0) > SILENCE) return false;
  return true;
};

/** Whether the room still gives anything back. */
function rings(room: Room, input: Float32Array, count: number): boolean {
  const rate = (room.lengths[0] ?? 0) / ((MILLISECONDS[0] ?? 1) / 1000);
  room.quiet = isSilent(input, count) ? room.quiet + count : 0;
  return room.quiet < 2 * DECAY_SECONDS * rate;
}

/** Adds what the room makes of the first `count` samples of `input` to both sides. */
export function addRoom(
  room: Room,
  input: Float32Array,
  left: Float32Array,
  right: Float32Array,
  count: number,
): void {
  if (!rings(room, input, count)) return;
  const [a, b, c, d] = room.lines;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return;
  const [la = 0, lb = 0, lc = 0, ld = 0] = room.lengths;
  const [ga = 0, gb = 0, gc = 0, gd = 0] = room.gains;
  let [wa = 0, wb = 0, wc = 0, wd = 0] = room.lows;
  const mask = a.length - 1;
  let { at } = room;
  for (let i = 0; i < count; i++) {
    const x = input[i] ?? 0;
    wa += BRIGHTNESS * (ga * (a[(at - la) & mask] ?? 0) - wa);
    wb += BRIGHTNESS * (gb * (b[(at - lb) & mask] ?? 0) - wb);
    wc += BRIGHTNESS * (gc * (c[(at - lc) & mask] ?? 0) - wc);
    wd += BRIGHTNESS * (gd * (d[(at - ld) & mask] ?? 0) - wd);
    // A Hadamard matrix: loses nothing, mixes everything.
    a[at] = x + 0.5 * (wa + wb + wc + wd);
    b[at] = x + 0.5 * (wa - wb + wc - wd);
    c[at] = x + 0.5 * (wa + wb - wc - wd);
    d[at] = x + 0.5 * (wa - wb - wc + wd);
    left[i] = (left[i] ?? 0) + wa + wc;
    right[i] = (right[i] ?? 0) + wb + wd;
    at = (at + 1) & mask;
  }
  room.at = at;
  room.lows.set([wa, wb, wc, wd]);
}
