import { describe, expect, it } from 'vitest';
import { connectionNotes, type Plan, playedOf, singlesOf, strumOf, studyNotes } from '#line';
import {
  type Bend,
  type Connection,
  fret,
  type Grip,
  millimetres,
  STANDARD_GUITAR,
  stringNumber,
} from '#neck';
import { parseDegree, ticks } from '#theory';
import { gripOf } from '../neck/support.ts';
import { chart, lineText } from './short.ts';

const C = gripOf('C', 'C', 0);
const F = gripOf('F', 'E', 1);

const degree = (text: string) => {
  const read = parseDegree(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};

const place = (string: number, at: number) => ({ string: stringNumber(string), fret: fret(at) });

const connection = (
  from: readonly [number, number],
  to: readonly [number, number],
  semitones: number,
): Connection => ({
  from: place(...from),
  to: place(...to),
  semitones,
  fromDegree: degree('3'),
  toDegree: degree('R'),
});

const grips: readonly Grip[] = [C, F];
const plan: Plan = (index) => {
  const grip = grips[index];
  return { ...(grip ? { grip } : {}), connection: connection([2, 1], [2, 1], 0) };
};

describe('a grip as notes', () => {
  it('is strummed from the lowest string', () => {
    expect(lineText(strumOf(C, ticks(0), ticks(960)))).toBe(
      '5:3@0+1 4:2@0+1 3:0@0+1 2:1@0+1 1:0@0+1',
    );
  });

  it('goes up and down by pitch, in eighths, until its time is filled', () => {
    expect(lineText(singlesOf(C, STANDARD_GUITAR, ticks(960), ticks(3840)))).toBe(
      '5:3@1+0.5 4:2@1.5+0.5 3:0@2+0.5 2:1@2.5+0.5 1:0@3+0.5 2:1@3.5+0.5 3:0@4+0.5 4:2@4.5+0.5',
    );
  });

  it('is cut where its time ends', () => {
    expect(lineText(singlesOf(C, STANDARD_GUITAR, ticks(0), ticks(720)))).toBe(
      '5:3@0+0.5 4:2@0.5+0.25',
    );
  });

  it('names the fingers that hold it', () => {
    const fingers = strumOf(C, ticks(0), ticks(960)).map(({ finger }) => finger ?? 0);
    expect(fingers).toEqual([3, 2, 0, 1, 0]);
  });
});

describe('a way into the next chord', () => {
  const notes = (one: Connection) => connectionNotes(one, ticks(3840), ticks(960), ticks(1920));

  it.each<[string, Connection, string]>([
    ['stays on a common tone', connection([2, 1], [2, 1], 0), '2:1@3+1 2:1@4+2'],
    ['slides on one string', connection([2, 5], [2, 6], 1), '2:5@3+1 2:6@4+2 slide'],
    ['is picked from an open string', connection([3, 0], [3, 2], 2), '3:0@3+1 3:2@4+2'],
    ['is picked on another string', connection([2, 5], [1, 1], 1), '2:5@3+1 1:1@4+2'],
  ])('%s', (_, one, expected) => {
    expect(lineText(notes(one))).toBe(expected);
  });

  it('may be a bend, which arrives at the change', () => {
    const bend: Bend = {
      ...place(3, 7),
      steps: 2,
      pitch: { letter: 'E', alter: 0, octave: 4 },
      degree: degree('3'),
      of: 'next',
      finger: 3,
      direction: 'push',
      travel: millimetres(10),
      force: 5,
      ease: 'comfortable',
    };
    const arrival = { ...connection([3, 7], [3, 7], 2), bend };
    const [note, ...rest] = connectionNotes(arrival, ticks(3840), ticks(960), ticks(960));
    expect(rest).toEqual([]);
    expect(note?.start).toBe(2880);
    expect(note?.bend?.at(-2)).toEqual({ at: 0.5, semitones: 2 });
    expect(note?.bend?.[0]).toEqual({ at: 0, semitones: 0 });
  });
});

describe('the reading over a chart', () => {
  const study = (name: Parameters<typeof studyNotes>[0], text: string, how: Plan = plan): string =>
    lineText(studyNotes(name, playedOf(chart(text)), how, STANDARD_GUITAR));

  it('is silent when nothing is studied, and where nothing is planned', () => {
    expect(study('none', '| C | F |')).toBe('');
    expect(study('strum', '| C | F |', () => undefined)).toBe('');
    expect(study('connect', '| C | F |', () => undefined)).toBe('');
  });

  it('strums each chord for as long as it sounds, again in a repeat', () => {
    const once = study('strum', '| C | % | F |');
    expect(once).toContain('5:3@0+8');
    expect(study('strum', '|: C :|').match(/5:3@/g)).toEqual(['5:3@', '5:3@']);
  });

  it('is silent where no chord stands', () => {
    expect(study('strum', '| N.C. | N.C. |')).toBe('');
    expect(study('connect', '| C | N.C. |')).toBe('');
  });

  it('connects around each change, a half note at most on either side', () => {
    expect(study('connect', '| C | F |')).toBe('2:1@2+2 2:1@4+2');
    expect(study('connect', '| C F |')).toBe('2:1@1+1 2:1@2+1');
    expect(study('connect', '| C | % | % | F |')).toBe('2:1@10+2 2:1@12+2');
  });

  it('asks for the chord that is really next, in every round', () => {
    const asked: string[] = [];
    study('connect', '|: C |1. F :|2. G | C |', (index, next) => {
      asked.push(`${index}>${next ?? '-'}`);
      return undefined;
    });
    expect(asked).toEqual(['0>1', '1>0', '0>2', '2>3', '3>-']);
  });
});
