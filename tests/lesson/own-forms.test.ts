import { describe, expect, it } from 'vitest';
import {
  DEFAULT_WORKSPACE,
  formsFor,
  makeWorkspace,
  type OwnForm,
  ownFormOf,
  parseAddress,
  parseWorkspace,
  tuningOf,
  withInstrument,
} from '#lesson';
import { formsOf, makeInstrument, STANDARD_GUITAR } from '#neck';
import { value } from './arbitrary.ts';

const SHELL: OwnForm = {
  name: 'shell',
  fingering: 'x5453x',
  symbol: 'D7',
  tuning: 'E2-A2-D3-G3-B3-E4',
};
const LOW: OwnForm = {
  name: 'low',
  fingering: '555xxx',
  symbol: 'G5',
  tuning: 'D2-A2-D3-G3-A3-D4',
};

const equipped = withInstrument({ ...DEFAULT_WORKSPACE, ownForms: [SHELL, LOW] }, STANDARD_GUITAR);
const namesOn = (workspace: typeof equipped) =>
  formsOf(workspace.instrument).map(({ name }) => name);

describe('a form that was put down', () => {
  it('is made once, and counted from its lowest fret', () => {
    expect(ownFormOf(SHELL)).toBe(ownFormOf(SHELL));
    expect(ownFormOf(SHELL)?.frets).toEqual([null, 0, 2, 1, 2, null]);
  });

  it.each([
    { ...SHELL, symbol: 'C' },
    { ...SHELL, symbol: 'Hm' },
    { ...SHELL, fingering: 'x545' },
    { ...SHELL, tuning: 'none' },
  ])('is none where its parts do not go together: %j', (own) => {
    expect(ownFormOf(own)).toBeUndefined();
  });

  it('belongs to its tuning; those of other tunings wait', () => {
    expect(namesOn(equipped)).toEqual(['C', 'A', 'G', 'E', 'D', 'shell']);
    const dadgad = value(makeInstrument({ tuning: LOW.tuning, capo: 2 }));
    expect(formsFor(dadgad, [SHELL, LOW]).map(({ name }) => name)).toEqual(['low']);
    const there = withInstrument(equipped, dadgad);
    expect(namesOn(there).at(-1)).toBe('low');
    const back = withInstrument(there, STANDARD_GUITAR);
    expect(namesOn(back)).toEqual(namesOn(equipped));
    expect(tuningOf(dadgad)).toBe(LOW.tuning);
  });
});

describe('withInstrument', () => {
  it('changes nothing where the instrument has its forms', () => {
    expect(withInstrument(equipped, equipped.instrument)).toBe(equipped);
    expect(withInstrument(DEFAULT_WORKSPACE, STANDARD_GUITAR)).toBe(DEFAULT_WORKSPACE);
  });

  it('leaves no form on the instrument that the list does not have', () => {
    const bare = withInstrument({ ...equipped, ownForms: [] }, equipped.instrument);
    expect(bare.instrument).toEqual(STANDARD_GUITAR);
    expect('ownForms' in bare.instrument).toBe(false);
  });

  it('is kept to by what is read from storage and from an address', () => {
    const stored = JSON.parse(JSON.stringify(makeWorkspace(equipped)));
    expect(namesOn(value(parseWorkspace(stored)).workspace)).toEqual(namesOn(equipped));
    const { workspace, leftOut } = parseAddress('#frets=24&form=shell', equipped);
    expect([workspace.form, leftOut]).toEqual(['shell', []]);
    expect(namesOn(workspace)).toEqual(namesOn(equipped));
  });
});
