import { describe, expect, it } from 'vitest';
import { LENSES } from '#lesson';
import { TURNS } from '#neck';
import { COMMANDS, commandNamed, GROUPS } from '../../../src/ui/commands/index.ts';
import { createStudyStore } from '../../../src/ui/store/index.ts';
import { workspace } from '../store/fixture.ts';

const keyClaims = COMMANDS.flatMap(({ name, keys }) => keys.map((key) => `${key} ${name}`));

/** The state after a command, from a progression on. */
function performed(start: ReturnType<typeof workspace>, ...names: readonly string[]) {
  const store = createStudyStore(start);
  for (const name of names) commandNamed(name).perform(store);
  return store.cell.get();
}

const enabled = (name: string, start: ReturnType<typeof workspace>): boolean =>
  commandNamed(name).enabled(createStudyStore(start).cell.get());

describe('the commands', () => {
  it('are these, with these keys', () => {
    expect(keyClaims).toEqual([
      'ArrowRight cursor-next',
      'PageDown cursor-next',
      'ArrowLeft cursor-previous',
      'PageUp cursor-previous',
      'Home cursor-start',
      'End cursor-end',
      'Shift+ArrowLeft bar-back',
      'Shift+ArrowRight bar-on',
      'ArrowUp hand-up',
      '] hand-up',
      'ArrowDown hand-down',
      '[ hand-down',
      'Shift+ArrowUp elsewhere-up',
      'Shift+ArrowDown elsewhere-down',
      'c form-c',
      'a form-a',
      'g form-g',
      'e form-e',
      'd form-d',
      '0 form-best',
      'Shift+b lens-bends',
      'Shift+c lens-connections',
      'Shift+t lens-turn',
      'Shift+f lens-fingering',
      'Shift+m lens-compare',
      'Shift+r lens-route',
      'Escape leave',
      '1 turn-major',
      '2 turn-minor',
      '3 turn-sus2',
      '4 turn-sus4',
      '5 turn-7',
      '6 turn-maj7',
      '7 turn-m7',
      '8 turn-6',
      '9 turn-9',
      '- turn-b5',
      'r route-kind',
      'n route-next',
      'Shift+n route-previous',
      'p pin',
      'Space play',
      'Mod+Enter play-typing',
      'Backspace from-start',
      'h hear-chord',
      'Shift+h hear-tones',
      'o loop-section',
      'Shift+o rounds',
      '< slower',
      '> faster',
      'm tap',
      'Shift+p practice',
      'l labels',
      's spelling',
      't theme',
      ', settings',
      '? keys',
      'Mod+z undo',
      'Mod+Shift+z redo',
      'Mod+y redo',
    ]);
  });

  it('never claim the same key, or the same name', () => {
    const keys = COMMANDS.flatMap((command) => command.keys);
    expect(new Set(keys).size).toBe(keys.length);
    expect(new Set(COMMANDS.map(({ name }) => name)).size).toBe(COMMANDS.length);
  });

  it('write their keys as they are looked up', () => {
    const written = /^(?:Mod\+)?(?:Shift\+)?(?:[^A-Z+ ]|[A-Z][A-Za-z]+)$/;
    for (const key of COMMANDS.flatMap((command) => command.keys)) expect(key).toMatch(written);
  });

  it('are found by name, and a name that none has is a mistake of ours', () => {
    expect(commandNamed('undo').label).toBe('Undo');
    expect(() => commandNamed('dance')).toThrow('no command is named dance');
  });

  it('stand in groups, group by group', () => {
    expect([...new Set(COMMANDS.map(({ group }) => group))]).toEqual([...GROUPS]);
  });
});

