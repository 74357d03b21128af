import { describe, expect, it } from 'vitest';
import {
  type Bend,
  type BendQuery,
  bendsAtHand,
  connectionsBetween,
  DEFAULT_BEND_LIMITS,
  openMidis,
  reachedByBends,
} from '#neck';
import { makeDegree, makePitch } from '#theory';
import { chord, degree, GUITAR, instrument, reading } from './support.ts';

function bends(symbol: string, position: number, more: Partial<BendQuery> = {}): readonly Bend[] {
  return bendsAtHand({
    chord: chord(symbol),
    position,
    instrument: GUITAR,
    colours: [],
    spelling: 'exact',
    limits: DEFAULT_BEND_LIMITS,
    ...more,
  });
}

const bendText = (bend: Bend): string =>
  `${bend.string}:${bend.fret}+${bend.steps} ${makePitch(bend.pitch)} ${makeDegree(bend.degree)} ${bend.of} ${bend.ease}`;

function easeAt(string: number, fret: number, steps: number, position: number): string | undefined {
  const all = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
  return all
    .flatMap((root) => bends(root, position))
    .find((b) => b.string === string && b.fret === fret && b.steps === steps)?.ease;
}

describe('bends', () => {
  it('of a whole step at fret 12 on plain strings are comfortable (common practice)', () => {
    expect([1, 2, 3].map((string) => easeAt(string, 12, 2, 10))).toEqual([
      'comfortable',
      'comfortable',
      'comfortable',
    ]);
  });

  it('of more than a half step on wound strings are not (common practice)', () => {
    expect([4, 5, 6].map((string) => easeAt(string, 12, 2, 10))).toEqual(['hard', 'hard', 'hard']);
    expect([4, 5, 6].map((string) => easeAt(string, 12, 1, 10))).toEqual([
      'comfortable',
      'comfortable',
      'comfortable',
    ]);
  });

  it('of more than a half step near the nut are not (common practice)', () => {
    for (const string of [1, 2, 3]) expect(easeAt(string, 1, 2, 1)).not.toBe('comfortable');
  });

  it('are offered to every chord tone of now and next that a half to one and a half steps reach', () => {
    const found = bends('C', 5, { next: chord('F') }).map(bendText);
    expect(found).toContain('2:8+2 A4 3 next comfortable');
    expect(found.some((text) => text.startsWith('3:7+2 E4 3 now'))).toBe(true);
  });

  it('start on fretted places under the hand only', () => {
    expect(new Set(bends('Am7', 5).map((bend) => bend.fret))).toEqual(new Set([5, 6, 7, 8]));
    expect(bends('C', 1, { instrument: instrument({ capo: 3 }) }).every((b) => b.fret > 3)).toBe(
      true,
    );
  });

  it('reach colours that are switched on', () => {
    const blue = bends('C', 5, { colours: [degree('b5')] }).filter(
      (b) => makeDegree(b.degree) === 'b5',
    );
    expect(blue.length).toBeGreaterThan(0);
  });

  it('come easiest first, and thin strings are pushed', () => {
    const found = bends('G7', 5);
    const ranks = found.map((bend) => ['comfortable', 'hard', 'no'].indexOf(bend.ease));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(found.every((b) => b.direction === (b.string <= 3 ? 'push' : 'pull'))).toBe(true);
  });

  it('are harder for an index finger, which has none behind it', () => {
    expect(easeAt(1, 12, 2, 12)).toBe('hard');
    expect(easeAt(1, 12, 2, 10)).toBe('comfortable');
  });

  it('follow the limits that a player sets', () => {
    const strict = {
      ...DEFAULT_BEND_LIMITS,
      comfortable: { force: 1, travel: 1 },
      hard: { force: 2, travel: 2 },
    };
    expect(bends('C', 5, { limits: strict }).every((bend) => bend.ease === 'no')).toBe(true);
  });
});

