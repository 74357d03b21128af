import { describe, expect, it } from 'vitest';
import { EXAMPLES } from '#lesson';
import type { Key } from '#theory';
import { fieldError } from '../../../src/ui/store/index.ts';
import { acted, workspace } from './fixture.ts';

const key = (letter: Key['tonic']['letter'], alter = 0, mode: Key['mode'] = 'major'): Key => ({
  tonic: { letter, alter },
  mode,
});

describe('the progression', () => {
  it('takes what is typed, the cursor on the chord at the caret', () => {
    const typed = acted('C', (i) => i.setProgression('C G Am', 6));
    expect([typed.study.symbol, typed.workspace.at]).toEqual(['Am', { bar: 3, beat: 1 }]);
  });

  it('takes back what was typed in a row at once, bar by bar', () => {
    const typed = acted('', (i) => {
      const text = '| Dm7 | G7';
      for (let n = 1; n <= text.length; n += 1) i.setProgression(text.slice(0, n), n);
    });
    expect([typed.study.symbol, typed.undone]).toEqual(['G7', 4]);
  });

  it('leaves the cursor without a caret, and nothing typed changes nothing', () => {
    expect(acted('C G', (i) => i.setProgression('C G Am')).study.cursor).toBe(0);
    const { state, before } = acted('C G', (i) => i.setProgression('C G', 3));
    expect(state).toBe(before);
  });

  it('keeps the last good chord on the neck, wherever one types', () => {
    const typed = acted(workspace('C G', { at: { bar: 2, beat: 1 } }), (i) =>
      i.setProgression('Hm C G', 2),
    );
    expect([typed.study.cursor, typed.study.standing.kind, typed.study.symbol]).toEqual([
      ...[0, 'unread', 'G'],
    ]);
  });

  it('can be one of the examples', () => {
    const start = workspace('C', { form: 'E', key: key('D') });
    const { workspace: now, undone } = acted(start, (i) => i.loadExample(2));
    expect(now.progression).toBe(EXAMPLES[2]?.progression);
    expect([now.position, now.form, now.key, undone]).toEqual([5, undefined, undefined, 1]);
    const none = acted('C', (i) => i.loadExample(9));
    expect(none.state).toBe(none.before);
  });
});

describe('the key', () => {
  it('is set, typed, refused and let go', () => {
    expect(acted('C', (i) => i.setKey(key('G'))).study.key).toEqual(key('G'));
    expect(acted('C', (i) => i.setKeyText('F# minor')).study.key).toEqual(key('F', 1, 'minor'));
    const refused = acted('C', (i) => i.setKeyText('H'));
    expect(fieldError(refused.state, 'key')).toMatch(/^“H”: expected /);
    expect(refused.workspace).toBe(refused.before.workspace);
    const { workspace: now } = acted(
      'C',
      (i) => i.setKeyText('D'),
      (i) => i.setKeyText(' '),
    );
    expect('key' in now).toBe(false);
  });

  it('that is set already changes nothing', () => {
    const { state, before } = acted(workspace('C', { key: key('G') }), (i) => i.setKey(key('G')));
    expect(state).toBe(before);
  });

  it('can be gone to, with everything that is typed', () => {
    const moved = acted('Dm7 G7 Cmaj7', (i) => i.transposeTo(key('E', -1)));
    expect([moved.workspace.progression, moved.undone]).toEqual(['Fm7 Bb7 Ebmaj7', 1]);
    expect(acted('Dm7 G7 Cmaj7', (i) => i.transposeBy(2)).workspace.progression).toBe(
      'Em7 A7 Dmaj7',
    );
    const back = acted(
      'Dm7 G7 Cmaj7',
      (i) => i.transposeBy(3),
      (i) => i.transposeBy(-3),
    );
    expect(back.workspace.progression).toBe('Dm7 G7 Cmaj7');
  });

  it('goes along where it was set by hand', () => {
    const set = workspace('Dm7 G7 Cmaj7', { key: key('C') });
    expect(acted(set, (i) => i.transposeBy(1)).workspace.key).toEqual(key('D', -1));
  });

  it('that is not there or not left changes nothing', () => {
    for (const text of ['', 'C']) {
      const { state, before } = acted(text, (i) => i.transposeBy(0));
      expect(state).toBe(before);
    }
    const { state, before } = acted('', (i) => i.transposeTo(key('D')));
    expect(state).toBe(before);
  });
});
