import { describe, expect, it } from 'vitest';
import {
  copyAt,
  DEFAULT_SPAN,
  formsAlongNeck,
  formsAtHand,
  makeGripText,
  readNeck,
  rivalAtHand,
} from '#neck';
import { sameDegree } from '#theory';
import { chord, GUITAR, instrument, reading, toneAt, toneText } from './support.ts';

const ranked = (symbol: string, position: number): string =>
  reading(symbol, position)
    .forms.map((at) => `${at.form.name}${at.anchor} ${at.under}/${at.of}`)
    .join(', ');

describe('a D chord with the hand at position XIV (common practice)', () => {
  const d = reading('D', 14, { colours: '4 2 b3' });

  it('has F♯ D A on the three high strings under the hand', () => {
    expect(toneAt(d, '1:14')).toBe('1:14 F#5 3 shape hand');
    expect(toneAt(d, '2:15')).toBe('2:15 D5 R shape hand');
    expect(toneAt(d, '3:14')).toBe('3:14 A4 5 shape hand');
  });

  it('has those three shared by its C and D forms', () => {
    const c = d.forms.find((at) => at.form.name === 'C');
    const shared = c?.overlaps.find((overlap) => overlap.form.name === 'D')?.shared ?? [];
    expect(shared.map((place) => `${place.string}:${place.fret}`)).toEqual([
      '1:14',
      '2:15',
      '3:14',
    ]);
  });

  it('has the fifth a stretch of the shape away under the hand', () => {
    expect(toneAt(d, '1:17')).toBe('1:17 A5 5 chord hand');
  });

  it('is coloured by G for sus4, E for sus2, and F a stretch back for minor', () => {
    expect(toneAt(d, '1:15')).toBe('1:15 G5 4 colour hand');
    expect(toneAt(d, '2:17')).toBe('2:17 E5 2 colour hand');
    expect(toneAt(d, '1:13')).toBe('1:13 F5 b3 colour stretch');
  });
});