describe('what the commands do', () => {
  const song = workspace('| Dm7 | G7 | Cmaj7 |', { position: 5 });

  it('moves the cursor', () => {
    const cursor = (...names: readonly string[]) => performed(song, ...names).study.cursor;
    expect(cursor('cursor-next')).toBe(1);
    expect(cursor('cursor-end', 'cursor-previous')).toBe(1);
    expect(cursor('cursor-end', 'cursor-start')).toBe(0);
  });

  it('go by bars to the first chord of each', () => {
    const start = workspace('| C F | G Am | C |', { at: { bar: 2, beat: 3 } });
    const at = (...names: readonly string[]) => performed(start, ...names).study.cursor;
    expect([at('bar-back'), at('bar-on'), at('bar-on', 'bar-back')]).toEqual([0, 4, 2]);
    expect(at('bar-back', 'bar-back')).toBe(0);
  });

  it('moves the hand', () => {
    const position = (...names: readonly string[]) => performed(song, ...names).workspace.position;
    expect(position('hand-up')).toBe(6);
    expect(position('hand-down')).toBe(4);
    expect(position('elsewhere-up')).toBeGreaterThan(5);
    expect(position('elsewhere-down')).toBeLessThan(5);
  });

  it('asks for a form, lets go of it, and goes back to the best', () => {
    expect(performed(song, 'form-e').workspace.form).toBe('E');
    expect(performed(song, 'form-e', 'form-e').workspace.form).toBeUndefined();
    expect(performed(song, 'form-e', 'form-best').workspace.form).toBeUndefined();
  });

  it('goes through labels, themes and spellings, and round again', () => {
    const { workspace: once } = performed(song, 'labels', 'theme', 'spelling');
    expect([once.labels, once.theme, once.spelling]).toEqual(['notes', 'light', 'plain']);
    const four = Array.from({ length: 4 }, () => ['labels', 'theme', 'spelling']).flat();
    expect(performed(song, ...four).workspace).toEqual(song);
  });

  it('puts lenses on and takes them off', () => {
    for (const lens of LENSES.filter((one) => one !== 'none')) {
      expect(performed(song, `lens-${lens}`).workspace.lens).toBe(lens);
      expect(performed(song, `lens-${lens}`, `lens-${lens}`).workspace).toEqual(song);
    }
  });

  it('turns the form by a key each, and back', () => {
    const names = COMMANDS.filter(({ group }) => group === 'Turns');
    expect(names).toHaveLength(TURNS.length);
    for (const [i, { name }] of names.entries()) {
      expect(performed(song, name).study.turned?.turn).toBe(TURNS[i]);
      expect(performed(song, name, name).study.turned).toBeUndefined();
    }
  });

  it('goes through the kinds of routes and round the routes that were found', () => {
    const kinds = Array.from({ length: 4 }, (_, n) =>
      performed(song, ...Array.from({ length: n + 1 }, () => 'route-kind')),
    );
    expect(kinds.map((state) => state.workspace.route)).toEqual([
      ...['stay', 'carry', 'travel', undefined],
    ]);
    const chosen = (...names: readonly string[]) =>
      performed(song, 'route-kind', ...names).study.route?.chosen;
    expect(chosen('route-next')).toBe(1);
    expect(chosen('route-previous')).toBe(3);
    expect(chosen('route-next', 'route-previous')).toBe(0);
    expect(chosen(...Array.from({ length: 4 }, () => 'route-next'))).toBe(0);
  });

  it('pins the form under the cursor and lets it go', () => {
    const pinned = performed(song, 'pin');
    const shown = pinned.study.cells[0]?.form;
    expect(pinned.workspace.pins).toEqual([
      { at: '1.1', form: shown?.form.name, anchor: shown?.anchor },
    ]);
    expect(performed(song, 'pin', 'pin').workspace).toEqual(song);
  });

  it('pins by the letter of a form on a route, and lets go by the same letter', () => {
    const pinned = performed(song, 'route-kind', 'form-a');
    expect(pinned.workspace.pins).toMatchObject([{ at: '1.1', form: 'A' }]);
    expect(performed(song, 'route-kind', 'form-a', 'form-a').workspace.pins).toEqual([]);
    expect(performed(song, 'route-kind', 'form-a', 'form-best').workspace.pins).toEqual([]);
  });

  it('leaves one thing after another, the form that is asked for last', () => {
    const all = ['form-e', 'turn-minor', 'leave'];
    expect(performed(song, ...all).workspace).toEqual({ ...song, form: 'E' });
    expect(performed(song, ...all, 'leave').workspace).toEqual(song);
  });

  it('stops planning', () => {
    const long = workspace('| C Am | F G |\n'.repeat(60), { route: 'stay' });
    expect(enabled('stop-planning', long)).toBe(true);
    expect(performed(long, 'stop-planning').study.route?.stopped).toBe(true);
  });

  it('opens and closes panels', () => {
    expect(performed(song, 'keys').panel).toBe('keys');
    expect(performed(song, 'keys', 'settings').panel).toBe('settings');
    expect(performed(song, 'keys', 'keys').panel).toBeUndefined();
  });

  it('undoes, does again, and transposes', () => {
    expect(performed(song, 'hand-up', 'undo').workspace.position).toBe(5);
    expect(performed(song, 'hand-up', 'undo', 'redo').workspace.position).toBe(6);
    expect(performed(song, 'transpose-up').workspace.progression).toContain('Ebm7');
    expect(performed(song, 'transpose-down').study.cells[2]?.symbol).toBe('Bmaj7');
  });

  it('says that a link cannot be copied without a page', async () => {
    const store = createStudyStore(song);
    commandNamed('copy-link').perform(store);
    await Promise.resolve().then(() => Promise.resolve());
    expect(store.cell.get().notices.map(({ id }) => id)).toEqual(['copy']);
  });
});

describe('when a command can be done', () => {
  const two = workspace('C G');
  const last = workspace('C G', { at: { bar: 2, beat: 1 } });
  const none = workspace('');

  it.each([
    ['cursor-next', two, true],
    ['cursor-next', last, false],
    ['cursor-end', last, false],
    ['cursor-previous', two, false],
    ['cursor-previous', last, true],
    ['cursor-start', two, false],
    ['cursor-next', none, false],
    ['hand-up', workspace('C', { position: 22 }), false],
    ['hand-up', two, true],
    ['hand-down', workspace('C', { position: 1 }), false],
    ['hand-down', two, true],
    ['elsewhere-up', two, true],
    ['elsewhere-up', none, false],
    ['form-c', two, true],
    ['form-best', two, false],
    ['form-best', workspace('C', { form: 'A' }), true],
    ['undo', two, false],
    ['redo', two, false],
    ['transpose-up', two, true],
    ['transpose-up', none, false],
    ['labels', none, true],
    ['leave', two, false],
    ['leave', workspace('C', { form: 'A' }), true],
    ['leave', workspace('C', { lens: 'bends' }), true],
    ['turn-minor', two, true],
    ['turn-minor', none, false],
    ['route-next', two, false],
    ['route-next', workspace('C G', { route: 'stay' }), true],
    ['pin', two, true],
    ['pin', none, false],
    ['pin', workspace('N.C.'), false],
    ['stop-planning', two, false],
  ] as const)('%s', (name, start, can) => {
    expect(enabled(name, start)).toBe(can);
  });
});
