import { describe, expect, it } from 'vitest';
import { STANDARD_GUITAR } from '#neck';
import { createStudyStore, FIELDS, fieldError, type Intents } from '../../../src/ui/store/index.ts';
import { acted, workspace } from './fixture.ts';

describe('the fields for instrument and hand', () => {
  it('take good values', () => {
    const { workspace: now } = acted('C', (i) => {
      i.setTuning('D2 A2 D3 G3 B3 E4');
      i.setFrets(24);
      i.setCapo(2);
      i.setScale(630);
      i.setGauges([9, 11, 16, 24, 32, 42]);
      i.setLeftHanded(true);
      i.setSpan(3, 7);
    });
    const { instrument, span } = now;
    expect(instrument.strings.map(({ gauge }) => gauge)).toEqual([9, 11, 16, 24, 32, 42]);
    expect(instrument.strings[5]?.pitch).toEqual({ letter: 'D', alter: 0, octave: 2 });
    const { frets, capo, scale, leftHanded } = instrument;
    expect([frets, capo, scale, leftHanded, span]).toEqual([
      24,
      2,
      630,
      true,
      { index: 3, little: 7 },
    ]);
  });

  it.each([
    ['tuning', (i: Intents) => i.setTuning('E2-H2'), '“E2-H2”: expected 4 to 8 notes'],
    ['frets', (i: Intents) => i.setFrets(99), '“99”: expected a whole number from 12 to 27'],
    ['frets', (i: Intents) => i.setFrets(Number.NaN), '“NaN”: expected a whole number'],
    ['capo', (i: Intents) => i.setCapo(-1), '“-1”: expected a whole number from 0 to 11'],
    ['scale', (i: Intents) => i.setScale(5), '“5”: expected millimetres from 300 to 1000'],
    ['gauges', (i: Intents) => i.setGauges([9]), '“9”: expected 6 gauges'],
    ['span', (i: Intents) => i.setSpan(5, 5), '“5 to 5”: expected index at fret 1 to 12'],
  ] as const)('refuse bad values at %s and keep the last good one', (field, act, text) => {
    const { state, before, workspace: now } = acted('C', act);
    expect(fieldError(state, field)).toContain(text);
    expect(now).toBe(before.workspace);
    expect(FIELDS.filter((other) => fieldError(state, other))).toEqual([field]);
  });

  it('forget the refusal once a value is good', () => {
    const { state } = acted(
      'C',
      (i) => i.setFrets(99),
      (i) => i.setFrets(22),
    );
    expect(fieldError(state, 'frets')).toBeUndefined();
  });

  it('keep the instrument itself where a value is what it was', () => {
    const { state, before } = acted('C', (i) => {
      i.setTuning('E2-A2-D3-G3-B3-E4');
      i.setFrets(22);
      i.setCapo(0);
      i.setLeftHanded(false);
      i.setSpan(5, 9);
      i.resetInstrument();
    });
    expect(state).toBe(before);
  });

  it('keep the hand on a neck that gets shorter', () => {
    const start = workspace('C', { position: 20 });
    expect(acted(start, (i) => i.setFrets(15)).workspace.position).toBe(15);
  });

  it('let go of a form that the tuning does not have', () => {
    const start = workspace('C', { form: 'E' });
    const { workspace: now, study } = acted(start, (i) => i.setTuning('DADGAD'));
    expect(now.form).toBeUndefined();
    expect(study.reading?.chosen?.grip).toBeDefined();
    expect(acted(start, (i) => i.setTuning('D2-G2-C3-F3-A3-D4')).workspace.form).toBe('E');
  });

  it('go back to the standard guitar', () => {
    const { workspace: now } = acted(
      'C',
      (i) => i.setFrets(24),
      (i) => i.setCapo(3),
      (i) => i.resetInstrument(),
    );
    expect(now.instrument).toBe(STANDARD_GUITAR);
  });
});

describe('a capo', () => {
  it('pushes the hand up, which then does not go behind it', () => {
    const { cell, intents } = createStudyStore();
    intents.setPosition(1);
    intents.setCapo(3);
    expect(cell.get().workspace.position).toBe(4);
    intents.stepPosition(-1);
    expect(cell.get().workspace.position).toBe(4);
  });
});