describe('the forms under the hand', () => {
  it.each([
    ['D', 14, 'C14 5/5, D12 3/4'],
    ['Bm7', 7, 'E7 6/6'],
    ['A', 5, 'E5 6/6'],
    ['C', 1, 'C0 5/5'],
    ['F', 8, 'A8 5/5'],
  ])('of %s at %i begin with %s', (symbol, position, start) => {
    expect(ranked(symbol, position).startsWith(start)).toBe(true);
  });

  it.each([
    ['E/G#', 9, 'GA'],
    ['E/G#', 7, 'AG'],
    ['Bb/D', 3, 'GA'],
    ['Bb/D', 1, 'AG'],
  ])(
    'give the grip of %s at %i to the form that it is the whole of, if the hand comes to the whole: %s (common practice)',
    (symbol, position, order) => {
      const names = reading(symbol, position).forms.map((at) => at.form.name);
      expect(names.slice(0, 2).join('')).toBe(order);
    },
  );

  it('give C/E and C7/E at V to the G form (common practice)', () => {
    expect(reading('C/E', 5).chosen?.form.name).toBe('G');
    expect(reading('C7/E', 5).chosen?.form.name).toBe('G');
  });

  it.each([
    ['C9', 9, 'x-x-10-9-11-10'],
    ['F#9', 3, 'xx4354'],
    ['G7b9', 4, 'xx5464'],
    ['Bbmaj9', 7, 'x-x-8-7-10-8'],
    ['D7#9', 11, 'x-x-12-11-13-13'],
  ])(
    'call %s at %i the upper part of the E form, where D has no such grip: %s (common practice)',
    (symbol, position, grip) => {
      const { chosen } = reading(symbol, position);
      expect(chosen?.form.name).toBe('E');
      expect(chosen?.grip && makeGripText(chosen.grip, 6)).toBe(grip);
    },
  );

  it('keep the whole E form where the hand has it, and one copy a fret along the neck', () => {
    const whole = reading('C9', 8).chosen?.grip;
    expect(whole && makeGripText(whole, 6)).toBe('8-10-8-9-8-10');
    const along = formsAlongNeck(chord('C9'), {
      instrument: GUITAR,
      span: DEFAULT_SPAN,
      position: 8,
    }).filter(({ form }) => form.name === 'E');
    expect(along.map(({ anchor }) => Number(anchor))).toEqual([8, 20]);
  });

  it('have the bass of C/E under the hand at VII: x-7-10-9-8-8 (common practice)', () => {
    expect(ranked('C/E', 7).startsWith('E8 5/5')).toBe(true);
  });

  it.each([
    ['E9', 7, 'C4 4/5, A7 4/5'],
    ['D9', 5, 'C2 4/5, A5 4/5'],
    ['F#7#9', 9, 'C6 3/4, A9 4/5'],
    ['Dm9', 5, 'C2 4/5, A5 3/4'],
  ])(
    'of %s at %i begin with the grip that fits into four frets (common practice)',
    (symbol, position, start) => {
      expect(ranked(symbol, position).startsWith(start)).toBe(true);
    },
  );

  it.each([
    ['C', 'C', 2, 4],
    ['C', 'C', 3, 1],
    ['Asus4', 'A', 3, 1],
    ['Asus4', 'A', 2, 5],
    ['Em7', 'E', 3, 0],
    ['G', 'G', 3, 5],
  ])(
    'have open strings of %s in the %s form at %i where the hand holds half of the rest',
    (symbol, form, position, under) => {
      expect(reading(symbol, position, { form }).chosen?.under).toBe(under);
    },
  );

  it('name each form once', () => {
    expect(
      reading('G7', 3)
        .forms.map((at) => at.form.name)
        .sort(),
    ).toEqual(['A', 'C', 'D', 'E', 'G']);
  });

  it('change with the chord while the hand stays', () => {
    const chosen = ['C', 'Am', 'F', 'G'].map((symbol) => reading(symbol, 5).chosen?.form.name);
    expect(chosen).toEqual(['G', 'E', 'C', 'D']);
  });

  it('show the nearest copy of a form that is asked for', () => {
    const asked = reading('C', 14, { form: 'C' });
    expect([asked.chosen?.form.name, asked.chosen?.anchor]).toEqual(['C', 12]);
    expect(reading('C', 2, { form: 'C' }).chosen?.anchor).toBe(0);
  });

  it('are all of them found along the neck', () => {
    const hand = { position: 5, instrument: GUITAR, span: { index: 5, little: 9 } };
    const along = formsAlongNeck(chord('C'), hand).map((at) => `${at.form.name}${at.anchor}`);
    expect(along.join(' ')).toBe('C0 A3 G5 E8 D10 C12 A15 G17 E20');
    expect(formsAtHand(chord('C'), hand)).toHaveLength(5);
  });
});

describe('what sets the best form apart from the one that comes after it', () => {
  const rival = (symbol: string, position: number): string => {
    const hand = { position, instrument: GUITAR, span: DEFAULT_SPAN };
    const found = rivalAtHand(chord(symbol), hand);
    return found ? `${found.at.form.name} ${found.by}` : '-';
  };

  it.each([
    ['E9', 7, 'A narrow'],
    ['D9', 5, 'A narrow'],
    ['Cmaj7', 2, 'A near'],
    ['Cm', 4, 'G clean'],
    ['Gsus2', 3, 'E clean'],
    ['Bm', 10, 'C usual'],
    ['F#9sus4', 9, 'C whole'],
    ['Bm7', 7, 'D share'],
    ['Edim7', 2, 'E share'],
    ['C7#9', 1, 'G alone'],
  ])('is told of %s at %i: %s', (symbol, position, expected) => {
    expect(rival(symbol, position)).toBe(expected);
  });

  it('is nothing where the hand has nothing of any', () => {
    expect(rival('C7b9#9#11b13', 8)).toBe('-');
  });
});

