import { describe, expect, it } from 'vitest';
import { makeRoman, romanNumeral } from '#theory';
import { key } from './key-short.ts';
import { chord } from './short.ts';

/** The numerals of chords that follow each other. */
function numerals(inKey: string, symbols: string, style: 'sign' | 'ascii' = 'sign'): string {
  const chords = symbols.split(' ').map(chord);
  return chords
    .map((c, i) => makeRoman(romanNumeral(c, key(inKey), chords[i + 1]), style))
    .join(' ');
}

describe('diatonic chords', () => {
  // Open Music Theory, "Roman numerals"; major sevenths as lead sheets write them.
  it('of a major key', () => {
    expect(numerals('C', 'C Dm Em F G Am Bdim')).toBe('I ii iii IV V vi vii°');
    expect(numerals('C', 'Cmaj7 Dm7 Em7 Fmaj7 G7 Am7 Bm7b5')).toBe(
      'Imaj7 ii7 iii7 IVmaj7 V7 vi7 viiø7',
    );
    expect(numerals('Eb', 'Eb Fm Gm Ab Bb Cm Ddim')).toBe('I ii iii IV V vi vii°');
  });

  it('of a minor key', () => {
    expect(numerals('Cm', 'Cm Ddim Eb Fm G Ab Bb Bdim')).toBe('i ii° III iv V VI VII vii°');
    expect(numerals('Cm', 'Cm7 Dm7b5 Ebmaj7 Fm7 G7 Abmaj7 Bb7 Bdim7')).toBe(
      'i7 iiø7 IIImaj7 iv7 V7 VImaj7 VII7 vii°7',
    );
    expect(numerals('Cm', 'Gm Gm7 Eb+')).toBe('v v7 III+');
  });

  // tonal, Key: C minor, harmonic and melodic sevenths.
  it('of the harmonic and melodic minor', () => {
    expect(numerals('Cm', 'CmMaj7 Dm7b5 Ebmaj7#5 Fm7 G7 Abmaj7 Bdim7')).toBe(
      'imaj7 iiø7 III+maj7 iv7 V7 VImaj7 vii°7',
    );
    expect(numerals('Cm', 'Cm6 Dm7 Ebmaj7#5 F7 G7 Am7b5 Bm7b5')).toBe(
      'iadd6 ii7 III+maj7 IV7 V7 ♯viø7 viiø7',
    );
  });

  // Open Music Theory, "Pop/rock harmony: blues".
  it('of a blues of twelve bars', () => {
    expect(numerals('C', 'C C C C F F C C G F C C')).toBe('I I I I IV IV I I V IV I I');
    expect(numerals('C', 'C7 F7 C7 C7 F7 F7 C7 C7 G7 F7 C7 G7')).toBe(
      'I7 IV7 I7 I7 IV7 IV7 I7 I7 V7 IV7 I7 V7',
    );
  });
});

describe('chromatic chords', () => {
  it.each([
    ['C', 'Bb Eb Ab Db', '♭VII ♭III ♭VI ♭II'],
    ['C', 'F Fm C', 'IV iv I'],
    ['C', 'F#dim7 C', '♯iv°7 I'],
    ['Am', 'Bb E', '♭II V'],
    ['A', 'D7 A', 'IV7 I'],
  ])('in %s %s are %s', (inKey, symbols, shown) => {
    expect(numerals(inKey, symbols)).toBe(shown);
  });

  it('spelled against the key count by what they sound as', () => {
    expect(numerals('Eb', 'D#m G#')).toBe('i IV');
    expect(numerals('Am', 'Abdim7 Am')).toBe('vii°7 i');
  });
});

describe('applied chords', () => {
  it.each([
    ['C', 'A7 Dm', 'V7/ii ii'],
    ['C', 'D7 G7', 'V7/V V7'],
    ['C', 'D G', 'V/V V'],
    ['C', 'B7 Em E7 Am', 'V7/iii iii V7/vi vi'],
    ['C', 'C7 F', 'V7/IV IV'],
    ['C', 'C#dim7 Dm F#dim7 G', 'vii°7/ii ii vii°7/V V'],
    ['C', 'E7 A7 D7 G7 C', 'V7/vi V7/ii V7/V V7 I'],
    ['A', 'C#7/E# F#m', 'V⁶₅/vi vi'],
    ['Am', 'A7 Dm B7 E7 Am', 'V7/iv iv V7/V V7 i'],
    ['Am', 'C7 F D7 G', 'V7/VI VI V7/VII VII'],
    // A minor chord on a step whose own triad is diminished can be led to (common practice).
    ['Dm', 'B7b9 Em', 'V7♭9/ii ii'],
    ['C', 'F#7 Bm', 'V7/vii vii'],
  ])('in %s %s are %s', (inKey, symbols, shown) => {
    expect(numerals(inKey, symbols)).toBe(shown);
  });

  it.each([
    ['C', 'D7 C', 'II7 I'],
    ['C', 'G7 C', 'V7 I'],
    ['Am', 'G7 C', 'VII7 III'],
    ['C', 'C F', 'I IV'],
    ['C', 'C7 F7', 'I7 IV7'],
    ['Dm', 'B7 Em7b5', '♯VI7 iiø7'],
  ])('are none without a resolution: in %s %s are %s', (inKey, symbols, shown) => {
    expect(numerals(inKey, symbols)).toBe(shown);
  });
});

describe('inversions', () => {
  // Figured bass of triads and sevenths: common practice.
  it.each([
    ['C/E C/G', 'I⁶ I⁶₄', 'I6 I6/4'],
    ['G7/B G7/D G7/F', 'V⁶₅ V⁴₃ V⁴₂', 'V6/5 V4/3 V4/2'],
    ['Cmaj7/E Am/G G/F', 'I⁶₅ vi⁴₂ V⁴₂', 'I6/5 vi4/2 V4/2'],
    ['Bm7b5/D Bdim/D', 'viiø⁶₅ vii°⁶', 'viiø6/5 vii°6'],
    ['C/D F/G', 'I/2 IV/2', 'I/2 IV/2'],
    ['C9/E', 'I9/3', 'I9/3'],
  ])('%s are %s', (symbols, signs, ascii) => {
    expect(numerals('C', symbols)).toBe(signs);
    expect(numerals('C', symbols, 'ascii')).toBe(ascii);
  });
});

describe('extensions', () => {
  it.each([
    ['G9 G13 Dm11', 'V9 V13 ii11'],
    ['G7b9 G7#5 G7b9#11', 'V7♭9 V+7 V7♭9♯11'],
    ['Gsus4 G7sus4 Csus2', 'Vsus4 V7sus4 Isus2'],
    ['Cadd9 C6 C69', 'Iadd9 Iadd6 Iadd6/9'],
    ['C5 A5', 'I5 vi5'],
  ])('%s are %s', (symbols, shown) => expect(numerals('C', symbols)).toBe(shown));

  it('come as parts for setting in type', () => {
    expect(romanNumeral(chord('A7b9/C#'), key('C'), chord('Dm'))).toEqual({
      accidental: 0,
      numeral: 'V',
      quality: '',
      extension: '7♭9',
      figures: [],
      bass: { number: 3, alter: 0 },
      applied: { accidental: 0, numeral: 'ii' },
    });
  });
});
