import { describe, expect, it } from 'vitest';
import { DEFAULT_SOUND } from '#lesson';
import type { NoteEvent } from '#sound';
import { makePiece, soundsAlike, sourceOf } from '../../../src/ui/sound/piece.ts';
import { createStudyStore } from '../../../src/ui/store/index.ts';
import { stateWith, workspace } from '../store/fixture.ts';
import { BAR } from './fake.ts';

const pieceOf = (progression: string, study: (typeof DEFAULT_SOUND)['study'] = 'singles') =>
  makePiece(sourceOf(stateWith(progression, { sound: { ...DEFAULT_SOUND, study } })));

const notes = (events: readonly unknown[]): readonly NoteEvent[] => events as readonly NoteEvent[];

describe('a piece', () => {
  it('knows for every slot its cell, and for every cell when it is played first', () => {
    const { cellOf, startOf } = pieceOf('| C / F / | % | G |');
    expect(cellOf).toEqual([0, 1, 2, 3, 4]);
    expect(startOf).toEqual([0, BAR / 2, BAR, 1.5 * BAR, 2 * BAR]);
  });

  it('lets a chord that goes on over the bar line belong to the cell before', () => {
    const { cellOf, startOf } = pieceOf('| C | / / G / |');
    expect(cellOf).toEqual([0, 0, 1]);
    expect(startOf).toEqual([0, 1.5 * BAR]);
  });

  it('plays the form under the hand tone by tone, every tone one of its grip', () => {
    const state = stateWith('| Bm7 |', { position: 7 });
    const grip = state.study.reading?.chosen?.grip?.tones ?? [];
    const line = notes(makePiece(sourceOf(state)).performance.parts.line);
    expect(line).toHaveLength(8);
    const strings = new Set(grip.map(({ string }) => Number(string)));
    expect(line.every(({ string }) => strings.has(string))).toBe(true);
  });

  it('plays the best connection of the reading at a change', () => {
    const state = stateWith('| G7 | C |', {
      position: 3,
      sound: { ...DEFAULT_SOUND, study: 'connect' },
    });
    const [best] = state.study.connections;
    const line = notes(makePiece(sourceOf(state)).performance.parts.line);
    expect(line[0]?.string).toBe(best?.from.string);
    expect(line.map(({ start }) => start)).toContain(BAR - 1920);
  });

  it('comps the planned forms, so that the backing is what the neck shows', () => {
    const state = stateWith('| Bm7 |', { position: 7 });
    const { parts } = makePiece(sourceOf(state)).performance;
    const strings = new Set(
      state.study.cells[0]?.form?.grip?.tones.map(({ string }) => Number(string)),
    );
    expect(notes(parts.comp).every(({ string }) => strings.has(string))).toBe(true);
    expect(parts.comp.length).toBeGreaterThan(0);
  });

  it('is silent where no chord stands, and empty without a chart', () => {
    expect(pieceOf('| N.C. |').performance.parts.line).toEqual([]);
    expect(pieceOf('').performance.length).toBe(0);
  });
});

describe('sources', () => {
  it('sound alike until chords, forms, instrument, study or feel change', () => {
    const store = createStudyStore(workspace('| C | F |'));
    const source = () => sourceOf(store.cell.get());
    const first = source();
    store.intents.moveCursor(1);
    store.intents.setTempo('50');
    expect(soundsAlike(first, source())).toBe(true);
    store.intents.setStudy('strum');
    expect(soundsAlike(first, source())).toBe(false);
  });
});