describe('bends again', () => {
  it('are the same objects for the same chord and hand', () => {
    const query = { chord: chord('Am'), position: 5, instrument: GUITAR, colours: [] } as const;
    const ask = () => bendsAtHand({ ...query, spelling: 'exact', limits: DEFAULT_BEND_LIMITS });
    expect(ask()[0]).toBe(ask()[0]);
    expect(ask()).toEqual(bends('Am', 5));
  });

  it('of this chord, of colours and of the next stand in one order, easiest first', () => {
    const all = bends('C', 5, { next: chord('F7'), colours: [degree('b7'), degree('9')] });
    const forces = ['comfortable', 'hard', 'no'].map((ease) =>
      all.filter((bend) => bend.ease === ease).map(({ force }) => force),
    );
    for (const some of forces) expect(some).toEqual([...some].sort((a, b) => a - b));
    const apart = [
      ...bends('C', 5, { colours: [degree('b7'), degree('9')] }),
      ...bends('C', 5, { next: chord('F7') }).filter(({ of }) => of === 'next'),
    ];
    expect(all.map(bendText).sort()).toEqual(apart.map(bendText).sort());
  });
});

describe('tones that only a bend reaches', () => {
  const read = reading('C', 5);
  const reached = reachedByBends(read, bends('C', 5));

  it('are marked where a practical bend under the hand arrives, and no others', () => {
    const practical = bends('C', 5).filter(({ ease }) => ease !== 'no');
    const ends = new Set(practical.map((b) => `${b.string}:${b.fret + b.steps}`));
    const marked = reached.tones.filter(({ reach }) => reach === 'bend');
    expect(marked.length).toBeGreaterThan(0);
    for (const tone of marked) expect(ends).toContain(`${tone.string}:${tone.fret}`);
    const out = reached.tones.filter(({ reach }) => reach === 'out');
    for (const tone of out) expect(ends).not.toContain(`${tone.string}:${tone.fret}`);
  });

  it('leave the reading as it is where there are none', () => {
    expect(reachedByBends(read, [])).toBe(read);
    expect(reachedByBends(reached, bends('C', 5))).toBe(reached);
  });
});

function best(now: string, next: string, position: number): string {
  const found = connectionsBetween(
    reading(now, position),
    reading(next, position),
    bends(now, position, { next: chord(next) }),
    openMidis(GUITAR),
  );
  return (
    found.map((c) => `${makeDegree(c.fromDegree)}>${makeDegree(c.toDegree)} ${c.semitones}`)[0] ??
    '-'
  );
}

describe('connections', () => {
  it.each([
    ['G7', 'C', '3>R 1'],
    ['G7', 'Cm', '3>R 1'],
    ['D7', 'G', '3>R 1'],
    ['Db7', 'C', '3>3 -1'],
  ])(
    'from the dominant %s into %s begin with its third by a half step (common practice)',
    (now, next, expected) => {
      expect(best(now, next, 5)).toBe(expected);
    },
  );

  it.each([
    ['Dm7', 'G7', 'b7>3 -1'],
    ['C', 'F', '3>R 1'],
    ['Am7', 'D7', 'b7>3 -1'],
  ])('from %s into %s begin with %s', (now, next, expected) => {
    expect(best(now, next, 5)).toBe(expected);
  });

  it('rank half steps into third or seventh, then common tones that change degree', () => {
    const found = connectionsBetween(reading('C', 5), reading('Am', 5), [], openMidis(GUITAR));
    expect(
      `${makeDegree(found[0]?.fromDegree ?? degree('R'))}>${makeDegree(found[0]?.toDegree ?? degree('R'))}`,
    ).toBe('R>b3');
    expect(found.every((c) => Math.abs(c.semitones) <= 2)).toBe(true);
    expect(found.every((c) => Math.abs(c.from.string - c.to.string) <= 1)).toBe(true);
  });

  it('include bends that arrive on a tone of the next chord', () => {
    const found = connectionsBetween(
      reading('C', 5),
      reading('F', 5),
      bends('C', 5, { next: chord('F') }),
      openMidis(GUITAR),
    );
    const bent = found.filter((c) => c.bend !== undefined);
    expect(bent.length).toBeGreaterThan(0);
    expect(bent.every((c) => c.bend?.of === 'next' && c.semitones > 0)).toBe(true);
  });
});
