import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_WORKSPACE, makeWorkspace, parseWorkspace, type Workspace } from '#lesson';
import { OTHER, value, workspaces } from './arbitrary.ts';

const throughText = (workspace: Workspace): unknown =>
  JSON.parse(JSON.stringify(makeWorkspace(workspace)));

const spoiled = (parts: Readonly<Record<string, unknown>>) =>
  value(parseWorkspace({ ...makeWorkspace(OTHER), ...parts }));

describe('makeWorkspace and parseWorkspace', () => {
  it('give back what was kept', () => {
    expect(value(parseWorkspace(throughText(OTHER)))).toEqual({ workspace: OTHER, refused: [] });
  });

  it('are inverse for any workspace', () => {
    fc.assert(
      fc.property(workspaces, (workspace) => {
        expect(value(parseWorkspace(throughText(workspace)))).toEqual({ workspace, refused: [] });
      }),
    );
  });

  it('take what is absent as on a first visit, without a word', () => {
    const read = value(parseWorkspace({ version: 1 }));
    expect(read).toEqual({ workspace: DEFAULT_WORKSPACE, refused: [] });
  });

  it.each([
    ['progression', 7],
    ['progression', 'x'.repeat(500_001)],
    ['at', 'start'],
    ['at', { bar: 0, beat: 1 }],
    ['at', { bar: 1.5, beat: 1 }],
    ['at', { bar: 1, beat: 'x' }],
    ['position', 0],
    ['position', 25],
    ['position', '3'],
    ['form', ['E']],
    ['instrument', 'guitar'],
    ['instrument', { ...Object(makeWorkspace(OTHER)['instrument']), frets: 99 }],
    ['instrument', { ...Object(makeWorkspace(OTHER)['instrument']), gauges: ['x'] }],
    ['span', { index: 5, little: 5 }],
    ['show', 'b7'],
    ['show', ['b7', 'z']],
    ['key', { tonic: 'H', mode: 'minor' }],
    ['key', { tonic: 'A', mode: 'blue' }],
    ['spelling', 'odd'],
    ['labels', null],
    ['spacing', 1],
    ['theme', 'constructor'],
    ['shortcuts', 'no'],
    ['route', 'fly'],
    ['routeTo', { position: 0, bar: 1 }],
    ['routeTo', { position: 5 }],
    ['routeTo', 12],
    ['weights', { ...OTHER.weights, shift: -1 }],
    ['weights', { shift: 1 }],
    ['pins', [{ at: 'soon', form: 'E', anchor: 5 }]],
    ['pins', [{ at: '1.1', form: 'E', anchor: 28 }]],
    ['pins', [{ at: '1.1', form: 'E', anchor: -3 }]],
    ['pins', { at: '1.1', form: 'E', anchor: 5 }],
    ['bendLimits', { ...OTHER.bendLimits, model: 'guess' }],
    ['bendLimits', { ...OTHER.bendLimits, woundFactor: 'x' }],
    ['bendLimits', { ...OTHER.bendLimits, hard: { force: 2, travel: 2 } }],
    ['ownForms', [{ ...OTHER.ownForms[0], symbol: 'C' }]],
    ['ownForms', [{ ...OTHER.ownForms[0], name: 'x'.repeat(31) }]],
    ['ownForms', 'low'],
    ['lens', 'telescope'],
    ['turn', 'upside down'],
    ['compare', { kind: 'chord', symbol: 'H' }],
    ['compare', { kind: 'form', form: 7 }],
    ['compare', 'D9'],
    ['fingering', 'x'.repeat(101)],
  ] as const)('name %s when it is %j, and keep the rest', (part, bad) => {
    const { workspace, refused } = spoiled({ [part]: bad });
    expect(refused).toEqual([part]);
    expect(workspace[part]).toEqual(DEFAULT_WORKSPACE[part]);
    const rest = (whole: Workspace) => ({ ...whole, [part]: undefined });
    expect(rest(workspace)).toEqual(rest(OTHER));
  });

  it('refuse what is no object and what a later program made', () => {
    expect(parseWorkspace([1])).toMatchObject({ ok: false, error: { code: 'not-an-object' } });
    expect(parseWorkspace(null)).toMatchObject({ ok: false, error: { code: 'not-an-object' } });
    expect(parseWorkspace({ version: 2 })).toEqual({
      ok: false,
      error: { code: 'version', found: '2', expected: 'version 1' },
    });
  });

  it('never throw, whatever JSON is found', () => {
    const part = fc.constantFrom(...Object.keys(OTHER));
    fc.assert(
      fc.property(fc.dictionary(part, fc.jsonValue()), (json) => {
        const { workspace, refused } = value(parseWorkspace({ ...json, version: 1 }));
        for (const name of refused) expect(workspace[name]).toEqual(DEFAULT_WORKSPACE[name]);
        expect(refused.every((name) => name in json || name === 'position')).toBe(true);
      }),
    );
  });
});
