import { describe, expect, it } from 'vitest';
import { makeChord } from '#theory';
import { fieldError, studyOf } from '../../../src/ui/store/index.ts';
import { type Act, acted, degree, workspace } from './fixture.ts';

const song = workspace('| A | E7 | Amaj7 |', { position: 7 });

const same = (start: typeof song, act: Act): boolean => {
  const { state, before } = acted(start, act);
  return state === before;
};

describe('a lens', () => {
  it('is put on and taken off without a step of undo', () => {
    const on = acted(song, (i) => i.setLens('bends'));
    expect([on.workspace.lens, on.undone]).toEqual(['bends', 0]);
    expect(same(on.workspace, (i) => i.setLens('bends'))).toBe(true);
  });

  it('changes the account and nothing else of the study', () => {
    const on = acted(song, (i) => i.setLens('bends'));
    const { account, of, ...rest } = on.study;
    expect(account).toContain('Best bend: ');
    expect(of.lens).toBe('bends');
    expect({ ...on.before.study, account, of }).toEqual({ ...rest, account, of });
    expect([on.study.reading, on.study.cells]).toEqual([
      on.before.study.reading,
      on.before.study.cells,
    ]);
    expect(on.study.reading).toBe(on.before.study.reading);
    expect(on.study.bends).toBe(on.before.study.bends);
    expect(on.study.connections).toBe(on.before.study.connections);
  });

  it('stays on while one undoes', () => {
    const undone = acted(
      song,
      (i) => i.setProgression('C'),
      (i) => i.setLens('bends'),
      (i) => i.undo(),
    );
    expect(undone.workspace).toMatchObject({ lens: 'bends', progression: song.progression });
  });
});

describe('turning the form under the cursor', () => {
  const minor = acted(song, (i) => i.turnForm('minor'));

  it('shows the turned chord, and which tone moves where', () => {
    const { turned, reading, symbol } = minor.study;
    expect(turned).toMatchObject({ symbol: 'Am', playable: true, turn: { name: 'minor' } });
    expect(turned?.from.chord).toBe(minor.study.chord);
    expect(reading?.chord).toBe(turned?.chord);
    expect(symbol).toBe('A');
    expect(turned?.moves.map(({ string, from, to }) => [string, from?.fret, to?.fret])).toEqual([
      [1, 9, 8],
    ]);
    expect(reading?.chosen?.form).toBe(turned?.from.chosen?.form);
    expect(reading?.chosen?.anchor).toBe(turned?.from.chosen?.anchor);
    expect(minor.undone).toBe(0);
  });

  it('puts its lens on where there is none, and leaves another', () => {
    expect(minor.workspace.lens).toBe('turn');
    const bends = acted(
      song,
      (i) => i.setLens('bends'),
      (i) => i.turnForm('7'),
    );
    expect(bends.workspace.lens).toBe('bends');
  });

  it('turns back when asked again, and turns the next chord too until then', () => {
    const back = acted(minor.workspace, (i) => i.turnForm('minor'));
    expect([back.study.turned, 'turn' in back.workspace]).toEqual([undefined, false]);
    expect(back.study.reading?.chord).toEqual(acted(song).study.reading?.chord);
    const next = acted(minor.workspace, (i) => i.moveCursor(1));
    expect(next.study.turned?.symbol).toBe('Em');
    expect(same(song, (i) => i.turnForm('inside out'))).toBe(true);
    expect(same(song, (i) => i.turnForm(undefined))).toBe(true);
  });

  it('offers colours, bends and connections of the turned chord', () => {
    const { study } = minor;
    expect(study.bends.some((b) => b.of === 'now' && b.degree.alter === -1)).toBe(true);
    const from = study.connections.map((c) => `${c.fromDegree.number},${c.fromDegree.alter}`);
    expect(from).toContain('3,-1');
    expect(study.colours[0]?.degree).toEqual(degree('b7'));
    expect(acted(song).study.colours[0]?.degree).toEqual(degree('9'));
  });

  it('says where four fingers cannot hold it, and shows the tones', () => {
    const stuck = acted(workspace('C7b9#9#11b13', { position: 8 }), (i) => i.turnForm('9'));
    expect(stuck.study.turned).toMatchObject({ playable: false, moves: [] });
    expect(stuck.study.reading && makeChord(stuck.study.reading.chord)).toBe('C9');
  });

  it('is on a study made afresh what it is on one that was kept', () => {
    const moved = acted(
      minor.workspace,
      (i) => i.moveCursor(1),
      (i) => i.setLens('connections'),
      (i) => i.stepPosition(2),
      (i) => i.setBendLimit('hardForce', 14),
      (i) => i.turnForm(undefined),
      (i) => i.moveCursor(-1),
    );
    expect(moved.study).toEqual(studyOf(moved.workspace));
  });
});

