import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formsOf } from '#neck';
import { makeDegree } from '#theory';
import { fingeredOf } from '../../../src/ui/store/fingered.ts';
import { createStudyStore, fieldError, studyOf } from '../../../src/ui/store/index.ts';
import type { Fingered } from '../../../src/ui/store/types.ts';
import { type Act, acted, workspace } from './fixture.ts';

const song = workspace('| A | E7 |', { position: 7 });

const typed = (...texts: readonly string[]) =>
  acted(
    song,
    ...texts.map(
      (text): Act =>
        (i) =>
          i.setFingering(text),
    ),
  );

const same = (start: typeof song, act: Act): boolean => {
  const { state, before } = acted(start, act);
  return state === before;
};

const degrees = (fingered: Fingered | undefined): string =>
  (fingered?.places ?? [])
    .map(({ degree }) => (degree ? makeDegree(degree) : '-'))
    .toReversed()
    .join(' ');

describe('a fingering that is typed', () => {
  it.each([
    ['x7678x', 'E7#9', 'R 3 b7 #9'],
    ['x-10-12-11-12-x', 'Gmaj7', 'R 5 7 3'],
    ['x32010', 'C', 'R 3 5 R 3'],
    ['032010', 'C/E', '3 R 3 5 R 3'],
  ])('%s is named %s, with its degrees', (text, symbol, expected) => {
    const { fingered } = typed(text).study;
    expect([fingered?.names[0]?.symbol, degrees(fingered)]).toEqual([symbol, expected]);
    expect([fingered?.chosen, fingered?.error]).toEqual([0, undefined]);
  });

  it('gives pitches as the name spells them, and fingers', () => {
    const { fingered } = typed('x7678x').study;
    expect(fingered?.places[0]).toEqual({
      string: 2,
      fret: 8,
      pitch: { letter: 'F', alter: 2, octave: 4 },
      degree: { number: 9, alter: 1 },
      finger: 4,
    });
  });

  it('can be counted in another of its names', () => {
    const first = typed('x02010');
    const names = first.study.fingered?.names.map(({ symbol }) => symbol) ?? [];
    expect(names.slice(0, 2)).toEqual(['Am7', expect.any(String)]);
    const other = acted(first.workspace, (i) => i.chooseName(1));
    expect(other.study.fingered?.chosen).toBe(1);
    expect(degrees(other.study.fingered)).not.toBe(degrees(first.study.fingered));
    expect(other.undone).toBe(0);
    const moved = acted(
      first.workspace,
      (i) => i.chooseName(1),
      (i) => i.moveCursor(1),
    );
    expect(moved.study.fingered?.chosen).toBe(1);
    for (const bad of [0, 99, -1]) {
      expect(same(first.workspace, (i) => i.chooseName(bad))).toBe(true);
    }
    expect(same(song, (i) => i.chooseName(1))).toBe(true);
  });

  it('that is half typed says why, and shows the strings so far and no others', () => {
    const { study, workspace: now } = typed('x32010', 'x7678');
    expect(now.fingering).toBe('x7678');
    expect(study.fingered?.error).toBe('“x7678”: expected 6 signs, one for each string, as x7678x');
    expect(study.fingered?.names[0]?.symbol).toBe('E7#9');
    expect(study.fingered?.frets).toEqual([null, 8, 7, 6, 7, null]);
    expect(typed('x32').study.fingered?.names).toEqual([]);
    expect(typed('x-10-12').study.fingered?.frets).toEqual([null, null, null, 12, 10, null]);
  });

  it('that cannot be read at all shows nothing of the one before', () => {
    for (const text of ['q', 'x32q10', '99-x', 'x320101']) {
      const { fingered } = typed('x7678x', text).study;
      expect([fingered?.names, fingered?.places, fingered?.chosen]).toEqual([[], [], -1]);
      expect(fingered?.error).toMatch(/expected/);
    }
  });

  it('that no hand could hold is named and says so', () => {
    const { fingered } = typed('1-x-x-x-x-20').study;
    expect(fingered?.error).toMatch(/expected frets no more than \d+ mm apart/);
    expect(fingered?.frets).toEqual([20, null, null, null, null, 1]);
  });

  it('is taken back as it was typed: character by character is one step', () => {
    const { undone } = typed('x', 'x7', 'x76');
    expect(undone).toBe(1);
    expect(typed('x7678x', 'x32010').undone).toBe(2);
    const whole = typed('x', 'x3', 'x32', 'x320', 'x3201', 'x32010');
    expect(whole.workspace.lens).toBe('fingering');
    expect(whole.undone).toBe(1);
    expect(typed('x7678x', '').study.fingered).toBeUndefined();
  });

  it('is refused where it is longer than any', () => {
    const { state, workspace: now } = typed('x7678x', 'x'.repeat(101));
    expect(fieldError(state, 'fingering')).toMatch(/^expected one sign/);
    expect(now.fingering).toBe('x7678x');
  });

  it('never breaks anything, whatever it is', () => {
    const signs = fc.string({ unit: fc.constantFrom(...'xX×0123456789-, q'), maxLength: 20 });
    fc.assert(
      fc.property(fc.oneof(signs, fc.string({ unit: 'binary', maxLength: 20 })), (text) => {
        const fingered = fingeredOf(workspace('', { fingering: text }), undefined);
        expect(fingered === undefined).toBe(text.trim() === '');
        if (!fingered) return;
        expect(fingered.error === undefined || fingered.error !== '').toBe(true);
        expect(fingered.chosen < fingered.names.length).toBe(true);
        const sounding = fingered.frets.filter((f) => f !== null).length;
        expect(fingered.places).toHaveLength(sounding);
        if (fingered.error === undefined) expect(sounding).toBeGreaterThan(1);
      }),
    );
  });
});

