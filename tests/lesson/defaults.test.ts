import { describe, expect, it } from 'vitest';
import { BEGINNING, DEFAULT_WORKSPACE, EXAMPLES } from '#lesson';
import { bestAtHand } from '#neck';
import { parseProgression, slotsOf } from '#theory';

describe('the first visit', () => {
  it('begins on the first chord of the first example', () => {
    expect(DEFAULT_WORKSPACE.progression).toBe(EXAMPLES[0].progression);
    expect(DEFAULT_WORKSPACE.at).toBe(BEGINNING);
  });

  it('has several forms under a hand that does not move', () => {
    const { progression, position, instrument, span } = DEFAULT_WORKSPACE;
    const forms = slotsOf(parseProgression(progression).chart).map(({ slot }) => {
      if (slot.harmony.kind !== 'chord') throw new Error(`not a chord: ${slot.symbol}`);
      return bestAtHand(slot.harmony.chord, { position, instrument, span });
    });
    const shares = forms.map((form) => (form ? (form.under + form.stretched) / form.of : 0));
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0.75);
    expect(new Set(forms.map((form) => form?.form.name)).size).toBeGreaterThanOrEqual(3);
  });
});
