import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '#lesson';
import { makeInstrument } from '#neck';
import { makeNoteName } from '#theory';
import { studyOf } from '../../../src/ui/store/index.ts';
import type { Study } from '../../../src/ui/store/types.ts';
import { degree, workspace } from './fixture.ts';

const cells = (study: Study): readonly string[] =>
  study.cells.map(({ at, symbol }) => `${at} ${symbol}`);

const study = (...given: Parameters<typeof workspace>): Study => studyOf(workspace(...given));

describe('the cells of the lane', () => {
  it('are one for each chord that is typed', () => {
    expect(cells(study('| Dm7 G7 | C / F / | N.C. |'))).toEqual([
      ...['1.1 Dm7', '1.3 G7', '2.1 C', '2.3 F', '3.1 N.C.'],
    ]);
  });

  it('leave out a chord that only goes on, and repeat those of a bar that stands for another', () => {
    expect(cells(study('| C G | / Am | % |'))).toEqual([
      ...['1.1 C', '1.3 G', '2.2 Am', '3.1 G', '3.2 Am'],
    ]);
  });

  it('carry the reason where a symbol cannot be read', () => {
    const [good, bad] = study('C Hm').cells;
    expect(good?.problem).toBeUndefined();
    expect(bad?.problem).toMatchObject({ code: 'chord', found: 'H', suggestion: 'Bm' });
    expect([bad?.form, bad?.roman]).toEqual([undefined, undefined]);
  });

  it('have the form that serves them where the hand is', () => {
    const { cells: found } = study('Bm7 E7 Amaj7 F#m7', { position: 7 });
    expect(found.map(({ form }) => `${form?.form.name} ${form?.anchor}`)).toEqual([
      ...['E 7', 'A 7', 'D 7', 'C 6'],
    ]);
  });

  it('have the form that was asked for, in its copy nearest to the hand', () => {
    const { cells: found } = study('D A', { position: 14, form: 'C' });
    expect(found.map(({ form }) => `${form?.form.name} ${form?.anchor}`)).toEqual(['C 14', 'C 9']);
  });
});

describe('the chord under the cursor', () => {
  it.each([
    ['1.1', 0],
    ['1.2', 0],
    ['1.3', 1],
    ['2.4', 2],
    ['9.1', 2],
  ])('at %s is the cell that sounds there', (at, cursor) => {
    const [bar = 1, beat = 1] = at.split('.').map(Number);
    expect(study('| C G | Am |', { at: { bar, beat } }).cursor).toBe(cursor);
  });

  it('is found between beats, which are written to three decimals', () => {
    expect(study('| C F G |', { at: { bar: 1, beat: 2.333 } }).cursor).toBe(1);
  });

  it('is none without chords', () => {
    const none = study('');
    expect([none.cursor, none.chord, none.reading, none.places]).toEqual([
      ...[-1, undefined, undefined, []],
    ]);
    expect(none.standing).toEqual({ kind: 'empty' });
    expect(none.account).toBe('No chord yet. Type a progression, such as Dm7 G7 C.');
  });

  it('leaves the neck empty where none sounds', () => {
    const silent = study('N.C. C');
    expect([silent.chord, silent.reading, silent.symbol]).toEqual([undefined, undefined, 'N.C.']);
    expect(silent.account).toMatch(/^N\.C\., no chord, position VII\. Next: C, /);
  });

  it('is the last good one while what is typed cannot be read', () => {
    const good = study('C G', { at: { bar: 2, beat: 1 } });
    const typing = studyOf(workspace('C G7s', { at: { bar: 2, beat: 1 } }), good);
    expect(typing.standing).toMatchObject({ kind: 'unread', found: 'G7s' });
    expect([typing.symbol, typing.chord, typing.reading]).toEqual(['G', good.chord, good.reading]);
    expect(typing.reading).toBe(good.reading);
    expect(typing.account).toMatch(/^“G7s” cannot be read.*Still on the neck: G, position VII/);
  });

  it('is the nearest good one before it where nothing was read yet', () => {
    const unread = study('C Am Hm', { at: { bar: 3, beat: 1 } });
    expect(unread.symbol).toBe('Am');
    expect(study('Hm C').chord).toBeUndefined();
  });
});

describe('what comes next', () => {
  const next = (text: string, bar = 1): string | undefined =>
    study(text, { at: { bar, beat: 1 } }).nextSymbol;

  it('is the next other chord', () => {
    expect(next('| C | C | N.C. | F |')).toBe('F');
    expect(next('| C | % | G |', 2)).toBe('G');
    expect(next('| C | C |')).toBeUndefined();
  });

  it('follows the repeats as they are played', () => {
    expect(next('|: C | G :| F |', 2)).toBe('C');
    expect(next('|: C |1. G :|2. F | Am |', 2)).toBe('C');
    expect(next('|: C |1. G :|2. F | Am |', 3)).toBe('Am');
  });

  it('has the form that serves it at the same position', () => {
    const { nextForm, cells: found } = study('Bm7 E7', { position: 7 });
    expect(nextForm).toBe(found[1]?.form);
    expect(nextForm?.form.name).toBe('A');
  });
});

