import { describe, expect, it } from 'vitest';
import {
  compareReadings,
  DEFAULT_SPAN,
  DEFAULT_WEIGHTS,
  formPlaces,
  formsOf,
  type Instrument,
  makeGripText,
  ownForm,
  parseFingering,
  planRoute,
  TURNS,
  turnChord,
  turnForm,
  withOwnForms,
} from '#neck';
import { makeDegree } from '#theory';
import { chord, GUITAR, gripOf, reading } from './support.ts';

/** A guitar that has besides the five a form put down as a fingering for a chord. */
function guitarWith(name: string, fingering: string, symbol: string): Instrument {
  const frets = parseFingering(fingering, GUITAR);
  if (!frets.ok) throw new Error(frets.error.code);
  const form = ownForm(name, frets.value, chord(symbol), GUITAR);
  if (form === undefined) throw new Error('no form');
  return withOwnForms(GUITAR, [form]);
}

function ownGrips(on: Instrument, name: string, symbol: string): readonly string[] {
  return formPlaces(chord(symbol), on)
    .filter((place) => place.form.name === name)
    .map((place) => (place.grip === undefined ? '-' : makeGripText(place.grip, 6)));
}

describe('a form of one’s own', () => {
  const shell = guitarWith('shell', 'x5453x', 'D7');

  it('stands where it was put down and moves along the neck for any root', () => {
    expect(ownGrips(shell, 'shell', 'D7')).toContain('x5453x');
    expect(ownGrips(shell, 'shell', 'E7')).toContain('x7675x');
    expect(ownGrips(shell, 'shell', 'G7')).toContain('x-10-9-10-8-x');
  });

  it('turns minor and suspended by moving the third alone', () => {
    expect(ownGrips(shell, 'shell', 'Dm7')).toContain('x5353x');
    expect(ownGrips(shell, 'shell', 'D7sus4')).toContain('x5553x');
  });

  it('keeps its lowest tone when that is not the root', () => {
    const inverted = guitarWith('over third', 'x4222x', 'A/C#');
    expect(ownGrips(inverted, 'over third', 'E')).toContain('x-11-9-9-9-x');
    expect(ownGrips(inverted, 'over third', 'Em')).toContain('x-10-9-9-8-x');
  });

  it('may leave the root out', () => {
    const rootless = guitarWith('rootless', 'xx4555', 'D9');
    expect(ownGrips(rootless, 'rootless', 'E9')).toContain('xx6777');
  });

  it('takes part in readings like the five', () => {
    const read = reading('D7', 3, { on: shell, form: 'shell' });
    expect(read.forms).toHaveLength(6);
    expect(read.chosen?.form.name).toBe('shell');
    expect(formsOf(GUITAR)).toHaveLength(5);
  });

  it('takes part in routes like the five', () => {
    const planned = planRoute({
      chords: ['D7', 'G7', 'A7'].map(chord),
      instrument: shell,
      span: DEFAULT_SPAN,
      weights: DEFAULT_WEIGHTS,
      wish: { kind: 'carry', form: 'shell', position: 5 },
      pins: [],
    });
    const stops = planned.ok ? (planned.value[0]?.stops ?? []) : [];
    expect(stops.map((stop) => stop?.form.name)).toEqual(['shell', 'shell', 'shell']);
  });

  it('is not made of a fingering that sounds something else', () => {
    const frets = parseFingering('x5453x', GUITAR);
    expect(frets.ok && ownForm('wrong', frets.value, chord('C'), GUITAR)).toBeUndefined();
  });
});

const turned = (symbol: string, form: string, anchor: number, suffix: string): string => {
  const found = turnForm(chord(symbol), gripOf(symbol, form, anchor), suffix, GUITAR);
  const moves = found?.moves.map(
    ({ string, from, to }) =>
      `${string}: ${from ? `${from.fret} ${makeDegree(from.degree)}` : 'x'} > ${to ? `${to.fret} ${makeDegree(to.degree)}` : 'x'}`,
  );
  return moves?.join(', ') ?? '-';
};

describe('turning a form', () => {
  it.each([
    ['A', 'D', 7, 'm', '1: 9 3 > 8 b3'],
    ['A', 'D', 7, 'sus4', '1: 9 3 > 10 4'],
    ['A', 'D', 7, 'sus2', '1: 9 3 > 7 2'],
    ['F', 'E', 1, 'm', '3: 2 3 > 1 b3'],
    ['F', 'E', 1, '7', '4: 3 R > 1 b7'],
    ['F', 'E', 1, 'maj7', '4: 3 R > 2 7'],
    ['C', 'A', 3, 'm', '2: 5 3 > 4 b3'],
    ['C', 'A', 3, '6', '1: 3 5 > 5 6'],
    ['A', 'D', 7, '', ''],
  ])('%s in the %s form at %i into %s moves %s', (symbol, form, anchor, suffix, expected) => {
    expect(turned(symbol, form, anchor, suffix)).toBe(expected);
  });

  it('gives the chord itself when it is that already', () => {
    const before = chord('Am');
    expect(turnChord(before, 'm')).toBe(before);
    for (const { suffix } of TURNS) expect(turnChord(before, suffix).root).toEqual(before.root);
  });
});

describe('comparing', () => {
  const shared = (first: ReturnType<typeof reading>, second: ReturnType<typeof reading>) =>
    compareReadings(first, second, 'shapes')
      .filter((place) => place.first && place.second)
      .map((place) => `${place.string}:${place.fret}`);

  it('finds what the C and D forms of D have in common (common practice)', () => {
    const c = reading('D', 14, { form: 'C' });
    const d = reading('D', 14, { form: 'D' });
    expect(shared(c, d)).toEqual(['1:14', '2:15', '3:14']);
  });

  it('finds what stays from Am7 to D9: A and C, counted anew', () => {
    const places = compareReadings(reading('Am7', 5), reading('D9', 5), 'tones');
    const both = places.flatMap(({ first, second }) =>
      first && second ? [`${makeDegree(first.degree)}>${makeDegree(second.degree)}`] : [],
    );
    expect(new Set(both)).toEqual(new Set(['R>5', 'b3>b7', '5>9']));
  });
});
