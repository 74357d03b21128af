import { describe, expect, it } from 'vitest';
import type { ComparedPlace, Stop } from '#neck';
import {
  connectionInWords,
  degreesShared,
  formsInWords,
  placesInWords,
  sharing,
  targetInWords,
  turnedStringInWords,
  wayCost,
  wayInWords,
} from '../../../src/ui/material/material-words.ts';
import { first, study } from './fixture.ts';

const connections = (progression: string, position: number): readonly string[] =>
  study(progression, position).connections.map(connectionInWords);

describe('connectionInWords', () => {
  it('leads the third of a dominant into the root first', () => {
    expect(first(connections('| G7 | C |', 8))).toMatch(/^3 → R, half step up, string/);
  });

  it('says where a tone stays and where it changes its string', () => {
    const words = connections('| C | Am |', 5);
    expect(words).toContain('R → ♭3, stays, string 3: fret 5');
    expect(words.some((row) => /, strings \d to \d: fret \d+ to \d+$/.test(row))).toBe(true);
  });

  it('says which arrive by a bend', () => {
    expect(connections('| Bm7 | E7 |', 7)).toContain(
      '5 → 3, whole step up, string 2: bent at fret 7',
    );
  });
});

describe('targetInWords', () => {
  it('names degree and note, and the chord where it is the next', () => {
    const { bends } = study('| Bm7 | E7 |', 7);
    const words = bends.map((bend) => targetInWords(bend, 'E7'));
    expect(words).toContain('5 F♯');
    expect(words).toContain('3 G♯ of E7');
  });
});

describe('turnedStringInWords', () => {
  it('says which tone moves from where to where and what it becomes', () => {
    const moves = study('| A |', 7, { turn: 'minor' }).turned?.moves ?? [];
    expect(moves.map(turnedStringInWords)).toEqual(['3 drops from fret 9 to 8: ♭3']);
  });

  it('says what rises', () => {
    const moves = study('| A |', 7, { turn: 'sus4' }).turned?.moves ?? [];
    expect(moves.map(turnedStringInWords)).toEqual(['3 rises from fret 9 to 10: 4']);
  });
});

const stops = (progression: string, position: number): readonly (Stop | undefined)[] =>
  study(progression, position, { route: 'stay' }).route?.routes[0]?.stops ?? [];

describe('wayCost', () => {
  it('counts nothing for a hand that stays', () => {
    const { moves, frets, millimetres } = wayCost(stops('| D | D |', 14));
    expect([moves, frets, millimetres]).toEqual([0, 0, 0]);
  });

  it('adds up the frets between one stop and the next, across a silence too', () => {
    const [one] = stops('| D |', 14);
    if (!one) throw new Error('no stop');
    const two = { ...one, position: one.position + 3, millimetres: one.millimetres + 40 };
    const cost = wayCost([one, undefined, two, one]);
    expect([cost.moves, cost.frets, Math.round(cost.millimetres)]).toEqual([2, 6, 80]);
  });

  it('is told in frets, centimetres, stretches and barres', () => {
    expect(wayInWords(stops('| Bm7 | E7 | Amaj7 |', 7))).toMatch(
      /^the hand (stays|moves \d+ frets? \(\d+ cm\) in \d+ moves?), (no|\d+) stretch(es)?, (no|\d+) barres?$/,
    );
  });
});

describe('formsInWords', () => {
  it('names the forms in their order and cuts long ways short', () => {
    const [one] = stops('| D |', 14);
    expect(formsInWords([one, undefined, one])).toBe('C – C');
    expect(formsInWords(Array.from({ length: 13 }, () => one))).toBe(`${'C '.repeat(12)}…`);
  });
});

const compared = (form: string): readonly ComparedPlace[] =>
  study('| D |', 14, { form: 'C', compare: { kind: 'form', form } }).compared?.places ?? [];

describe('sharing', () => {
  it('finds the three high strings that the D form has in common with the C form', () => {
    const { both, first: left, second } = sharing(compared('D'));
    expect(placesInWords(both)).toBe('string 1 fret 14, string 2 fret 15, string 3 fret 14');
    expect([left.length, second.length]).toEqual([2, 1]);
  });

  it('says what the shared tones become in another chord', () => {
    const places =
      study('| Am7 |', 5, { compare: { kind: 'chord', symbol: 'D9' } }).compared?.places ?? [];
    expect(degreesShared(sharing(places).both)).toEqual(
      expect.arrayContaining(['R becomes 5', '♭3 becomes ♭7', '5 becomes 9']),
    );
  });
});
