import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestAtHand, DEFAULT_SPAN, type ReadingQuery, readNeck, STANDARD_GUITAR } from '#neck';
import { type Chord, parseChord, parseDegree } from '#theory';
import { type AccountParts, accountOf, LONGEST_ACCOUNT, numberWord } from '../../src/ui/words.ts';
import { besideInWords } from '../../src/ui/words-beside.ts';

function chord(symbol: string): Chord {
  const read = parseChord(symbol);
  if (!read.ok) throw new Error(`not a chord: ${symbol}`);
  return read.value;
}

function degree(text: string) {
  const read = parseDegree(text);
  if (!read.ok) throw new Error(`not a degree: ${text}`);
  return read.value;
}

const HAND = { instrument: STANDARD_GUITAR, span: DEFAULT_SPAN };

function partsOf(
  symbol: string,
  position: number,
  next = '',
  more: Partial<ReadingQuery> = {},
): AccountParts {
  const hand = { ...HAND, position, ...(more.span && { span: more.span }) };
  const query = { ...hand, chord: chord(symbol), colours: [], spelling: 'exact', ...more } as const;
  const reading = readNeck(query);
  return {
    standing: { kind: 'chord' },
    symbol,
    position,
    reading,
    beside: besideInWords(reading, hand),
    next: next === '' ? undefined : { symbol: next, form: bestAtHand(chord(next), hand) },
  };
}

const textOf = (parts: AccountParts): string => accountOf(parts).account;

const said = (...given: Parameters<typeof partsOf>): string => textOf(partsOf(...given));

