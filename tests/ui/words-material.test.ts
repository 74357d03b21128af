import { describe, expect, it } from 'vitest';
import {
  bendInWords,
  comparedInWords,
  connectionsInWords,
  fingeredInWords,
  materialInWords,
  routeInWords,
  turnedInWords,
} from '../../src/ui/words-material.ts';
import { type Act, acted, workspace } from './store/fixture.ts';

const song = workspace('| A | E7 | A | % |', { position: 7 });

const study = (start: typeof song, ...acts: readonly Act[]) => acted(start, ...acts).study;

describe('a turned form in words', () => {
  const turned = (symbol: string, name: string, position = 7): string => {
    const { turned: found } = study(workspace(symbol, { position }), (i) => i.turnForm(name));
    return found ? turnedInWords(found) : '-';
  };

  it.each([
    ['A', 'minor', 'Turned minor, Am: the 3 drops from fret 9 to 8'],
    ['A', 'sus4', 'Turned sus4, Asus4: the 3 rises from fret 9 to 10'],
    ['A', 'major', 'Turned major, A: every tone stays'],
  ])('%s turned %s', (symbol, name, said) => {
    expect(turned(symbol, name)).toBe(said);
  });

  it('says where four fingers cannot hold it', () => {
    expect(turned('C7b9#9#11b13', '9', 8)).toBe(
      'Turned 9, C9: four fingers cannot hold it in the E form',
    );
  });
});

describe('bends and connections in words', () => {
  const now = study(workspace('G7 C', { position: 5 }));

  it('name the easiest bend, its target and how it feels', () => {
    const [best] = now.bends;
    expect(bendInWords(best, 'C')).toMatch(
      /^Best bend: string \d from fret \d+ up a (half|whole) step to \S+ [A-G][♯♭]?( of C)?, comfortable$/,
    );
    const next = now.bends.find(({ of }) => of === 'next');
    expect(bendInWords(next, 'C')).toContain(' of C, ');
  });

  it('say that no bend is practical', () => {
    const none = 'No bend under the hand is practical';
    expect(bendInWords(undefined, undefined)).toBe(none);
    expect(
      bendInWords(
        now.bends.findLast(({ ease }) => ease === 'no'),
        'C',
      ),
    ).toBe(none);
  });

  it('name the two best connections (common practice: the dominant’s third rises into the root)', () => {
    expect(connectionsInWords(now.connections, 'C')).toMatch(
      /^To C: 3 rises a half step to R .*string \d; ♭7 falls a half step to 3 .*string \d$/,
    );
  });

  it('say what stays, and what it becomes', () => {
    const stays = now.connections.filter(({ semitones }) => semitones === 0);
    expect(connectionsInWords(stays, 'C')).toMatch(/^To C: R stays and becomes 5 on string \d/);
    expect(connectionsInWords([], 'C')).toBe('Nothing under the hand leads to another chord');
  });
});

describe('a route in words', () => {
  const said = (...acts: readonly Act[]): string => {
    const { route, cursor, of } = study(song, ...acts);
    return route ? routeInWords(route, cursor, of.position) : '-';
  };

  it.each<readonly [string, Act]>([
    [
      'Route staying near VII, step one of three: the D form at VII, then the A form at VII',
      (i) => i.setRoute('stay'),
    ],
    [
      'Route carrying the D form, step one of three: the D form at VII, then the D form at XIV',
      (i) => i.setRoute('carry'),
    ],
  ])('is “%s”', (words, act) => {
    expect(said(act)).toBe(words);
  });

  it('says where it goes, and where it ends', () => {
    const travel: Act = (i) => i.setRoute('travel');
    expect(said(travel, (i) => i.setRouteTo(12, 3))).toMatch(/^Route to XII by bar 3, step one/);
    expect(said(travel, (i) => i.moveCursor('end'))).toMatch(
      /step three of three: the . form at \w+$/,
    );
  });

  it('says which pinned forms do not fit', () => {
    const start = { ...song, pins: [{ at: '9.1', form: 'E', anchor: 5 }] };
    const { route } = study(start, (i) => i.setRoute('stay'));
    expect(route && routeInWords(route, 0, 7)).toContain(
      '; pinned forms that do not fit there are left out: E at 9.1 (fret 5)',
    );
  });

  it('says how far planning is, and that it was stopped', () => {
    const long = workspace('| C Am | F G |\n'.repeat(60), { route: 'stay', position: 7 });
    const route = study(long).route;
    expect(route && routeInWords(route, 0, 7)).toBe(
      'Route staying near VII: 0 of 240 chords planned',
    );
    const stopped = study(long, (i) => i.stopPlanning()).route;
    expect(stopped && routeInWords(stopped, 0, 7)).toBe(
      'Route staying near VII: planning was stopped',
    );
  });
});

describe('a fingering and a comparison in words', () => {
  const fingered = (text: string): string => {
    const { fingered: found } = study(song, (i) => i.setFingering(text));
    return found ? fingeredInWords(found) : '-';
  };

  it.each([
    ['x7678x', 'x7678x is E7♯9: R, 3, ♭7, ♯9'],
    ['xx4555', 'xx4555 is F♯m7♭5: R, ♭5, ♭7, ♭3'],
    ['x7', '“x7”: expected 6 signs, one for each string, as x7678x'],
    ['012345', '“012345”: expected no more than four fingers, a barre counting one'],
  ])('%s', (text, said) => {
    expect(fingered(text)).toBe(said);
  });

  it('count what two forms share, and say what a tone is in another chord', () => {
    const { compared } = study(workspace('D', { position: 14 }), (i) => i.compareWithForm('D'));
    expect(compared && comparedInWords(compared)).toBe(
      'Beside the D form: three places shared, two left, one new',
    );
    const chords = study(workspace('Am7', { position: 5 }), (i) => i.compareWithChord('D9'));
    expect(chords.compared && comparedInWords(chords.compared)).toBe(
      'Beside D9: R is its 5, ♭3 is its ♭7, 5 is its 9',
    );
  });
});

describe('what is said of lenses', () => {
  it('is nothing without one, and nothing of what is not there', () => {
    expect(materialInWords(study(song))).toEqual([]);
    for (const lens of ['turn', 'fingering', 'compare', 'route'] as const) {
      expect(materialInWords(study(song, (i) => i.setLens(lens)))).toEqual([]);
    }
  });

  it('stands in the account: the turned form first', () => {
    const { account } = study(
      song,
      (i) => i.turnForm('minor'),
      (i) => i.setLens('connections'),
    );
    expect(account).toMatch(/Turned minor, Am: the 3 drops from fret 9 to 8\. To E7: /);
  });
});