describe('undo of what was typed', () => {
  it('goes back over hand and text step by step, and says which', () => {
    const store = createStudyStore(song);
    const { intents, cell } = store;
    for (const text of ['x', 'x3', 'x32', 'x320', 'x3201', 'x32010']) intents.setFingering(text);
    intents.moveCursor(1);
    intents.stepPosition(1);
    intents.stepPosition(1);
    const told = (): string | undefined => cell.get().notices.find(({ id }) => id === 'undo')?.text;
    intents.undo();
    expect([told(), cell.get().workspace.fingering]).toEqual(['Undone: hand', 'x32010']);
    intents.undo();
    expect([told(), cell.get().workspace.fingering]).toEqual(['Undone: fingering', '']);
    expect(cell.get().study.fingered).toBeUndefined();
    intents.redo();
    expect([told(), cell.get().study.fingered?.names[0]?.symbol]).toEqual([
      'Done again: fingering',
      'C',
    ]);
  });
});

describe('fingers put down on the neck', () => {
  const put = (...places: readonly (readonly [string: number, fret: number])[]) =>
    acted(
      song,
      ...places.map(
        ([s, f]): Act =>
          (i) =>
            i.putFinger(s, f),
      ),
    );

  it('become a fingering', () => {
    const { workspace: now, undone, notices } = put([5, 7], [4, 6], [3, 7], [2, 8]);
    expect([now.fingering, undone, notices]).toEqual(['x7678x', 4, []]);
    expect(put([5, 10], [4, 12]).workspace.fingering).toBe('x-10-12-x-x-x');
    expect(put([1, 0], [2, 1]).workspace.fingering).toBe('xxxx10');
  });

  it('replace each other on a string, and are lifted where they are put again', () => {
    expect(put([5, 7], [5, 9], [4, 6]).workspace.fingering).toBe('x96xxx');
    expect(put([5, 7], [4, 6], [5, 7]).workspace.fingering).toBe('xx6xxx');
    expect(put([5, 7], [5, 7]).workspace.fingering).toBe('');
    const two = put([5, 7], [4, 6]).workspace;
    expect(acted(two, (i) => i.liftFinger(5)).workspace.fingering).toBe('xx6xxx');
    expect(same(two, (i) => i.liftFinger(1))).toBe(true);
    expect(same(two, (i) => i.liftFinger(9))).toBe(true);
  });

  it.each([
    [7, 5],
    [0, 5],
    [1, 23],
    [1, -1],
    [1, 2.5],
  ])('off the neck, on string %i at fret %i, are none', (string, fret) => {
    expect(same(song, (i) => i.putFinger(string, fret))).toBe(true);
  });

  it('are refused beyond a hand, and what is there stays', () => {
    const wide = put([6, 1], [1, 19]);
    expect(wide.workspace.fingering).toBe('1xxxxx');
    expect(fieldError(wide.state, 'fingering')).toMatch(/^“1-x-x-x-x-19”: expected frets no more/);
    expect(put([6, 1], [1, 19], [1, 3]).notices).toEqual([]);
  });

  it('lie at the capo at the least', () => {
    const capo = acted(song, (i) => i.setCapo(3)).workspace;
    expect(same(capo, (i) => i.putFinger(1, 2))).toBe(true);
    expect(acted(capo, (i) => i.putFinger(1, 3)).workspace.fingering).toBe('xxxxx3');
  });
});

