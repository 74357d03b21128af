import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demandsOf, formPlaces, formsOf, type Grip, gripsOf, midiAtPlace } from '#neck';
import { LETTERS, midi, noteAt, pitchClass, pitchClassOf, sameDegree } from '#theory';
import { chord, GUITAR, gripOf, gripText, instrument } from './support.ts';

/** Textbook grips of the five forms at the nut; where usage differs, any of those named (common practice). */
const TEXTBOOK: Readonly<Record<string, readonly [string, string, string, string, string]>> = {
  '': ['x32010', 'x02220', '320003', '022100', 'xx0232'],
  m: ['x3101x', 'x02210', '310033 3100x3', '022000', 'xx0231'],
  '7': ['x32310', 'x02020', '320001', '020100', 'xx0212'],
  maj7: ['x32000', 'x02120', '320002', '021100', 'xx0222'],
  m7: ['x3131x x31313', 'x02010', '3100x1 3x0331', '020000', 'xx0211'],
  sus4: ['x33011', 'x02230', '330013', '022200', 'xx0233'],
  sus2: ['x30013 x3001x', 'x02200', '3x0233 300033', '022x02 024400', 'xx0230'],
  '6': ['x32210', 'x02222', '320000', '022120', 'xx0202'],
  add9: ['x32030', 'x02420', '3x0203 320203', '022102 024100', 'xx0252'],
  '7#9': ['x3234x', 'x02523', '320301', '020103', '-'],
};
const FORMS = ['C', 'A', 'G', 'E', 'D'] as const;
const QUALITIES =
  ' m 7 maj7 m7 6 m6 sus2 sus4 add9 madd9 9 maj9 m9 11 m11 13 maj13 m13 6/9 dim dim7 m7b5 aug 7b5 7#5 7b9 7#9 7#11 7b13 7alt 7sus4 9sus4 13sus4 m(maj7) maj7#11 maj7#5 13#11 5'.split(
    ' ',
  );
const ROOTS = LETTERS.flatMap((letter) => [letter, `${letter}b`, `${letter}#`]);
const SYMBOLS = ROOTS.flatMap((root) => QUALITIES.map((quality) => root + quality));

