import { describe, expect, it } from 'vitest';
import type { LineNote } from '#line';
import { STANDARD_GUITAR } from '#neck';
import { eventsOf, lineEvents, makePerformance, type NoteEvent } from '#sound';
import { chart, lineNote } from '../line/short.ts';

const events = (...notes: readonly LineNote[]): readonly NoteEvent[] =>
  lineEvents(notes, STANDARD_GUITAR);

describe("a line's notes", () => {
  it('know what they sound', () => {
    expect(events(lineNote(6, 0, 0), lineNote(1, 12, 480)).map(({ midi }) => midi)).toEqual([
      40, 76,
    ]);
  });

  it('keep how they are played', () => {
    const [event] = events(lineNote(3, 7, 0, { vibrato: 0.3, palmMute: true, attack: 'hammer' }));
    expect(event).toMatchObject({ vibrato: 0.3, palmMute: true, attack: 'hammer', midi: 62 });
  });

  it('are left out where the neck has no such place', () => {
    expect(events(lineNote(9, 0, 0), lineNote(1, 40, 0))).toEqual([]);
  });

  it('that begin together are strummed from the low side', () => {
    const strum = events(lineNote(1, 0, 0), lineNote(3, 0, 0), lineNote(2, 1, 0));
    expect(strum.map(({ string, late = 0 }) => [string, late])).toEqual([
      [1, 0.028],
      [3, 0],
      [2, 0.014],
    ]);
  });

  it('slide on to a note on their string that is reached by a slide', () => {
    const [first, second] = events(lineNote(2, 5, 0), lineNote(2, 8, 480, { attack: 'slide' }));
    expect(first?.slideOn).toBe(3);
    expect(second?.slideOn).toBeUndefined();
    expect(
      events(lineNote(2, 5, 0), lineNote(3, 8, 480, { attack: 'slide' }))[0]?.slideOn,
    ).toBeUndefined();
    expect(
      events(lineNote(2, 5, 0), lineNote(2, 8, 960, { attack: 'slide' }))[0]?.slideOn,
    ).toBeUndefined();
  });

  it('that are raked bring three muted strings before them', () => {
    const raked = events(lineNote(2, 5, 0, { rake: true }));
    expect(raked.map(({ string, dead = false, late = 0 }) => [string, dead, late])).toEqual([
      [5, true, -0.066],
      [4, true, -0.044],
      [3, true, -0.022],
      [2, false, 0],
    ]);
    expect(events(lineNote(5, 5, 0, { rake: true })).map(({ string }) => string)).toEqual([6, 5]);
  });
});

describe('a performance', () => {
  it('gives its events in order of time', () => {
    const { parts, ...rest } = makePerformance({
      chart: chart('| C | F G |'),
      instrument: STANDARD_GUITAR,
      feel: 'sixteen',
    });
    const starts = eventsOf({ parts, ...rest }).map(({ event }) => event.start as number);
    expect(starts.length).toBeGreaterThan(100);
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
  });
});
