import { describe, expect, it } from 'vitest';
import type { Labels } from '#lesson';
import { stringNumber } from '#neck';
import { saysAs } from '../../../src/ui/material/labelled.ts';
import {
  arrowHead,
  bendArcs,
  connectionKey,
  connectionMove,
  placeRadius,
  tagAt,
  turnMark,
} from '../../../src/ui/material/overlay-marks.ts';
import { layoutNeck } from '../../../src/ui/neck/layout.ts';
import { LAYOUT } from '../neck/support.ts';
import { first, study } from './fixture.ts';

const nowhere = () => false;
const everywhere = () => true;

describe('bendArcs', () => {
  const { bends } = study('| Bm7 | E7 |', 7);
  const arcs = bendArcs(bends, LAYOUT, nowhere);

  it('draws no bend that is not practical, and one arc for each place and distance', () => {
    const practical = bends.filter(({ ease }) => ease !== 'no');
    const places = new Set(practical.map((bend) => `${bend.string}:${bend.fret}:${bend.steps}`));
    expect(arcs).toHaveLength(places.size);
    expect(arcs.flatMap(({ keys }) => keys)).toHaveLength(practical.length);
  });

  it('lifts what is reached over the string, the higher the further', () => {
    for (const { tip, start } of arcs) expect(tip.y).toBeLessThan(start.y);
    const height = (key: string): number => {
      const arc = first(arcs.filter(({ keys }) => keys.includes(key)));
      return arc.start.y - arc.tip.y;
    };
    expect(height('bend 2:8:2:now')).toBeGreaterThan(height('bend 2:8:1:next'));
  });

  it('marks tones of the next chord with an arrow and joins both where they are one place', () => {
    const labels = arcs.map(({ label }) => label);
    expect(labels).toContain('→3');
    expect(labels).toContain('♭3 →♭7');
  });

  it('begins at the edge of a tone', () => {
    const marked = bendArcs(bends, LAYOUT, everywhere);
    expect(first(marked).start.x).toBeGreaterThan(first(arcs).start.x);
  });
});

describe('connectionMove', () => {
  const { connections } = study('| Bm7 | E7 |', 7);

  it('puts two rings around a tone that stays, and an arrow to one that moves', () => {
    for (const connection of connections) {
      const { rings, path } = connectionMove(LAYOUT, connection, everywhere);
      const stays = connection.semitones === 0;
      expect([rings.length, path === '']).toEqual(stays ? [2, true] : [1, false]);
    }
  });

  it('shows the degree in the ring where no tone is drawn, else both beside it', () => {
    const best = first(connections);
    expect(connectionMove(LAYOUT, best, nowhere)).toMatchObject({ label: '3', free: true });
    expect(connectionMove(LAYOUT, best, everywhere)).toMatchObject({ label: '→3', free: false });
    const kept = first(connections.filter(({ semitones }) => semitones === 0));
    expect(connectionMove(LAYOUT, kept, everywhere).label).toBe('♭3→♭7');
  });

  it('says notes, fingers or nothing where the tones of the neck do', () => {
    const { connections, reading: now, nextReading: next } = study('| Bm7 | E7 |', 7);
    const kept = first(connections.filter(({ semitones }) => semitones === 0));
    const said = (labels: Labels) => {
      const says = saysAs({ labels, spelling: 'exact', now, next });
      return [
        connectionMove(LAYOUT, first(connections), nowhere, says).label,
        connectionMove(LAYOUT, first(connections), everywhere, says).label,
        connectionMove(LAYOUT, kept, everywhere, says).label,
      ];
    };
    expect(said('degrees')).toEqual(['3', '→3', '♭3→♭7']);
    expect(said('notes')).toEqual(['G♯', '→G♯', 'D']);
    expect(said('none')).toEqual(['', '', '']);
    expect(said('fingers').join(' ')).toMatch(/^[1-4→ ]*$/);
  });

  it('has a key of its own for every connection', () => {
    expect(new Set(connections.map(connectionKey)).size).toBe(connections.length);
  });
});

describe('turnMark', () => {
  it('keeps a ghost of the tone where it was, with an arrow to where it is', () => {
    const moves = study('| A |', 7, { turn: 'minor' }).turned?.moves ?? [];
    const { ghost, now, path } = turnMark(LAYOUT, first(moves));
    expect(ghost?.label).toBe('3');
    expect(now?.x).toBeLessThan(ghost?.x ?? 0);
    expect(path).toMatch(/^M.*L.*M.*L.*L/);
  });
});

describe('tagAt', () => {
  it('stands on the side of the body, whichever hand plays, and under a mark of an upright neck', () => {
    const place = first(study('| A |', 7).reading?.tones ?? []);
    const anchor = (spec: Partial<typeof LAYOUT.spec>) =>
      tagAt(layoutNeck({ ...LAYOUT.spec, ...spec }), place, 10).anchor;
    expect(anchor({})).toBe('start');
    expect(anchor({ leftHanded: true })).toBe('end');
    expect(anchor({ upright: true, width: 390 })).toBe('middle');
    const line = (string: number): number => LAYOUT.lines[string - 1] ?? 0;
    expect(tagAt(LAYOUT, { ...place, string: stringNumber(5) }, 10).y).toBeGreaterThan(line(5));
    // Under the last string stand the numbers of the frets.
    expect(tagAt(LAYOUT, { ...place, string: stringNumber(6) }, 10).y).toBeLessThan(line(6));
    // Two rings on an open string leave its name free.
    expect(placeRadius(LAYOUT, 0) * 1.32).toBeLessThan(LAYOUT.open - LAYOUT.names - 5);
  });
});

describe('arrowHead', () => {
  it('ends at the tip with both barbs behind it', () => {
    expect(arrowHead({ x: 0, y: 0 }, { x: 10, y: 0 }, 5)).toBe('M5.6 -2.4L10 0L5.6 2.4');
  });
});