describe('grips of the five forms', () => {
  for (const [quality, grips] of Object.entries(TEXTBOOK)) {
    it(`are the textbook ones for ${quality || 'major'} (common practice)`, () => {
      const found = FORMS.map((form) => gripText(form + quality, form, 0));
      expect(found.map((grip, i) => grips[i]?.split(' ').includes(grip))).toEqual(
        FORMS.map(() => true),
      );
    });
  }

  it.each([
    ['E7#9', 'C', 4, 'x7678x'],
    ['G', 'A', 10, 'x-10-12-12-12-10'],
    ['F', 'A', 8, 'x-8-10-10-10-8'],
    ['Eb', 'A', 6, 'x68886'],
    ['A', 'D', 7, 'x-x-7-9-10-9'],
    ['Am', 'D', 7, 'x-x-7-9-10-8'],
    ['F', 'E', 1, '133211'],
    ['Bm7', 'E', 7, '797777'],
    ['C7', 'C', 12, 'x-15-14-15-13-x'],
    ['D7b9', 'C', 2, 'x54545'],
    ['G7b9', 'C', 7, 'x-10-9-10-9-10'],
    ['Eb6/9', 'C', 3, 'x65566'],
    ['D9', 'C', 2, 'x54555'],
    ['Cm9', 'C', 12, 'x-15-13-15-15-15'],
    ['Cmaj13', 'G', 5, '877787'],
    ['Adim', 'E', 5, '5675xx'],
    ['D9sus4', 'G', 7, '10-x-7-9-8-8'],
    ['F', 'D', 3, 'xx3565'],
    ['C5', 'E', 8, '8-10-10-x-x-x'],
    ['C5', 'A', 3, 'x355xx'],
    ['C5/G', 'A', 3, '3355xx'],
    ['Cm7b5', 'G', 5, '8x887x'],
    ['Bm7b5', 'G', 4, '7x776x'],
    ['B7alt', 'G', 4, '76778x'],
    ['D7#9', 'G', 7, '10-x-7-10-7-8'],
    ['C7b5', 'G', 5, '89x556'],
  ])('put %s in the %s form at %i as %s (common practice)', (symbol, form, anchor, grip) => {
    expect(gripText(symbol, form, anchor)).toBe(grip);
  });

  it.each([
    ['F', 'E', 1, '1 1 2 4 3 1'],
    ['C', 'C', 0, '- 1 - 2 3'],
    ['D', 'D', 0, '2 3 1 -'],
    ['E7#9', 'C', 4, '4 3 1 2'],
    ['A', 'A', 0, '- 3 2 1 -'],
    ['Asus2', 'D', 7, '1 4 3 1'],
    ['Em', 'E', 0, '- - - 3 2 -'],
    ['Asus4', 'A', 0, '- 3 2 1 -'],
    ['Asus2', 'A', 0, '- - 3 2 -'],
    ['Emaj7', 'E', 0, '- - 2 1 3 -'],
    ['Cmaj7', 'C', 0, '- - - 2 3'],
    ['A7', 'A', 0, '- 3 - 2 -'],
    ['Dm7', 'D', 0, '1 1 2 -'],
    ['A6', 'A', 0, '1 1 1 1 -'],
    ['Aadd9', 'A', 0, '- 2 3 1 -'],
    ['C#m/B', 'E', 9, '1 1 1 1'],
    ['Gsus2', 'G', 12, '4 4 1 1 1 3'],
    ['C9', 'C', 0, '3 3 3 1 2'],
  ])(
    'finger %s in the %s form at %i as books do, thin string first',
    (symbol, form, anchor, fingers) => {
      const tones = gripOf(symbol, form, anchor).tones;
      expect(tones.map((tone) => tone.finger ?? '-').join(' ')).toBe(fingers);
    },
  );

  it('lay the index flat across the F chord at fret 1', () => {
    expect(gripOf('F', 'E', 1).barres).toEqual([{ finger: 1, fret: 1, from: 6, to: 1 }]);
  });

  it('put a named bass lowest', () => {
    const basses = ['D/F#', 'C/G', 'C/E', 'Am7/G', 'G/B', 'C/Bb', 'Dm/C', 'D/E'];
    for (const symbol of basses) {
      const grips = gripsOf(chord(symbol), GUITAR);
      expect(grips.length, symbol).toBeGreaterThan(0);
      for (const grip of grips) expect(lowestPitchClass(grip), symbol).toBe(bassOf(symbol));
    }
  });

  it.each([
    ['C/E', 'E', 8, 'x-7-10-9-8-8'],
    ['Cm/E', 'E', 8, 'x-7-10-8-8-8'],
    ['C7/E', 'E', 8, 'x78988'],
    ['Cmaj7/E', 'E', 8, 'x79988'],
    ['F/A', 'E', 1, 'x03211'],
    ['C/E', 'G', 5, 'x75558'],
    ['D/F#', 'C', 2, '254232'],
  ])(
    'keep the named bass of %s in the %s form at %i with the other tones: %s (common practice)',
    (symbol, form, anchor, grip) => {
      expect(gripText(symbol, form, anchor)).toBe(grip);
    },
  );

  it.each([
    ['B9', 'x21222'],
    ['B7#9', 'x2123x'],
    ['B7#9#5', 'x21233'],
    ['B7alt', 'x21233'],
  ])(
    'hold %s as %s near the nut, a C form that reaches behind it (common practice)',
    (symbol, grip) => {
      expect(gripText(symbol, 'C', -1)).toBe(grip);
    },
  );

  it('hold nothing behind nut or capo', () => {
    for (const capo of [0, 3])
      for (const symbol of ['B', 'B7', 'B9', 'Bmaj9', 'F#dim7', 'Bb7#9', 'Db7alt', 'D9', 'A7#9']) {
        const on = instrument({ capo });
        const lowest = formPlaces(chord(symbol), on)
          .filter(({ anchor }) => anchor < capo)
          .flatMap(({ grip }) => Math.min(...(grip?.tones.map((tone) => tone.fret) ?? [])));
        expect(
          lowest.every((fret) => fret > capo),
          `${symbol} at ${capo}`,
        ).toBe(true);
      }
    expect(formPlaces(chord('D9'), instrument({ capo: 3 }))[0]?.anchor).toBe(2);
  });

  it('hold a half-diminished chord in the A form as x3434x (common practice)', () => {
    expect(gripText('Cm7b5', 'A', 3)).toBe('x3434x');
  });

  it('lay no finger on a named bass that is an open string', () => {
    const fingers = gripOf('F/A', 'E', 1).tones.map((tone) => tone.finger ?? '-');
    expect(fingers.join(' ')).toBe('1 1 2 3 -');
    const capo = instrument({ capo: 3 });
    const place = formPlaces(chord('Ab/C'), capo).find((p) => p.form.name === 'E');
    expect(place?.grip?.tones.map((tone) => `${tone.fret}${tone.finger ?? '-'}`).join(' ')).toBe(
      '41 41 52 63 3-',
    );
  });
});

