import { describe, expect, it } from 'vitest';
import { playedOf } from '#line';
import { gripsOf, midiAtPlace, STANDARD_GUITAR } from '#neck';
import {
  countIn,
  FEEL_ROWS,
  FEELS,
  type FeelName,
  makePerformance,
  type NoteEvent,
  type PartEvent,
  type PartName,
  type Performance,
  voicingOf,
} from '#sound';
import { chordNotes, makeNoteName, parseMetre, pitchClass, pitchClassOf, plainName } from '#theory';
import { chart, quarters } from '../line/short.ts';
import { chord, instrument } from '../neck/support.ts';

const perform = (text: string, feel: FeelName = 'straight'): Performance =>
  makePerformance({ chart: chart(text), instrument: STANDARD_GUITAR, feel });

const isNote = (event: PartEvent): event is NoteEvent => event.kind === 'note';

const notesOf = (text: string, part: PartName, feel?: FeelName): readonly NoteEvent[] =>
  perform(text, feel).parts[part].filter(isNote);

const nameOf = (midi: number): string => makeNoteName(plainName(pitchClass(midi)));

/** `C@0 G@2`: the bass's first note of each chord, its start in quarters. */
const bassText = (text: string, feel?: FeelName): string =>
  notesOf(text, 'bass', feel)
    .map(({ midi, start }) => `${nameOf(midi)}@${quarters(start)}`)
    .join(' ');

/** Starts of the comp's strokes, in quarters. */
const strokes = (text: string, feel?: FeelName): readonly number[] => [
  ...new Set(notesOf(text, 'comp', feel).map(({ start }) => quarters(start))),
];

describe('the rows of the feels', () => {
  it.each(FEELS)('%s has rows of one length for every group', (feel) => {
    const { quarters: four, eighths, grid } = FEEL_ROWS[feel];
    for (const [i, group] of four.entries())
      expect(new Set(Object.values(group).map((row: string) => row.length))).toEqual(
        new Set([(i + 1) * grid]),
      );
    for (const [i, group] of eighths.entries())
      expect(new Set(Object.values(group).map((row: string) => row.length))).toEqual(
        new Set([[3, 3, 2][i]]),
      );
  });

  it.each(FEELS)('%s has only signs that mean something', (feel) => {
    const { quarters: four, eighths } = FEEL_ROWS[feel];
    for (const { comp, bass, kick, back, top } of [...four, ...eighths]) {
      expect(comp).toMatch(/^[Ddum.-]+$/);
      expect(bass).toMatch(/^[R358a.]+$/);
      expect(kick + back + top).toMatch(/^[Xxo.]+$/);
    }
  });
});

describe('the bass', () => {
  it('plays the root where a chord begins, and its own fifth between', () => {
    expect(bassText('| C |')).toBe('C@0 C@1.5 G@2');
    expect(bassText('| Bm7b5 |')).toBe('B@0 B@1.5 F@2');
  });

  it('plays the bass of a slash chord, whatever the row says', () => {
    expect(bassText('| C/E |')).toBe('E@0 E@1.5 E@2');
    expect(bassText('| D/C |')).toBe('C@0 C@1.5 C@2');
  });

  it('begins anew with every chord', () => {
    expect(bassText('| C F |')).toBe('C@0 C@1.5 F@2');
    expect(bassText('| C Dm Em F |')).toContain('D@1');
  });

  it('is silent under N.C., and the note before ends there', () => {
    expect(bassText('| N.C. |')).toBe('');
    const last = notesOf('| C N.C. |', 'bass').at(-1);
    expect(quarters((last?.start ?? 0) + (last?.length ?? 0))).toBe(2);
  });

  it('goes on where a chord is held', () => {
    expect(bassText('| C | % |')).toBe('C@0 C@1.5 G@2 C@4 C@5.5 G@6');
  });

  it('leads by a half step into the next root when it walks', () => {
    expect(bassText('| C | F |', 'shuffle')).toBe('C@0 E@1 G@2 E@3 F@4 A@5 C@6 C@7');
  });

  it('stays in the range of a bass, and on a string that has the note', () => {
    const notes = notesOf(
      '| C | Db | D | Eb | E | F | Gb | G | Ab | A | Bb | B |',
      'bass',
      'sixteen',
    );
    expect(Math.min(...notes.map(({ midi }) => midi))).toBe(28);
    expect(Math.max(...notes.map(({ midi }) => midi))).toBeLessThanOrEqual(52);
    const open = [43, 38, 33, 28];
    expect(notes.every(({ midi, string }) => midi >= (open[string - 1] ?? 99))).toBe(true);
  });
});