describe('a form of one’s own', () => {
  const saved = acted(
    song,
    (i) => i.setFingering('x5453x'),
    (i) => i.saveOwnForm(' shell '),
  );
  const names = ({ workspace: now }: typeof saved): readonly string[] =>
    formsOf(now.instrument).map(({ name }) => name);

  it('is saved, and takes part in readings and routes', () => {
    expect(saved.workspace.ownForms).toEqual([
      { name: 'shell', fingering: 'x5453x', symbol: 'D7', tuning: 'E2-A2-D3-G3-B3-E4' },
    ]);
    expect(names(saved).at(-1)).toBe('shell');
    const there = acted(
      saved.workspace,
      (i) => i.moveCursor(1),
      (i) => i.pickForm('shell'),
    );
    expect(there.study.reading?.chosen).toMatchObject({ form: { name: 'shell' }, anchor: 5 });
    const carried = acted(there.workspace, (i) => i.setRoute('carry'));
    expect(carried.study.cells[1]?.form?.form.name).toBe('shell');
  });

  it('keeps the name that was chosen for the fingering', () => {
    const second = acted(
      song,
      (i) => i.setFingering('x02010'),
      (i) => i.chooseName(1),
      (i) => i.saveOwnForm('mine'),
    );
    expect(second.study.fingered?.chosen).toBe(1);
    expect(second.workspace.ownForms[0]?.symbol).toBe(second.study.fingered?.names[1]?.symbol);
  });

  it('is taken back and done again with its form', () => {
    const undone = acted(
      saved.workspace,
      (i) => i.deleteOwnForm('shell'),
      (i) => i.undo(),
    );
    expect(names(undone)).toEqual(names(saved));
  });

  it.each<readonly [string, Act]>([
    ['frets', (i) => i.setFrets(24)],
    ['capo', (i) => i.setCapo(2)],
    ['scale', (i) => i.setScale(630)],
    ['gauges', (i) => i.setGauges([9, 11, 16, 24, 32, 42])],
    ['hand', (i) => i.setLeftHanded(true)],
    ['all', (i) => i.resetInstrument()],
  ])('stays on the instrument when its %s is set', (_field, act) => {
    expect(names(acted(saved.workspace, act))).toContain('shell');
  });

  it('waits while another tuning is on', () => {
    const other = acted(saved.workspace, (i) => i.setTuning('DADGAD'));
    expect(names(other)).not.toContain('shell');
    expect(other.workspace.ownForms).toEqual(saved.workspace.ownForms);
    expect(names(acted(other.workspace, (i) => i.resetInstrument()))).toContain('shell');
  });

  it.each([
    ['', 'expected a name'],
    ['C', '“C”: another form has that name'],
    ['x'.repeat(31), 'expected at most 30 signs'],
  ])('is refused the name %j', (name, why) => {
    const { state, before } = acted(typed('x5453x').workspace, (i) => i.saveOwnForm(name));
    expect(fieldError(state, 'ownForm')).toBe(why);
    expect(state.workspace).toBe(before.workspace);
  });

  it.each([
    ['', 'expected a fingering that has a name'],
    ['xxxxx3', 'expected a fingering that has a name'],
    ['1-x-x-5-x-20', /expected frets no more than/],
  ])('is not made of %j', (fingering, why) => {
    const { state } = acted(workspace('C', { fingering }), (i) => i.saveOwnForm('new'));
    expect(fieldError(state, 'ownForm')).toMatch(why);
    expect(state.workspace.ownForms).toEqual([]);
  });

  it('gets another name wherever it is asked for', () => {
    const used = acted(
      saved.workspace,
      (i) => i.compareWithForm('shell'),
      (i) => i.pickForm('shell'),
      (i) => i.pinForm(1, 'shell', 5),
    );
    const { workspace: now, study } = acted(used.workspace, (i) =>
      i.renameOwnForm('shell', 'Muschel'),
    );
    expect(now).toMatchObject({
      form: 'Muschel',
      compare: { form: 'Muschel' },
      pins: [{ form: 'Muschel' }],
    });
    expect(study.reading?.chosen?.form.name).toBe('Muschel');
    expect(study).toEqual(studyOf(now));
    const bad = acted(used.workspace, (i) => i.renameOwnForm('shell', 'E'));
    expect(fieldError(bad.state, 'ownForm')).toBe('“E”: another form has that name');
    expect(bad.workspace).toBe(used.workspace);
    expect(same(used.workspace, (i) => i.renameOwnForm('shell', 'shell'))).toBe(true);
    expect(same(used.workspace, (i) => i.renameOwnForm('none', 'new'))).toBe(true);
  });

  it('is forgotten wherever it is asked for', () => {
    const gone = acted(
      saved.workspace,
      (i) => i.compareWithForm('shell'),
      (i) => i.pickForm('shell'),
      (i) => i.pinForm(1, 'shell', 5),
      (i) => i.deleteOwnForm('shell'),
    );
    const { form, compare, pins, ownForms } = gone.workspace;
    expect([form, compare, pins, ownForms]).toEqual([undefined, undefined, [], []]);
    expect(names(gone)).toEqual(['C', 'A', 'G', 'E', 'D']);
    expect(same(song, (i) => i.deleteOwnForm('C'))).toBe(true);
  });
});