const bassOf = (symbol: string): number => {
  const { root, bass } = chord(symbol);
  return pitchClassOf(bass ?? root);
};

const pitches = (grip: Grip, on = GUITAR): readonly number[] =>
  grip.tones.map((tone) => midiAtPlace(on, tone) ?? -1);

const lowestPitchClass = (grip: Grip, on = GUITAR): number =>
  pitchClass(Math.min(...pitches(grip, on)));

function problemsOf(grip: Grip, symbol: string): readonly string[] {
  const asked = chord(symbol);
  const held = grip.tones.flatMap((tone) => (tone.finger === undefined ? [] : [tone.fret]));
  const wrong = grip.tones.filter((tone) => {
    const sounds = pitchClass(midiAtPlace(GUITAR, tone) ?? midi(0));
    return sounds !== pitchClassOf(noteAt(asked.root, tone.degree));
  });
  const required = demandsOf(asked).tones.filter((tone) => tone.required);
  const absent = required.filter(
    (t) => !grip.tones.some((tone) => sameDegree(tone.degree, t.degree)),
  );
  const fingers = new Set(grip.tones.flatMap((tone) => tone.finger ?? []));
  return [
    ...(wrong.length > 0 ? ['a tone is not its degree'] : []),
    ...(absent.length > 0 ? ['an indispensable tone is absent'] : []),
    ...(lowestPitchClass(grip) === bassOf(symbol) ? [] : ['the bass is not lowest']),
    ...([...fingers].every((finger) => finger >= 1 && finger <= 4) ? [] : ['too many fingers']),
    ...(Math.max(...held, 0) - Math.min(...held, 99) <= 5 ? [] : ['too wide']),
  ];
}

function widthInMillimetres(grip: Grip): number {
  const held = grip.tones.flatMap((tone) =>
    tone.fret > 0 ? [648 * (1 - 2 ** (-tone.fret / 12))] : [],
  );
  return Math.max(0, ...held) - Math.min(648, ...held);
}

function crossedFingers(grip: Grip): boolean {
  const byFinger = new Map<number, Set<number>>();
  for (const { finger, fret } of grip.tones) {
    if (finger !== undefined) byFinger.set(finger, (byFinger.get(finger) ?? new Set()).add(fret));
  }
  const frets = [...byFinger.entries()].sort(([a], [b]) => a - b).map(([, set]) => [...set]);
  const oneFretEach = frets.every((own) => own.length === 1);
  return !oneFretEach || frets.some((own, i) => i > 0 && (own[0] ?? 0) < (frets[i - 1]?.[0] ?? 0));
}

/** Frets that a barre presses on strings which must not sound. */
const pressedSilent = ({ barres, tones }: Grip): number =>
  barres.reduce((sum, { from, to }) => {
    const sounding = tones.filter(({ string }) => string <= from && string >= to).length;
    return sum + from - to + 1 - sounding;
  }, 0);

describe('what a grip leaves out', () => {
  it('is never a fifth that lies in the same hand: C forms of ninth chords are whole (common practice)', () => {
    for (const quality of ['9', 'm9', '6/9', 'm6/9', '7b9', '9sus4']) {
      const symbol = `F${quality}`;
      expect(gripOf(symbol, 'C', 5).missing, symbol).toEqual([]);
    }
  });

  it('is the eleventh of a thirteenth rather than its third (common practice)', () => {
    for (const symbol of ['C13', 'Cmaj13', 'F13', 'Bbmaj13', 'A13']) {
      const grips = gripsOf(chord(symbol), GUITAR);
      expect(grips.length, symbol).toBeGreaterThan(4);
      for (const { tones } of grips) {
        const numbers = tones.map((tone) => tone.degree.number);
        expect(numbers, symbol).toContain(3);
        expect(numbers, symbol).not.toContain(11);
      }
    }
  });

  it('may be the third of an eleventh, for which the eleventh stands (common practice)', () => {
    const eleventh = gripOf('A11', 'A', 12);
    expect(eleventh.missing.map((tone) => tone.number)).toContain(3);
    expect(eleventh.tones.some((tone) => tone.degree.number === 11)).toBe(true);
  });
});