describe('the comp', () => {
  it('strums the grip that is planned, from the low side down', () => {
    const planned = gripsOf(chord('C'), STANDARD_GUITAR)[2];
    if (planned === undefined) throw new Error('a third grip of C');
    const { parts } = makePerformance({
      chart: chart('| C |'),
      instrument: STANDARD_GUITAR,
      feel: 'straight',
      gripAt: () => planned,
    });
    const first = parts.comp.filter(isNote).filter(({ start }) => start === 0);
    expect(first.map(({ string }) => string)).toEqual(
      planned.tones.map(({ string }) => string as number).sort((a, b) => b - a),
    );
    const late = first.map((note) => note.late ?? 0);
    expect(late).toEqual([...late].sort((a, b) => a - b));
    expect(new Set(late).size).toBe(first.length);
  });

  it('strums upwards from the thin side, on fewer strings', () => {
    const up = notesOf('| C |', 'comp').filter(({ start }) => quarters(start) === 1.5);
    expect(up.map(({ string }) => string)).toEqual([1, 2, 3, 4]);
  });

  it('strikes every chord where it begins, and each stroke until the next', () => {
    expect(strokes('| C F |')).toContain(2);
    expect(strokes('| C / / F |')).toContain(3);
    const notes = notesOf('| C / / F |', 'comp');
    const before = notes.filter(({ start }) => quarters(start) === 2.5);
    expect(before.every(({ length }) => quarters(length) === 0.5)).toBe(true);
  });

  it('is silent under N.C.', () => {
    expect(strokes('| N.C. | C |').every((start) => start >= 4)).toBe(true);
  });

  it('plays every round of a repeat, and the ending of that round', () => {
    const starts = notesOf('|: C |1. F :|2. G |', 'bass').map(({ midi, start }) => [
      quarters(start),
      nameOf(midi),
    ]);
    const roots = starts.filter(([start]) => Number(start) % 4 === 0).map(([, name]) => name);
    expect(roots).toEqual(['C', 'F', 'C', 'G']);
  });

  it('plays only chord tones, on any instrument', () => {
    const bass = instrument({ tuning: 'E1-A1-D2-G2' });
    for (const symbol of ['Cmaj7', 'F#m7b5', 'Bb13#11', 'C5', 'G7sus4'])
      for (const on of [STANDARD_GUITAR, bass]) {
        const places = voicingOf(chord(symbol), on);
        expect(places.length).toBeGreaterThan(0);
        expect(new Set(places.map(({ string }) => string)).size).toBe(places.length);
        const wanted = chordNotes(chord(symbol)).map((name) => pitchClassOf(name) as number);
        const sounding = places.map((place) => (midiAtPlace(on, place) ?? Number.NaN) % 12);
        expect(sounding.filter((one) => !wanted.includes(one))).toEqual([]);
      }
  });
});

describe('drums and click', () => {
  const hits = (text: string, part: PartName, feel?: FeelName): string =>
    perform(text, feel)
      .parts[part].flatMap((event) =>
        event.kind === 'hit' ? [`${event.drum}@${quarters(event.start)}`] : [],
      )
      .join(' ');

  it.each([
    ['| C |', 'accent@0 click@1 click@2 click@3'],
    ['3/4 | C |', 'accent@0 click@1 click@2'],
    ['2/2 | C |', 'accent@0 click@2'],
    ['6/8 | C |', 'accent@0 click@0.5 click@1 click@1.5 click@2 click@2.5'],
    ['5/8 | C |', 'accent@0 click@0.5 click@1 click@1.5 click@2'],
    ['3/4 | C | 4/4 G |', 'accent@0 click@1 click@2 accent@3 click@4 click@5 click@6'],
  ])('clicks %s as %s', (text, expected) => {
    expect(hits(text, 'click')).toBe(expected);
  });

  it('clicks the groups of a compound metre, and softly within them', () => {
    const forces = perform('6/8 | C |').parts.click.map(({ force }) => force);
    expect(forces).toEqual([0.9, 0.3, 0.3, 0.7, 0.3, 0.3]);
  });

  it('has the backbeat on two and four', () => {
    for (const feel of FEELS) {
      const back = FEEL_ROWS[feel].back;
      const starts = hits('| C |', 'drums', feel)
        .split(' ')
        .filter((one) => one.startsWith(back));
      expect(starts).toEqual(expect.arrayContaining([`${back}@1`, `${back}@3`]));
    }
  });

  it('shuffles: the second eighth comes late, at the third of a triplet', () => {
    expect(hits('| C |', 'drums', 'shuffle')).toContain('ride@1.667');
    expect(hits('| C |', 'drums', 'straight')).toContain('hat@1.5');
  });

  it('goes on under N.C.', () => {
    expect(hits('| N.C. |', 'drums')).toBe(hits('| C |', 'drums'));
  });

  it.each([
    '1/4',
    '2/4',
    '3/4',
    '4/4',
    '5/4',
    '7/4',
    '2/2',
    '3/2',
    '1/1',
    '3/8',
    '5/8',
    '6/8',
    '7/8',
    '9/8',
    '12/8',
    '13/16',
    '1/8',
    '2/8',
    '1/16',
  ])('fills bars of %s and nothing beyond, in every feel', (metre) => {
    for (const feel of FEELS) {
      const performance = perform(`${metre} | C | F |`, feel);
      const bar = playedOf(chart(`${metre} | C | F |`)).bars[1];
      for (const part of ['comp', 'bass', 'drums', 'click'] as const) {
        const starts = performance.parts[part].map(({ start }) => start as number);
        expect(Math.max(...starts)).toBeLessThan(performance.length);
        expect(starts).toContain(0);
        expect(starts.some((start) => start >= (bar?.start ?? Number.NaN))).toBe(true);
      }
    }
  });

  it('counts in so many bars of the metre', () => {
    const metre = parseMetre('3/4');
    if (metre === undefined) throw new Error('3/4');
    expect(countIn(metre, 2).map(({ start }) => quarters(start))).toEqual([0, 1, 2, 3, 4, 5]);
    expect(countIn(metre, 0)).toEqual([]);
  });

  it('plays nothing for an empty chart', () => {
    const { parts, length } = perform('');
    expect(length).toBe(0);
    expect(Object.values(parts).flat()).toEqual([]);
  });
});