describe('comparing', () => {
  it('lays the same chord in another form beside the reading', () => {
    const d = workspace('D', { position: 14 });
    const { study, workspace: now } = acted(d, (i) => i.compareWithForm('D'));
    const shared = study.compared?.places.filter(({ first, second }) => first && second) ?? [];
    expect(shared.map((place) => `${place.string}:${place.fret}`)).toEqual([
      ...['1:14', '2:15', '3:14'],
    ]);
    expect([study.compared?.name, study.compared?.what, now.lens]).toEqual([
      ...['D', 'shapes', 'compare'],
    ]);
  });

  it('lays another chord beside it', () => {
    const { study, undone } = acted(workspace('Am7', { position: 5 }), (i) =>
      i.compareWithChord(' D9 '),
    );
    expect([study.compared?.name, study.compared?.what, undone]).toEqual(['D9', 'tones', 0]);
    expect(study.compared?.second.position).toBe(5);
  });

  it('stays as it is while nothing that it is made of changes', () => {
    const { study, workspace: now } = acted(song, (i) => i.compareWithChord('D9'));
    expect(studyOf({ ...now, lens: 'none' }, study).compared).toBe(study.compared);
    expect(same(now, (i) => i.compareWithChord('D9'))).toBe(true);
    const moved = studyOf({ ...now, at: { bar: 2, beat: 1 } }, study);
    expect(moved.compared).not.toBe(study.compared);
    expect(moved).toEqual(studyOf(moved.of));
  });

  it('refuses what is no form and no chord, and keeps the last good one', () => {
    const good = acted(song, (i) => i.compareWithForm('A'));
    const bad = acted(good.workspace, (i) => i.compareWithForm('H'));
    expect(fieldError(bad.state, 'compare')).toBe('“H”: expected C, A, G, E, D');
    const worse = acted(good.workspace, (i) => i.compareWithChord('Hm'));
    expect(fieldError(worse.state, 'compare')).toMatch(/^“Hm”: expected /);
    expect([bad.workspace, worse.workspace]).toEqual([good.workspace, good.workspace]);
  });

  it('is none with a form that the tuning does not have', () => {
    const gone = acted(
      song,
      (i) => i.compareWithForm('G'),
      (i) => i.setTuning('DADGAD'),
    );
    const names = gone.study.reading?.forms.map(({ form }) => form.name) ?? [];
    expect(gone.study.compared !== undefined).toBe(names.includes('G'));
  });

  it('is left again', () => {
    const left = acted(
      song,
      (i) => i.compareWithForm('A'),
      (i) => i.stopComparing(),
    );
    expect([left.workspace.lens, left.study.compared, 'compare' in left.workspace]).toEqual([
      ...['none', undefined, false],
    ]);
  });
});

describe('leaving', () => {
  it('goes back one thing at a time', () => {
    const all = acted(
      song,
      (i) => i.compareWithForm('A'),
      (i) => i.turnForm('minor'),
    );
    const { turn, compare, lens } = all.workspace;
    expect([turn, compare?.kind, lens]).toEqual(['minor', 'form', 'compare']);
    const once = acted(all.workspace, (i) => i.leave());
    expect([once.workspace.turn, once.workspace.compare?.kind]).toEqual([undefined, 'form']);
    const twice = acted(once.workspace, (i) => i.leave());
    expect([twice.workspace.compare, twice.workspace.lens]).toEqual([undefined, 'none']);
    expect(same(twice.workspace, (i) => i.leave())).toBe(true);
    const turned = acted(
      song,
      (i) => i.turnForm('7'),
      (i) => i.leave(),
    );
    expect(turned.workspace).toEqual(song);
  });

  it('stops planning first', () => {
    const long = workspace('| C Am | F G |\n'.repeat(60), { route: 'stay', lens: 'route' });
    const stopped = acted(long, (i) => i.leave());
    expect([stopped.study.route?.stopped, stopped.workspace.lens]).toEqual([true, 'route']);
  });
});
