/** How a backing moves: rows of strokes for groups of beats. All our own; the shapes are common practice. */
import type { DrumName } from './drums.ts';
import type { FeelName } from './types.ts';

/**
 * A group of beats, one sign to a step, all rows equally long.
 * comp: `D` accented down-stroke, `d` down, `u` up, `m` muted, `-` stop, `.` nothing.
 * bass: `R` root (or the bass of the symbol), `3`, `5`, `8`, `a` a half step from the next root, `.`
 * goes on.
 * kick, back, top: `X` strong, `x`, `o` weak, `.` nothing.
 */
export interface Group {
  readonly comp: string;
  readonly bass: string;
  readonly kick: string;
  readonly back: string;
  readonly top: string;
}

/** A feel: what its drums are, how slowly a stroke passes the strings, and its groups of quarters. */
export interface Feel {
  /** Steps of a quarter in `quarters`. */
  readonly grid: number;
  /** Groups of 1, 2, 3 and 4 quarters. */
  readonly quarters: readonly [Group, Group, Group, Group];
  /** Groups of three eighths (every other one with the backbeat) and of two. */
  readonly eighths: readonly [three: Group, backbeat: Group, two: Group];
  readonly back: DrumName;
  readonly top: DrumName;
  /** Seconds from string to string of a down-stroke. */
  readonly spread: number;
}

const group = (comp: string, bass: string, kick: string, back: string, top: string): Group => ({
  comp,
  bass,
  kick,
  back,
  top,
});

const EIGHTHS: Feel['eighths'] = [
  group('D.u', 'R..', 'X..', '...', 'Xoo'),
  group('D.u', '5.R', '...', 'X..', 'Xoo'),
  group('du', 'R.', 'x.', '..', 'xo'),
];

const SLOW_EIGHTHS: Feel['eighths'] = [
  group('D..', 'R..', 'X..', '...', 'xoo'),
  group('d..', '5..', '...', 'x..', 'xoo'),
  group('d.', 'R.', 'o.', '..', 'xo'),
];

const STRAIGHT: Feel = {
  grid: 2,
  quarters: [
    group('D.', 'R.', 'x.', '..', 'xo'),
    group('D.du', 'R.5.', 'X...', '..X.', 'xoxo'),
    group('D.dudu', 'R...5.', 'X.....', '..x.x.', 'xoxoxo'),
    group('D.du.udu', 'R..R5...', 'X...xx..', '..X...X.', 'xoxoxoxo'),
  ],
  eighths: EIGHTHS,
  back: 'snare',
  top: 'hat',
  spread: 0.012,
};

const SHUFFLE: Feel = {
  grid: 3,
  quarters: [
    group('d.u', 'R..', 'x..', '...', 'x.o'),
    group('d.uD.u', 'R..5..', 'X.....', '...X..', 'x..x.o'),
    group('d.ud.ud.u', 'R..3..5..', 'X........', '...x..x..', 'x..x.ox.o'),
    group('d.uD.ud.uD.u', 'R..3..5..a..', 'X.....x.....', '...X.....X..', 'x..x.ox..x.o'),
  ],
  eighths: EIGHTHS,
  back: 'snare',
  top: 'ride',
  spread: 0.01,
};

const BALLAD: Feel = {
  grid: 2,
  quarters: [
    group('D.', 'R.', 'o.', '..', 'xo'),
    group('D...', 'R.5.', 'x...', '..x.', 'xoxo'),
    group('D...d.', 'R...5.', 'x.....', '..o.o.', 'xoxoxo'),
    group('D...d..u', 'R..5R...', 'x....o..', '..x...x.', 'xoxoxoxo'),
  ],
  eighths: SLOW_EIGHTHS,
  back: 'stick',
  top: 'hat',
  spread: 0.028,
};

const SIXTEEN: Feel = {
  grid: 4,
  quarters: [
    group('D.mu', 'R...', 'x...', '....', 'xoxo'),
    group('D.mum.du', 'R..R..5.', 'X.....x.', '....X...', 'XoxoXoxo'),
    group('D.mum.dum.du', 'R......R..5.', 'X......x....', '....X...X...', 'XoxoXoxoXoxo'),
    group(
      'D..um.du.mdum.du',
      'R..R..5...R...8.',
      'X..x......x..x..',
      '....X.......X..o',
      'XoxoXoxoXoxoXoxo',
    ),
  ],
  eighths: EIGHTHS,
  back: 'snare',
  top: 'hat',
  spread: 0.008,
};

/** The feels by name. */
export const FEEL_ROWS: Readonly<Record<FeelName, Feel>> = {
  straight: STRAIGHT,
  shuffle: SHUFFLE,
  ballad: BALLAD,
  sixteen: SIXTEEN,
};