describe('the tones of a reading', () => {
  it('are every place of the chord, once, from the thinnest string and the nut on', () => {
    const tones = reading('Am7', 5).tones;
    const keys = tones.map((tone) => tone.string * 100 + tone.fret);
    expect(keys).toEqual([...keys].sort((a, b) => a - b));
    expect(new Set(keys).size).toBe(keys.length);
    expect(tones.every((tone) => tone.fret <= 22)).toBe(true);
    expect(keys).toEqual(placesSounding([9, 0, 4, 7]));
  });

  it('are spelled letter by letter, or plainly when asked', () => {
    expect(toneAt(reading('Gbm', 2), '3:2')).toContain('Bbb3 b3');
    expect(toneAt(reading('Gbm', 2, { spelling: 'plain' }), '3:2')).toContain('A3 b3');
    expect(toneAt(reading('E7#9', 6), '2:8')).toBe('2:8 F##4 #9 shape hand');
  });

  it('leave a chord tone its degree where a colour sounds the same', () => {
    const plain = reading('Am7', 5).tones.map(toneText);
    expect(reading('Am7', 5, { colours: 'b3' }).tones.map(toneText)).toEqual(plain);
  });

  it('count the foreign bass among the tones', () => {
    expect(toneAt(reading('D/E', 1), '6:0')).toBe('6:0 E2 2 shape open');
  });

  it('do not depend on the left hand', () => {
    const left = instrument({ leftHanded: true });
    const right = reading('Ebmaj7', 6).tones.map(toneText);
    expect(reading('Ebmaj7', 6, { on: left }).tones.map(toneText)).toEqual(right);
  });

  it('number the fingers by the grip, and by the fret elsewhere', () => {
    const a = reading('A', 5);
    const fingers = (place: string) =>
      a.tones.find((tone) => `${tone.string}:${tone.fret}` === place)?.finger;
    expect(['1:5', '3:6', '5:7', '4:7'].map(fingers)).toEqual([1, 2, 3, 4]);
    expect(fingers('1:9')).toBe(4);
  });
});

describe('a chord that four fingers cannot hold', () => {
  const read = reading('C7b9#9#11b13', 8);
  const shape = read.tones.filter((tone) => tone.kind === 'shape');

  it('has its tones in the nearest form all the same', () => {
    expect([read.chosen?.form.name, read.chosen?.anchor, read.chosen?.grip]).toEqual([
      ...['E', 8, undefined],
    ]);
    expect(shape.map(toneText)).toContain('6:8 C3 R shape hand');
    expect(shape.length).toBeGreaterThanOrEqual(4);
  });

  it('has one on a string at most, within a fret of the form’s own place', () => {
    const own = read.chosen?.form.frets ?? [];
    const off = shape.map((tone) => Math.abs(tone.fret - 8 - (own[tone.string - 1] ?? 99)));
    expect(Math.max(...off)).toBeLessThanOrEqual(1);
    expect(new Set(shape.map((tone) => tone.string)).size).toBe(shape.length);
    expect(shape.every((tone) => read.chord.tones.some((d) => sameDegree(d, tone.degree)))).toBe(
      true,
    );
  });

  it('leaves colours what they are', () => {
    const coloured = reading('C7b9#9#11b13', 8, { colours: '4 6' });
    expect(coloured.tones.filter(({ kind }) => kind === 'shape')).toEqual(shape);
  });
});

describe('a copy of a form', () => {
  const query = {
    chord: chord('C'),
    position: 5,
    instrument: GUITAR,
    span: DEFAULT_SPAN,
    colours: [],
    spelling: 'exact',
    form: 'C',
  } as const;

  it('is asked for by its anchor; one that is not there is the nearest', () => {
    expect(readNeck(query).chosen?.anchor).toBe(0);
    expect(readNeck({ ...query, anchor: 12 }).chosen?.anchor).toBe(12);
    expect(readNeck({ ...query, anchor: 7 }).chosen?.anchor).toBe(0);
  });

  it('is measured against the hand', () => {
    expect(copyAt(query.chord, query, 'A', 3)).toMatchObject({ anchor: 3, under: 3, of: 5 });
    expect(copyAt(query.chord, query, 'A', 4)).toBeUndefined();
  });
});

/** Every place of 6 strings × 22 frets, as string·100 + fret, whose pitch class is among those given. */
function placesSounding(classes: readonly number[]): readonly number[] {
  const open = [64, 59, 55, 50, 45, 40];
  return open.flatMap((midi, i) =>
    Array.from({ length: 23 }, (_, f) => f)
      .filter((f) => classes.includes((midi + f) % 12))
      .map((f) => (i + 1) * 100 + f),
  );
}