describe('the reading in words', () => {
  it('says chord, position, form, degrees with notes, neighbour and what comes next', () => {
    expect(said('Bm7', 7, 'E7')).toBe(
      'Bm7, position VII: the E form lies under the hand, six of six places. ' +
        'Open E shape 7 frets up, barred, root on strings 6 and 1, ' +
        'changed: ♭7 on string 4, ♭3 on 3. ' +
        'Second best: the D form, three of four, one more stretched. ' +
        'R B, ♭3 D, 5 F♯, ♭7 A. Overlaps the G form in one place. ' +
        'Next: E7, the A form, five of five.',
    );
  });

  it('spells letter by letter, with signs', () => {
    expect(said('Gbm', 2)).toMatch(/^G♭m, position II: .* R G♭, ♭3 B𝄫, 5 D♭\./);
  });

  it('spells plainly where that is wanted', () => {
    expect(said('Gbm', 2, '', { spelling: 'plain' })).toContain('R G♭, ♭3 A, 5 D♭.');
  });

  it('says what a grip has to leave out', () => {
    expect(said('E7#9', 6, '', { form: 'C' })).toBe(
      'E7♯9, position VI: the C form lies under the hand, four of four places, without 5. ' +
        'Open C shape 4 frets up, its nut IV unused, root on string 5, 3 on string 4 as in C, ' +
        'changed: ♭7 on string 3, ♯9 on 2, string 1 left out. ' +
        'Second best: the A form, three of five, one more stretched, its grip wider than your span. ' +
        'R E, 3 G♯, ♭7 D, ♯9 F𝄪.',
    );
    expect(said('C9', 9)).toContain('without 5. ');
    expect(said('C9', 9), 'where there is room').toContain('; also under the hand 5 G.');
  });

  it('says where a grip is not the plain open shape', () => {
    const most =
      'root on string 5, 3 on string 4 as in C, changed: ♭7 on string 3, ♭9 on 2, 5 on 1. ';
    expect(said('F7b9', 7, '', { form: 'C' })).toContain(most);
    expect(said('F', 5, '', { form: 'C' })).not.toContain('changed');
    expect(said('Bm7', 2, '', { form: 'A' })).toContain(
      'root on string 5, changed: ♭7 on string 3, ♭3 on 2. ',
    );
    expect(said('Bm7', 2, 'Gbm7b5/Bbb', { form: 'A' })).toContain('changed: ♭7');
  });

  it('says what is left of the shape where half of it or more is changed', () => {
    expect(said('Dm7b5', 8)).toContain(
      'root on string 6, no fret higher as in G, changed: ♭7 on string 4, ',
    );
    expect(said('C9', 9)).toContain(
      'root on string 4, 3 on string 3 as in E, changed: ♭7 on string 2, 9 on 1, ' +
        'strings 6 and 5 left out. ',
    );
    expect(said('Bb7#5', 1, '', { form: 'A' })).not.toContain('as in A');
    expect(said('Bm7', 7)).not.toContain('as in E');
  });

  it('tells a string that the shape does not play, and outer ones that it leaves out', () => {
    const bass = said('B/D#', 9, '', { form: 'D' });
    expect(bass).toContain('root on strings 4 and 2, added: 3 on string 6. ');
    expect(said('C#m/B', 9, '', { form: 'E' })).toContain(
      'changed: ♭7 on string 4, ♭3 on 3, strings 6 and 5 left out. ',
    );
    expect(said('A', 5, '', { form: 'E' })).not.toMatch(/changed|added|left out/);
  });

  it('says where the hand would have all of a grip, a few frets away', () => {
    expect(said('Ab', 7)).toContain(' Position VIII has all of it.');
    expect(said('Ab', 8)).not.toContain('has all');
    expect(said('C', 9, '', { form: 'E' })).toContain(' Position VIII has all of it.');
    expect(said('F7#9', 8, '', { form: 'A' }), 'wide anywhere').not.toContain('has all of it');
    expect(said('C', 1, '', { form: 'E' }), 'too far').not.toContain('has all of it');
  });

  it('says what is out of reach where a stretch gives more, but not all', () => {
    expect(said('A6/9', 7)).toContain('four of six places, one more stretched, one out of reach. ');
    expect(said('Bm7', 5)).toContain('five of six places, one more stretched. ');
  });

  it('says of a form that only a stretch reaches how far it is reached', () => {
    expect(said('F', 7, '', { form: 'D' })).toContain(
      'the D form lies away from the hand, at III, one stretched. ',
    );
  });

  it('names the strings between the others that must not sound', () => {
    expect(said('Dm7', 7, '', { form: 'G' })).toContain('five of five places, string 2 muted. ');
  });

  it('says of a form under the hand that it has no grip for the chord', () => {
    const none = 'The D form lies here, but has no grip for this chord.';
    expect(said('A7#9#5', 7)).toContain(none);
    expect(said('A7#9#5', 12)).not.toContain(none);
    expect(said('A7#9#5', 7, '', { form: 'D' })).not.toContain(none);
  });

  it('names the colours under the hand', () => {
    const colours = [degree('9'), degree('4')];
    expect(said('D', 14, '', { colours })).toContain('Colours under the hand: 9 E, 4 G.');
  });

  it('says how much of a form that was asked for is under the hand', () => {
    expect(said('D', 5, '', { form: 'C' })).toContain(
      'the C form lies only partly under the hand, one of five places',
    );
    expect(said('D', 7, '', { form: 'C' })).toContain('the C form lies away from the hand, at II.');
  });

  it('says what of a form takes a stretch', () => {
    expect(said('A', 6, '', { form: 'D' })).toContain(
      'the D form lies mostly under the hand, three of four places, one more stretched.',
    );
  });

  it('says which degrees are a stretch away and which are out of reach', () => {
    const parts = partsOf('Bm7', 7);
    const tones = (parts.reading?.tones ?? []).map((tone) =>
      tone.degree.number === 5
        ? { ...tone, reach: 'stretch' as const }
        : { ...tone, reach: tone.degree.number === 7 ? ('out' as const) : tone.reach },
    );
    const reading = parts.reading && { ...parts.reading, tones };
    expect(textOf({ ...parts, reading })).toContain(
      ' R B, ♭3 D; a stretch away 5 F♯; out of reach ♭7 A.',
    );
  });

  it('asks for a progression when there is none', () => {
    const nothing = { position: 7, symbol: '', reading: undefined, next: undefined };
    expect(textOf({ ...nothing, standing: { kind: 'empty' } })).toBe(
      'No chord yet. Type a progression, such as Dm7 G7 C.',
    );
  });

  it('says that no chord sounds, and what comes', () => {
    const parts = { ...partsOf('C', 8, 'G7'), reading: undefined, symbol: 'N.C.' };
    expect(textOf({ ...parts, standing: { kind: 'silent' } })).toBe(
      'N.C., no chord, position VIII. Next: G7, the C form, four of four.',
    );
  });

  it('says that a symbol cannot be read, what may be meant, and what is still on the neck', () => {
    const standing = { kind: 'unread', found: 'Hm', suggestion: 'Bm' } as const;
    expect(textOf({ ...partsOf('C', 8), standing })).toMatch(
      /^“Hm” cannot be read; perhaps Bm\. Still on the neck: C, position VIII: the E form /,
    );
    const nothing = { position: 7, symbol: '', reading: undefined, next: undefined };
    expect(textOf({ ...nothing, standing: { kind: 'unread', found: 'Hx' } })).toBe(
      '“Hx” cannot be read.',
    );
  });

  it('says that four fingers cannot hold a chord, and where its tones are shown', () => {
    expect(said('C7b9#9#11b13', 8)).toContain(
      'C7♭9♯9♯11♭13, position VIII: no playable grip: the tones are shown in the nearest form, E at VIII. ',
    );
    expect(said('A7#9#5', 7, '', { form: 'D' })).toContain(
      'A7♯9♯5, position VII: no playable grip: the tones are shown in the nearest form, D at VII. ',
    );
  });

  it('says that the bass is what the hand lacks', () => {
    expect(said('C13/E', 7, '', { form: 'E' })).toContain(', but not its bass E on string 6');
    expect(said('C13/E', 8, '', { form: 'E' })).not.toContain('but not its bass');
    expect(said('C', 9, '', { form: 'E' })).not.toContain('but not its bass');
    expect(said('C/E', 7)).toContain(
      'the E form lies under the hand, five of five places. Open E shape 8 frets up, begun a fret lower, ',
    );
  });

  it('says of a grip that it is wider than the player’s span', () => {
    const wide = ', its grip wider than your span';
    const wider = { form: 'A', span: { index: 5, little: 11 } };
    expect(said('F7#9', 8, '', { form: 'A' })).toContain(`one out of reach${wide}`);
    expect(said('F7#9', 8, '', wider)).not.toContain(wide);
    expect(said('E9', 7)).not.toContain(wide);
  });

  it.each([
    ['E9', 7, 'Second best: the A form, as much under the hand, but wider than four frets.'],
    [
      'Cmaj7',
      2,
      'Second best: the A form, as much under the hand, but its first finger lies further off.',
    ],
    ['Gsus2', 3, 'Second best: the E form, as much under the hand, but a string muted in it.'],
    ['Bm', 10, 'Second best: the C form, as much under the hand, but its form is less usual.'],
    ['Edim7', 2, 'Second best: the E form, five of six, the smaller share.'],
    ['Ab', 7, 'Second best: the D form, three of four, one more stretched, the smaller share.'],
    ['E/G#', 9, 'Second best: the A form, only a part of this one.'],
    ['D/F#', 7, 'Second best: the A form, only a part of this one.'],
    ['F#m7b5', 5, 'Second best: the D form, three of four, but one out of reach.'],
    ['G7#9', 10, 'Second best: the A form, four of five, but wider than four frets.'],
    ['F', 7, 'Second best: the G form, three of six.'],
    [
      'G7alt',
      5,
      'Second best: the C form, nothing of it without a stretch. The D form lies here, but has no grip for this chord.',
    ],
    ['C7#9', 1, 'No other form lies under the hand.'],
  ])(
    'says of %s at %i what sets its form apart from the one that comes after it',
    (symbol, position, words) => {
      expect(said(symbol, position)).toContain(` ${words} R `);
      expect(said(symbol, position, 'Gbm7b5/Bbb')).toContain(words);
    },
  );

  it('says of a form that was asked for which one would come first, unless that is the best', () => {
    const asked = said('E9', 7, '', { form: 'A' });
    expect(asked).toContain('Best here is the C form, four of five, one more stretched. ');
    expect(asked).not.toMatch(/Second best/);
    expect(said('C', 20, '', { form: 'C' })).not.toContain('Best here is the C');
    expect(said('E9', 7, '', { form: 'C' })).toContain(
      'Second best: the A form, as much under the hand, ',
    );
  });

  it('says of another form that it is the same places', () => {
    const text = said('F#9sus4', 9);
    expect(text).toContain('The C form is the same five places.');
    expect(text).not.toContain('Second best');
    expect(text).not.toContain('Overlaps');
  });

  it('says what is drawn over the neck before the degrees, and leaves those out first', () => {
    const parts = partsOf('Bm7', 7, 'E7');
    expect(textOf({ ...parts, material: [] })).toBe(textOf(parts));
    const text = textOf({ ...parts, material: ['Best bend: none', 'x'.repeat(200)] });
    expect(text).toMatch(/six of six places\. Best bend: none\. x+\. Next: E7/);
    expect(text).not.toContain('♭3 D');
    const nothing = { position: 7, symbol: '', reading: undefined, next: undefined };
    expect(textOf({ ...nothing, standing: { kind: 'empty' }, material: ['x7678x is E7♯9'] })).toBe(
      'No chord yet. Type a progression, such as Dm7 G7 C. x7678x is E7♯9.',
    );
  });

  it('tells which part of it says why', () => {
    const reasonOf = (...given: Parameters<typeof partsOf>) => accountOf(partsOf(...given)).reason;
    expect(reasonOf('Bm7', 7, 'E7')).toBe(
      'Open E shape 7 frets up, barred, root on strings 6 and 1, ' +
        'changed: ♭7 on string 4, ♭3 on 3. ' +
        'Second best: the D form, three of four, one more stretched',
    );
    expect(reasonOf('Cmaj7', 2)).toBe(
      'Open C shape, root on string 5, changed: 7 on string 2. Second best: the A form, as much under the hand, but its first finger lies further off',
    );
    const silent = { ...partsOf('C', 8), standing: { kind: 'silent' } } as const;
    expect(accountOf(silent).reason).toBe('');
    const full = accountOf({ ...partsOf('Bm7', 7), material: ['x'.repeat(250)] });
    expect(full.reason).toBe('');
  });

  it('stays short enough to be listened to', () => {
    const symbols = ['C', 'Gbm7b5/Bbb', 'E13#9#11', 'Fmaj13#11', 'Bb7b9b13', 'D6/9', 'Cm(maj7)'];
    const colours = ['b9', '9', '#9', '4', '#4', 'b6', '6'].map(degree);
    const positions = fc.integer({ min: 1, max: 22 });
    fc.assert(
      fc.property(
        fc.constantFrom(...symbols),
        fc.constantFrom(...symbols),
        positions,
        (a, b, p) => {
          const text = said(a, p, b, { colours });
          expect(text.length).toBeLessThanOrEqual(LONGEST_ACCOUNT);
          expect(text).toContain('Next: ');
        },
      ),
    );
  });
});

describe('counts in words', () => {
  it.each([
    [0, 'none'],
    [1, 'one'],
    [12, 'twelve'],
    [13, '13'],
  ])('%i is %s', (n, word) => {
    expect(numberWord(n)).toBe(word);
  });
});
