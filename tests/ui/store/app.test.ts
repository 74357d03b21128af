import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameWork, type Workspace } from '#lesson';
import { createStudyStore, type Intents, studyOf } from '../../../src/ui/store/index.ts';
import { degree, workspace } from './fixture.ts';

type Act = (intents: Intents) => void;

const texts = fc.oneof(
  fc.constantFrom('Dm7 G7 C', '| C | % | N.C. |', '|: E7#9 |1. Am :|2. F/A |', '', 'Hm C'),
  fc.string({ maxLength: 30 }),
);
const small = fc.integer({ min: -3, max: 30 });

/** Anything a person can do, with sensible values and others. */
const acts: fc.Arbitrary<Act> = fc.oneof(
  fc.tuple(texts, small).map(
    ([t, n]): Act =>
      (i) =>
        i.setProgression(t, n),
  ),
  fc.constantFrom<Act>(
    (i) => i.moveCursor(1),
    (i) => i.moveCursor('end'),
    (i) => i.shapeElsewhere(1),
    (i) => i.shapeElsewhere(-1),
    (i) => i.pickForm('D'),
    (i) => i.pickForm(undefined),
    (i) => i.toggleColour(degree('9')),
    (i) => i.setTuning('DADGAD'),
    (i) => i.setTuning('E1-A1-D2-G2'),
    (i) => i.setTuning('rubbish'),
    (i) => i.setSpelling('plain'),
    (i) => i.resetInstrument(),
    (i) => i.setKeyText('Eb'),
    (i) => i.undo(),
    (i) => i.redo(),
  ),
  fc.constantFrom<Act>(
    (i) => i.setRoute('stay'),
    (i) => i.setRoute('carry'),
    (i) => i.setRoute('travel'),
    (i) => i.setRoute(undefined),
    (i) => i.setRouteTo(10, 2),
    (i) => i.setWeight('barre', 50),
    (i) => i.pickForm('A', 5),
    (i) => i.pinForm(0, 'E', 5),
    (i) => i.unpin(0),
    (i) => i.setLens('bends'),
    (i) => i.setLens('connections'),
    (i) => i.turnForm('minor'),
    (i) => i.turnForm('sus4'),
    (i) => i.compareWithForm('G'),
    (i) => i.compareWithChord('D9'),
    (i) => i.setFingering('x5453x'),
    (i) => i.putFinger(2, 3),
    (i) => i.saveOwnForm('mine'),
    (i) => i.pickForm('mine'),
    (i) => i.renameOwnForm('mine', 'ours'),
    (i) => i.deleteOwnForm('mine'),
    (i) => i.setBendLimit('hardForce', 20),
    (i) => i.leave(),
  ),
  small.map(
    (n): Act =>
      (i) =>
        i.setPosition(n),
  ),
  small.map(
    (n): Act =>
      (i) =>
        i.moveCursorTo(n),
  ),
  small.map(
    (n): Act =>
      (i) =>
        i.setFrets(n),
  ),
  small.map(
    (n): Act =>
      (i) =>
        i.setCapo(n),
  ),
  small.map(
    (n): Act =>
      (i) =>
        i.transposeBy(n),
  ),
  small.map(
    (n): Act =>
      (i) =>
        i.loadExample(n),
  ),
);

const START: Workspace = workspace('Am7 D7 Gmaj7');

describe('whatever a person does', () => {
  it('the study is that of the workspace, and the hand stays on the neck', () => {
    fc.assert(
      fc.property(fc.array(acts, { maxLength: 12 }), (done) => {
        const { cell, intents } = createStudyStore(START);
        for (const act of done) act(intents);
        const { workspace: now, study } = cell.get();
        expect(now.position).toBeGreaterThanOrEqual(1);
        expect(now.position).toBeLessThanOrEqual(now.instrument.frets);
        const fresh = studyOf(now);
        expect(study.cells).toEqual(fresh.cells);
        expect([study.cursor, study.standing]).toEqual([fresh.cursor, fresh.standing]);
        if (study.standing.kind !== 'unread') expect(study).toEqual({ ...fresh, of: study.of });
      }),
      { numRuns: 60 },
    );
  });

  it('undo leads all the way back, and redo forth again', () => {
    fc.assert(
      fc.property(fc.array(acts, { maxLength: 12 }), (done) => {
        const { cell, intents } = createStudyStore(START);
        for (const act of done) act(intents);
        while (cell.get().canRedo) intents.redo();
        const last = cell.get().workspace;
        while (cell.get().canUndo) intents.undo();
        expect(sameWork(cell.get().workspace, START)).toBe(true);
        while (cell.get().canRedo) intents.redo();
        expect(sameWork(cell.get().workspace, last)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});
