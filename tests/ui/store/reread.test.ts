import { describe, expect, it } from 'vitest';
import { DEFAULT_SPAN, readNeck, STANDARD_GUITAR } from '#neck';
import { parseChord } from '#theory';
import { plainOf, reread, viewOf } from '../../../src/ui/store/reread.ts';
import { studyOf } from '../../../src/ui/store/study.ts';
import { workspace } from './fixture.ts';

const chord = parseChord('C');
if (!chord.ok) throw new Error('C is a chord');

const query = {
  chord: chord.value,
  position: 5,
  instrument: STANDARD_GUITAR,
  span: DEFAULT_SPAN,
  colours: [],
  spelling: 'exact',
} as const;

describe('a reading that is known', () => {
  const reading = reread(query, []);

  it('is made once for the same query, and again for another', () => {
    expect(reading).toEqual(readNeck(query));
    expect(reread({ ...query }, [undefined, reading])).toBe(reading);
    expect(reread({ ...query, position: 6 }, [reading])).not.toBe(reading);
    expect(reread({ ...query, form: 'C' }, [reading])).not.toBe(reading);
  });

  it('is found behind a richer view of it', () => {
    const view = viewOf({ ...reading }, reading);
    expect(plainOf(view)).toBe(reading);
    expect(reread(query, [view])).toBe(reading);
    expect(plainOf(viewOf(reading, reading))).toBe(reading);
    expect(plainOf(undefined)).toBeUndefined();
  });
});

describe('the next chord’s reading', () => {
  it('is that of the chord when the cursor comes to it, but for what bends reach', () => {
    const before = studyOf(workspace('C G Am', { position: 5 }));
    const after = studyOf({ ...before.of, at: { bar: 2, beat: 1 } }, before);
    expect(plainOf(after.reading)).toBe(before.nextReading);
    const back = studyOf(before.of, after);
    expect(back.reading).toEqual(before.reading);
    expect(back.nextReading).toBe(plainOf(after.reading));
  });

  it('is where a route has the hand for it', () => {
    const { nextReading, cells } = studyOf(workspace('C G', { position: 12, route: 'stay' }));
    expect(nextReading?.position).toBe(cells[1]?.position);
  });

  it('is of the chord that a repeat goes back to', () => {
    const end = studyOf(workspace('|: C | G7 :| F |', { at: { bar: 2, beat: 1 } }));
    expect(end.nextReading?.chord).toBe(end.nextChord);
    expect(end.nextSymbol).toBe('C');
    expect(end.connections.length).toBeGreaterThan(0);
  });

  it('is none at the end: no connections, and bends to this chord only', () => {
    const last = studyOf(workspace('C'));
    expect([last.nextReading, last.connections]).toEqual([undefined, []]);
    expect(last.bends.every(({ of }) => of === 'now')).toBe(true);
    const none = studyOf(workspace('N.C. C'));
    expect([none.bends, none.connections, none.colours]).toEqual([[], [], []]);
    expect(none.nextReading).toBeDefined();
  });
});
