import { describe, expect, it } from 'vitest';
import { estimateKey, makeKey } from '#theory';
import { chartOf } from './chart-short.ts';

const BLUES = 'I7 | IV7 | I7 | I7 | IV7 | IV7 | I7 | I7 | V7 | IV7 | I7 | V7';

const blues = (one: string, four: string, five: string): string =>
  BLUES.replaceAll('IV', four).replaceAll('I', one).replaceAll('V', five);

const estimated = (text: string): string => {
  const estimate = estimateKey(chartOf(text));
  return estimate === undefined ? 'none' : makeKey(estimate.best, 'ascii');
};

// Progressions written for this test; their keys are common practice.
describe('the key of a progression', () => {
  it.each([
    ['C F G C', 'C major'],
    ['C Am F G', 'C major'],
    ['C Am Dm G7 C', 'C major'],
    ['G D Em C', 'G major'],
    ['G C D', 'G major'],
    ['D G A', 'D major'],
    ['A D A E A', 'A major'],
    ['E A B E', 'E major'],
    ['C | G/B | Am | Am/G | F | C/E | Dm7 G7 | C', 'C major'],
    ['Asus4 A Dsus2 A E A', 'A major'],
  ])('%s: major by its three chords and neighbours, %s', (text, key) =>
    expect(estimated(text)).toBe(key),
  );

  it.each([
    ['Am F C G Am', 'A minor'],
    ['Bm G D A Bm', 'B minor'],
    ['Dm Bb F C Dm', 'D minor'],
    ['F Dm Bb C F', 'F major'],
    ['Am Dm E7 Am', 'A minor'],
    ['Am G F E', 'A minor'],
    ['Bm F#7 A E G D Em F#7', 'B minor'],
    ['Em B7 C D Em', 'E minor'],
    ['Cm Ab Eb Bb', 'C minor'],
    ['C G Am F C G F C', 'C major'],
    ['Am E7 Am E7 Am', 'A minor'],
    ['Bbm Gb Db Ab Bbm', 'Bb minor'],
  ])('%s: not its relative, %s', (text, key) => expect(estimated(text)).toBe(key));

  it.each([
    ['Dm G Dm G Dm', 'D minor'],
    ['Am D Am D Am', 'A minor'],
    ['Gm C Gm C Gm', 'G minor'],
    ['Em A Em A', 'E minor'],
  ])('%s: minor with a major IV, %s', (text, key) => expect(estimated(text)).toBe(key));

  it.each([
    ['C F Fm C', 'C major'],
    ['C Bb F C', 'C major'],
    ['D C G D', 'D major'],
    ['C E7 Am F Fm C G7 C', 'C major'],
    ['C A7 D7 G7 C', 'C major'],
    ['E7 A7 D7 G7 C', 'C major'],
  ])('%s: with borrowed and applied chords, %s', (text, key) => expect(estimated(text)).toBe(key));

  it.each([
    ['Dm7 G7 Cmaj7', 'C major'],
    ['Dm7 G7 Cmaj7 A7', 'C major'],
    ['Dm7 G7alt Cmaj7 A7b9', 'C major'],
    ['Dm7b5 G7#9 Cm6', 'C minor'],
    ['Gm7 C7b9b13 Fmaj7 D7#9', 'F major'],
    ['Em7 A7 Dmaj7 Bm7', 'D major'],
    ['Dm7b5 G7 Cm', 'C minor'],
    ['Em7b5 A7 Dm6', 'D minor'],
    ['F#m7b5 B7 Em', 'E minor'],
    ['Abmaj7 Dm7b5 G7b9 Cm', 'C minor'],
    ['Am7 D7 Gmaj7 Cmaj7 F#m7b5 B7 Em', 'E minor'],
    ['Cm7 F7 Bbmaj7 Ebmaj7 Am7b5 D7 Gm', 'G minor'],
    ['Fmaj7 Em7 A7 Dm7 Cm7 F7 Bbmaj7 Bbm7 Eb7 Am7 D7 Gm7 C7 Fmaj7', 'F major'],
    ['Ebmaj7 Cm7 Fm7 Bb7', 'Eb major'],
  ])('%s: by its cadences, %s', (text, key) => expect(estimated(text)).toBe(key));

  it('of a blues of dominant sevenths is that of I', () => {
    expect(estimated(blues('C', 'F', 'G'))).toBe('C major');
    expect(estimated(blues('E', 'A', 'B'))).toBe('E major');
    expect(estimated(blues('Bb', 'Eb', 'F'))).toBe('Bb major');
    expect(estimated('Am7 | Dm7 | Am7 | Am7 | Dm7 | Dm7 | Am7 | Am7 | E7 | Dm7 | Am7 | E7')).toBe(
      'A minor',
    );
  });

  it.each([
    ['F# B C# F#', 'F# major'],
    ['Gb Cb Db Gb', 'Gb major'],
    ['C# F# G# C#', 'C# major'],
    ['Db Gb Ab Db', 'Db major'],
    ['D#m G#m A#7 D#m', 'D# minor'],
    ['Ebm Abm Bb7 Ebm', 'Eb minor'],
    ['G#m E B F# G#m', 'G# minor'],
    ['Ab Db Eb Ab', 'Ab major'],
  ])('%s is spelled as typed: %s', (text, key) => expect(estimated(text)).toBe(key));

  it('is none without a readable chord', () => {
    expect(estimateKey(chartOf(''))).toBeUndefined();
    expect(estimateKey(chartOf('N.C. | Hm | N.C.'))).toBeUndefined();
  });

  it('comes with a different runner-up and how clearly it leads', () => {
    const clear = estimateKey(chartOf('C F G7 C'));
    const open = estimateKey(chartOf('Am F C G'));
    expect(clear?.runnerUp).not.toEqual(clear?.best);
    expect(clear?.confidence).toBeGreaterThan(0.8);
    expect(open?.confidence).toBeLessThan(0.5);
    expect(open && [open.best, open.runnerUp].map((key) => makeKey(key))).toEqual([
      'A minor',
      'C major',
    ]);
    expect(clear?.ranked).toHaveLength(24);
  });
});
