/** Chords and tones that are struck by hand. */
import { type Struck, struckAt, voicingOf } from '#sound';
import type { Engine } from '#sound/browser';
import { chordOf, type Study, type StudyStore } from '../store/index.ts';
import { groupsInTurn, struckInTurn } from './in-turn.ts';
import type { Marking, StruckGroup } from './marking.ts';

/** What a hand needs: what is under the cursor, something to strike, somewhere to mark it. */
interface Hands {
  readonly store: StudyStore;
  readonly engine: Engine;
  readonly marking: Marking;
}

/** The grip under the cursor, or where an accompanist would hold the chord. */
function heldAt(study: Study) {
  const cell = study.cells[study.cursor];
  const chord = cell && chordOf(cell.slot);
  const grip = study.turned ? study.reading?.chosen?.grip : cell?.form?.grip;
  if (grip) return grip.tones;
  return chord ? voicingOf(chord, study.of.instrument, study.position) : [];
}

export function strike(
  { engine, marking }: Hands,
  notes: readonly Struck[],
  groups: readonly StruckGroup[],
): void {
  engine.strike(notes).then(
    (sounds) => sounds && marking.strike(groups),
    () => undefined,
  );
}

export function hearChord(inside: Hands): void {
  const { study, workspace } = inside.store.cell.get();
  const { semitones } = workspace.sound.transport;
  const places = heldAt(study);
  const notes = struckAt(places, study.of.instrument, semitones);
  strike(inside, notes, [{ places, after: 0 }]);
}

export function hearTones(inside: Hands): void {
  const { study, workspace } = inside.store.cell.get();
  const { semitones } = workspace.sound.transport;
  const { instrument } = study.of;
  const places = heldAt(study);
  const notes = struckInTurn(places, instrument, semitones);
  strike(inside, notes, groupsInTurn(places, instrument));
}
