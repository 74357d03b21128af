import { describe, expect, it } from 'vitest';
import {
  ADDRESS_KEYS,
  DEFAULT_WORKSPACE,
  KEPT,
  makeAddress,
  makeWorkspace,
  parseAddress,
  parseWorkspace,
  returnedTo,
  sameWork,
  type Workspace,
} from '#lesson';
import { OTHER, value } from './arbitrary.ts';

type Part = keyof Workspace;
const PARTS = Object.keys(KEPT) as Part[];

const withPart = (part: Part): Workspace => ({ ...DEFAULT_WORKSPACE, [part]: OTHER[part] });

describe('the table of what is kept where', () => {
  it('has a row for every part of a workspace', () => {
    expect(PARTS.toSorted()).toEqual(Object.keys(OTHER).toSorted());
  });

  it('gives every key of the address to one part', () => {
    const keys = Object.values(KEPT).flatMap((keeping) => keeping.address);
    expect(keys.toSorted()).toEqual(ADDRESS_KEYS.toSorted());
  });

  it.each(PARTS)('tells the truth about storage: %s', (part) => {
    const back = value(parseWorkspace(JSON.parse(JSON.stringify(makeWorkspace(withPart(part))))));
    const kept = KEPT[part].storage ? OTHER[part] : DEFAULT_WORKSPACE[part];
    expect(back.workspace[part]).toEqual(kept);
  });

  it.each(PARTS)('tells the truth about the address: %s', (part) => {
    const sent = { ...OTHER };
    const { workspace } = parseAddress(makeAddress(sent), DEFAULT_WORKSPACE);
    if (part === 'instrument') {
      const { frets, leftHanded, capo, scale } = workspace.instrument;
      expect([frets, leftHanded]).toEqual([24, true]);
      expect([capo, scale]).toEqual([0, 648]);
    } else {
      const carried = KEPT[part].address.length > 0 ? OTHER[part] : DEFAULT_WORKSPACE[part];
      expect(workspace[part]).toEqual(carried);
    }
  });

  it.each(PARTS)('tells the truth about undo: %s', (part) => {
    expect(sameWork(DEFAULT_WORKSPACE, withPart(part))).toBe(!KEPT[part].undo);
  });

  it.each(PARTS)('is what undo goes by: %s', (part) => {
    const past = { ...DEFAULT_WORKSPACE };
    const back = returnedTo(past, withPart(part));
    expect(back[part]).toEqual(KEPT[part].undo ? DEFAULT_WORKSPACE[part] : OTHER[part]);
    expect(returnedTo(past, past)).toBe(past);
  });

  it('does not count looking elsewhere as work', () => {
    for (const part of ['at', 'lens', 'turn', 'compare'] as const) {
      expect(KEPT[part].undo).toBe(false);
    }
    const turned: Workspace = { ...DEFAULT_WORKSPACE, turn: 'minor' };
    expect('turn' in returnedTo(turned, { ...DEFAULT_WORKSPACE, lens: 'turn' })).toBe(false);
  });
});
