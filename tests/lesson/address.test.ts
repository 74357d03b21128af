import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_WORKSPACE, makeAddress, parseAddress, type Workspace } from '#lesson';
import { formsOf, makeInstrument, specOf } from '#neck';
import { OTHER, value, workspaces } from './arbitrary.ts';

const read = (hash: string, base: Workspace = DEFAULT_WORKSPACE) => parseAddress(hash, base);

/** What an address carries, as plain data. */
function carried({ progression, at, position, form, instrument, show, route }: Workspace) {
  const { tuning, frets, leftHanded } = specOf(instrument);
  return { progression, at, position, form, tuning, frets, leftHanded, show, route };
}

describe('makeAddress', () => {
  it('always writes progression, cursor and position, and nothing else that is as usual', () => {
    const plain = { ...DEFAULT_WORKSPACE, progression: 'C G' };
    expect(makeAddress(plain)).toBe('progression=C+G&at=1.1&position=7');
  });

  it('writes the rest under the names of the contract', () => {
    expect(makeAddress(OTHER)).toBe(
      'progression=3%2F4%0A%7C+Gm+%7C+D7%2FF%23+%7C&at=2.3&position=3&form=E' +
        '&tuning=D2-A2-D3-G3-B3-E4&frets=24&hand=left&show=b7%2C9&route=stay',
    );
  });

  it('writes a beat between two with its fraction', () => {
    const between = { ...DEFAULT_WORKSPACE, at: { bar: 1, beat: 7 / 3 } };
    expect(new URLSearchParams(makeAddress(between)).get('at')).toBe('1.2.333');
  });
});

describe('parseAddress', () => {
  it('gives back what makeAddress wrote, whatever the base', () => {
    fc.assert(
      fc.property(workspaces, workspaces, (workspace, base) => {
        const { form, instrument } = workspace;
        fc.pre(form === undefined || formsOf(instrument).some(({ name }) => name === form));
        const back = read(makeAddress(workspace), base);
        expect(back.leftOut).toEqual([]);
        expect(carried(back.workspace)).toEqual(carried(workspace));
      }),
    );
  });

  it('leaves alone what an address does not carry', () => {
    const { workspace } = read('#progression=C', OTHER);
    const { span, key, spelling, labels, spacing, theme, shortcuts } = workspace;
    expect({ span, key, spelling, labels, spacing, theme, shortcuts }).toEqual({
      span: OTHER.span,
      key: OTHER.key,
      spelling: 'plain',
      labels: 'notes',
      spacing: 'even',
      theme: 'dark',
      shortcuts: false,
    });
  });

  it('means the usual thing where it says nothing', () => {
    const { workspace } = read('#progression=C', OTHER);
    expect(carried(workspace)).toEqual({
      ...carried(DEFAULT_WORKSPACE),
      progression: 'C',
      at: { bar: 1, beat: 1 },
    });
  });

  it('keeps the work where it says nothing of the progression', () => {
    const { workspace } = read('#position=4', OTHER);
    expect([workspace.progression, workspace.at]).toEqual([OTHER.progression, OTHER.at]);
  });

  it('keeps the gauges of a tuning that stays', () => {
    const instrument = value(
      makeInstrument({ tuning: 'D2-A2-D3-G3-B3-E4', gauges: [9, 11, 16, 24, 32, 42] }),
    );
    const base = { ...DEFAULT_WORKSPACE, instrument };
    expect(read(makeAddress(base), base).workspace.instrument).toBe(instrument);
  });

  it.each([
    ['at=9.1', 'at “9.1”: the progression has 2 bars'],
    ['at=1.5', 'at “1.5”: bar 1 has 4 beats'],
    ['at=soon', 'at “soon”: expected bar.beat, both from 1, as 2.1'],
    ['position=0', 'position “0”: expected a fret from 1 to 22'],
    ['position=23', 'position “23”: expected a fret from 1 to 22'],
    ['position=VII', 'position “VII”: expected a fret from 1 to 22'],
    ['form=H', 'form “H”: expected C, A, G, E, D'],
    ['tuning=E2-A2', 'tuning “E2-A2”: expected 4 to 8 notes such as E2-A2-D3-G3-B3-E4'],
    ['frets=99', 'frets “99”: expected a whole number from 12 to 27'],
    ['frets=', 'frets “”: expected a whole number from 12 to 27'],
    ['hand=both', 'hand “both”: expected left or right'],
    ['show=zz', 'show “zz”: expected R or a number from 1 to 13, with # or b before it'],
    ['route=fly', 'route “fly”: expected stay, carry, travel'],
    ['colour=red', '“colour”: nothing here has that name'],
  ])('leaves %s out, says so, and takes the rest', (bad, why) => {
    const good = read('#progression=C%7CG');
    expect(good.leftOut).toEqual([]);
    expect(read(`#progression=C%7CG&${bad}`)).toEqual({ ...good, leftOut: [why] });
  });

  it('takes the degrees that it understands', () => {
    const { workspace, leftOut } = read('#show=b7,x,9,b7');
    expect(workspace.show).toEqual([
      { number: 7, alter: -1 },
      { number: 9, alter: 0 },
    ]);
    expect(leftOut).toHaveLength(1);
  });

  it('takes a position that the frets it brings allow', () => {
    expect(read('#position=24&frets=24').workspace.position).toBe(24);
    expect(read('#position=20&frets=12').leftOut).toEqual([
      'position “20”: expected a fret from 1 to 12',
    ]);
  });

  it('never throws, and what it gives can be written again', () => {
    const key = fc.constantFrom('progression', 'at', 'position', 'form', 'tuning', 'frets', 'show');
    const pair = fc.tuple(key, fc.string()).map(([name, text]) => `${name}=${text}`);
    const hash = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(pair).map((pairs) => `#${pairs.join('&')}`),
    );
    fc.assert(
      fc.property(hash, (text) => {
        const { workspace } = read(text);
        const again = read(makeAddress(workspace));
        expect(again.leftOut).toEqual([]);
        expect(carried(again.workspace)).toEqual(carried(workspace));
      }),
    );
  });
});