describe('the key', () => {
  it('is estimated, with its runner-up, unless it is set', () => {
    const { key, keyIsEstimate, runnerUp } = study('Dm7 G7 Cmaj7');
    expect([key && makeNoteName(key.tonic), key?.mode, keyIsEstimate]).toEqual([
      'C',
      'major',
      true,
    ]);
    expect(runnerUp).toBeDefined();
    const set = study('Dm7 G7 Cmaj7', { key: { tonic: { letter: 'D', alter: 0 }, mode: 'minor' } });
    expect([set.key?.tonic.letter, set.keyIsEstimate, set.runnerUp]).toEqual([
      'D',
      false,
      undefined,
    ]);
  });

  it('gives every chord its numeral', () => {
    const numerals = study('Dm7 G7 N.C. Cmaj7').cells.map(({ roman }) => roman !== undefined);
    expect(numerals).toEqual([true, true, false, true]);
  });
});

describe('a study after another', () => {
  const before = study('| Bm7 | E7 | Amaj7 | % |');
  const then = (more: Parameters<typeof workspace>[1]): Study =>
    studyOf(workspace('| Bm7 | E7 | Amaj7 | % |', more), before);

  it('is the same one if nothing changed that it depends on', () => {
    expect(studyOf(before.of, before)).toBe(before);
    expect(then({ theme: 'dark', labels: 'notes', shortcuts: false })).toBe(before);
  });

  it('keeps everything but the reading when the cursor moves', () => {
    const moved = then({ at: { bar: 2, beat: 1 } });
    expect(moved.cursor).toBe(1);
    expect(moved.symbol).toBe('E7');
    expect(moved.cells).toBe(before.cells);
    expect(moved.chart).toBe(before.chart);
    expect(moved.problems).toBe(before.problems);
    expect(moved.nextOf).toBe(before.nextOf);
    expect(moved.key).toBe(before.key);
    expect(moved.reading).not.toBe(before.reading);
    expect(moved.reading?.position).toBe(before.reading?.position);
  });

  it('keeps the reading when the cursor moves to the same chord', () => {
    const third = then({ at: { bar: 3, beat: 1 } });
    const fourth = studyOf({ ...third.of, at: { bar: 4, beat: 1 } }, third);
    expect(fourth.cursor).toBe(3);
    expect(fourth.reading).toBe(third.reading);
    expect(fourth.places).toBe(third.places);
  });

  it('keeps the cells whose form the hand does not change', () => {
    const moved = then({ position: 8 });
    expect(moved.chart).toBe(before.chart);
    const { span } = before.of;
    expect(then({ span: { ...span } }).cells).toBe(before.cells);
    const same = moved.cells.filter((cell, i) => cell === before.cells[i]);
    const sameForms = moved.cells.filter((cell, i) => cell.form === before.cells[i]?.form);
    expect(same).toEqual(sameForms);
  });

  it('keeps lane and places when a colour is switched on', () => {
    const coloured = then({ show: [degree('9')] });
    expect(coloured.cells).toBe(before.cells);
    expect(coloured.places).toBe(before.places);
    expect(coloured.reading).not.toBe(before.reading);
  });

  it('keeps the cells before the place where one types', () => {
    const typed = studyOf(workspace('| Bm7 | E7 | Amaj7 | D |'), before);
    expect(typed.cells.slice(0, 3)).toEqual(before.cells.slice(0, 3));
    expect(typed.cells[0]).toBe(before.cells[0]);
    expect(typed.cells[3]?.symbol).toBe('D');
    expect(typed.reading).toBe(before.reading);
  });

  it('is the same as one made afresh, whatever came before', () => {
    const instrument = makeInstrument({ tuning: 'D2-A2-D3-G3-B3-E4', capo: 2 });
    if (!instrument.ok) throw new Error('the instrument is good');
    const works = [
      ...EXAMPLES.map(({ progression, position }) => workspace(progression, { position })),
      workspace('C', { form: 'E', position: 3 }),
      workspace('| C | G |', { at: { bar: 2, beat: 1 }, spelling: 'plain' }),
      workspace('| C | G |', { key: { tonic: { letter: 'G', alter: 0 }, mode: 'major' } }),
      workspace('| C | G |', { instrument: instrument.value }),
      workspace('', {}),
    ];
    for (const from of works) {
      for (const to of works) expect(studyOf(to, studyOf(from))).toEqual(studyOf(to));
    }
  });
});