describe('a flat finger', () => {
  it('hardly ever lies on a string that must rest', () => {
    const pressed = QUALITIES.flatMap((quality) =>
      gripsOf(chord(`C${quality}`), GUITAR)
        .filter((grip) => pressedSilent(grip) > 0)
        .map((grip) => `${quality} ${grip.form.name}`),
    );
    expect([...new Set(pressed)]).toEqual(['sus2 E']);
  });
});

describe('every grip of every root and quality', () => {
  it('sounds what it says, holds what makes the chord, and is held by four fingers', () => {
    for (const symbol of SYMBOLS) {
      for (const grip of gripsOf(chord(symbol), GUITAR)) {
        expect(problemsOf(grip, symbol), `${symbol} ${grip.form.name} ${grip.anchor}`).toEqual([]);
      }
    }
  });

  it('asks for no more than 130 mm between the outer fingers', () => {
    const wide = SYMBOLS.flatMap((symbol) =>
      gripsOf(chord(symbol), GUITAR).filter((grip) => widthInMillimetres(grip) > 130),
    );
    expect(wide).toEqual([]);
  });

  it('never crosses fingers and gives a finger one fret', () => {
    for (const symbol of SYMBOLS) {
      const crossed = gripsOf(chord(symbol), GUITAR).filter(crossedFingers);
      expect(crossed.map((grip) => `${symbol} ${grip.form.name} ${grip.anchor}`)).toEqual([]);
    }
  });

  it('has at least one playable form', () => {
    const without = SYMBOLS.filter((symbol) => gripsOf(chord(symbol), GUITAR).length === 0);
    expect(without).toEqual([]);
  });

  it('keeps its shape when the root moves up a fret', () => {
    for (const quality of QUALITIES) {
      for (const form of FORMS) {
        const shapes = (['C#', 'D', 'Eb', 'E'] as const).map((root) => {
          const place = formPlaces(chord(root + quality), GUITAR).find(
            (p) => p.form.name === form && p.anchor > 2,
          );
          return place?.grip?.tones.map((t) => `${t.string}:${t.fret - place.anchor}`).join(' ');
        });
        expect(new Set(shapes).size, `${quality} in the ${form} form`).toBe(1);
      }
    }
  });
});

describe('forms along the neck', () => {
  it('follow each other C A G E D, 3 2 3 2 2 frets apart, twice to the octave above (common practice)', () => {
    const places = formPlaces(chord('C'), GUITAR).map((p) => `${p.form.name}${p.anchor}`);
    expect(places.join(' ')).toBe('C0 A3 G5 E8 D10 C12 A15 G17 E20');
  });

  it('are computed once for a chord and an instrument', () => {
    const asked = chord('F#m7b5');
    const before = formPlaces(asked, GUITAR);
    expect(formPlaces(asked, GUITAR)).toBe(before);
  });

  it('keep their letters a half step down and lie on the top six of seven strings', () => {
    const down = formsOf(instrument({ tuning: 'Eb2-Ab2-Db3-Gb3-Bb3-Eb4' }));
    expect(down.map((form) => form.name).join('')).toBe('CAGED');
    const seven = instrument({ tuning: 'B1-E2-A2-D3-G3-B3-E4' });
    expect(gripText('C', 'C', 0, seven)).toBe('xx32010');
  });

  it('become the open triads of another tuning', () => {
    const openG = formsOf(instrument({ tuning: 'D2-G2-D3-G3-B3-D4' }));
    expect(openG.find((form) => form.name === 'G')?.frets).toEqual([0, 0, 0, 0, 0, null]);
  });

  it('stay behind the capo', () => {
    const capo = instrument({ capo: 3 });
    const places = formPlaces(chord('C'), capo);
    expect(places[0]?.anchor).toBeGreaterThanOrEqual(3);
    expect(gripText('Eb', 'C', 3, capo)).toBe('x65343');
  });

  it('hold in any tuning that can be typed: lowest tone is the root, tones are the chord', () => {
    const open = fc.integer({ min: 0, max: 9 });
    const tuning = fc.array(open, { minLength: 4, maxLength: 8 }).map((steps) => {
      let note = 30;
      return steps.map((step) => {
        note += step;
        return `${['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'][note % 12]}${Math.floor(note / 12) - 1}`;
      });
    });
    fc.assert(
      fc.property(tuning, fc.constantFrom('C', 'Dm7', 'F#7', 'Bbmaj7'), (names, symbol) => {
        const on = instrument({ tuning: names.join('-') });
        const grips = gripsOf(chord(symbol), on);
        return grips.every((grip) => lowestPitchClass(grip, on) === bassOf(symbol));
      }),
      { numRuns: 60 },
    );
  });
});
