import { describe, expect, it } from 'vitest';
import { ALL_ROOTS, sounding } from './short.ts';

/**
 * Tokens as they stand in charts and in corpora of charts, on the root C. Every line of a table is
 * `semitones: token  token  …`, tokens two spaces apart; the semitones above the root, within the
 * octave, and the bass as `/semitone` were written down from the source or the practice named, not
 * from what the program reads.
 */
const TABLES: Readonly<Record<string, string>> = {
  // Open corpora of jazz charts in text: ^ is the major seventh, h half-diminished, - minor.
  'jazz charts with caret and h': `
    0 4 7:         C
    0 4 7 11:      C^  C^7
    0 2 4 7 11:    C^9
    0 2 4 5 7 9 11: C^13
    0 4 6 7 11:    C^7#11
    0 2 4 6 7 11:  C^9#11  C^79#11
    0 4 8 11:      C^7#5
    0 3 7:         C-
    0 3 7 10:      C-7
    0 2 3 7 10:    C-9
    0 2 3 5 7 10:  C-11
    0 3 7 9:       C-6
    0 2 3 7 9:     C-69
    0 3 7 11:      C-^7  C-^
    0 2 3 7 11:    C-^9
    0 2 3 6 7 11:  C-^79#11
    0 3 7 8:       C-b6
    0 3 8:         C-#5
    0 2 3 7:       C-add9
    0 3 6 10:      Ch  Ch7  C-7b5  C%7
    0 2 3 6 10:    Ch9
    0 3 6:         Co
    0 3 6 9:       Co7
    0 3 6 11:      Co^7
    0 4 8:         C+
    0 2 4 7:       C2  Cadd9
    0 7:           C5
    0 2 4 7 9:     C69
    0 4 7 10:      C7
    0 1 4 7 10:    C7b9
    0 3 4 7 10:    C7#9
    0 4 6 7 10:    C7#11
    0 4 6 10:      C7b5
    0 4 8 10:      C7#5
    0 4 7 8 10:    C7b13
    0 2 4 6 7 10:  C9#11
    0 2 4 6 10:    C9b5
    0 2 4 8 10:    C9#5
    0 2 4 6 7 9 10: C13#11
    0 1 4 5 7 9 10: C13b9
    0 3 4 5 7 9 10: C13#9
    0 1 4 6 10:    C7b9b5
    0 1 4 8 10:    C7b9#5
    0 1 3 4 7 10:  C7b9#9
    0 1 4 6 7 10:  C7b9#11
    0 1 4 7 8 10:  C7b9b13
    0 3 4 6 10:    C7#9b5
    0 3 4 8 10:    C7#9#5  C7alt
    0 3 4 6 7 10:  C7#9#11
    0 3 4 7 8 10:  C7#9b13
    0 5 7:         Csus
    0 5 7 10:      C7sus
    0 2 5 7 10:    C9sus
    0 2 5 7 9 10:  C13sus
    0 1 5 7 10:    C7b9sus
    0 5 7 8 10:    C7b13sus
    0 1 5 7 9 10:  C13b9sus
    0 4 5 7 10:    C7susadd3`,

  // An open database of transcribed jazz solos: j is the major seventh, accidentals behind numbers.
  'transcribed solos': `
    0 4 7 11:      Cj  Cj7
    0 2 4 7 11:    Cj79
    0 2 4 6 7 11:  Cj7911#
    0 2 4 7 9 11:  Cj7913
    0 3 4 7 11:    Cj79#
    0 3 4 6 7 11:  Cj79#11#
    0 3 7 11:      C-j7
    0 2 3 6 7 11:  C-j7911#
    0 2 3 7 9 11:  C-j7913
    0 2 3 7 10:    C-79
    0 1 3 7 10:    C-79b
    0 2 3 5 7 10:  C-7911
    0 2 3 7 9 10:  C-7913
    0 2 3 7 9:     C-69
    0 2 4 7 10:    C79
    0 1 4 7 10:    C79b
    0 3 4 7 10:    C79#
    0 2 4 5 7 10:  C7911
    0 2 4 6 7 10:  C7911#
    0 3 4 6 7 10:  C79#11#
    0 2 4 7 9 10:  C7913  C769
    0 2 4 7 8 10:  C7913b
    0 1 4 7 9 10:  C79b13
    0 3 4 7 9 10:  C79#13
    0 1 4 7 8 10:  C79b13b
    0 2 4 6 7 9:   C6911#
    0 5 7 10:      Csus7
    0 2 5 7 10:    Csus79
    0 2 5 7 9 10:  Csus7913
    0 4 8 10:      C+7
    0 2 4 8 10:    C+79
    0 1 4 8 10:    C+79b
    0 3 4 8 10:    C+79#
    0 2 4 6 8 10:  C+7911#
    0 4 8 11:      C+j7
    0 3 6 10:      Cm7b5
    0 4 7 /11:     C/B
    0 4 7 11 /11:  Cj7/B
    0 1 4 7 10 /4: C79b/E
    0 4 8 /3:      C+/Eb
    0 2 4 6 7 11 /11: Cj7911#/B`,

  // Every quality of an open corpus of 2,612 fake-book progressions.
  'fake books in text': `
    0 4 7:          CM
    0 3 7:          Cm  Cmi
    0 4 7 9:        C6  CM6
    0 4 6 9:        C6b5
    0 4 7 9 10:     C67  C7add6  C7add13
    0 4 6 7 9:      C6#11
    0 4 8 10:       C7+  C+7  C7#5
    0 4 7 8 10:     C7b6
    0 5 7 10:       C7sus4  C7sus
    0 4 7 11:       CM7  Cmaj7
    0 4 8 11:       CM7+  CM7#5  Cmaj7#5
    0 4 6 11:       CM7b5
    0 4 6:          CMb5
    0 3 8:          Cm+  Cm#5
    0 3 7 10:       Cm7
    0 3 8 10:       Cm7+  Cm7#5
    0 3 5 7 10:     Cm7add4  Cm7add11
    0 3 7 11:       CmM7  CmMaj7
    0 3 7 8 11:     CmM7b6
    0 3 5 7:        Cmadd4
    0 3 6:          Cmb5  Co  Cdim
    0 3 7 8:        Cmb6
    0 7:            Cno3
    0 3 6 9:        Co7  Cdim7
    0 3 6 9 11:     Co7M7
    0 3 6 11:       CoM7
    0 2 7:          Csus2  Cadd9no3
    0 2 5 7:        Csus24
    0 5 7:          Csus4  C4
    0 3 4 8:        C+add#9
    0 2 4 8:        C+add9  CM#5add9
    0 2 4 5 7 10:   C11
    0 2 4 5 7 9 10: C13
    0 2 4 5 6 9 10: C13b5
    0 1 4 6 7 9 10: C13b9#11
    0 2 5 7 9 10:   C13sus4
    0 3 4 8 10:     C7#5#9
    0 1 4 8 10:     C7#5b9
    0 1 4 6 8 10:   C7#5b9#11
    0 3 4 6 10:     C7b5#9
    0 1 4 6 10:     C7b5b9
    0 1 5 7 10:     C7b9sus4  C7sus4b9  C7susb9  Csusb9
    0 1 5 7 8 10:   C7sus4b9b13
    0 2 4 8 10:     C9+
    0 2 4 7 8 10:   C9b13
    0 2 5 7 10:     C9sus4
    0 2 4 5 7 9 11: CM13  Cmaj13
    0 2 4 6 7 9 11: CM13#11
    0 2 4 7 9:      CM69
    0 2 4 6 7 9:    CM69#11
    0 4 6 7 11:     CM7#11
    0 3 4 6 7 11:   CM7#9#11
    0 3 4 6 11:     CM7#9b5
    0 4 7 9 11:     CM7add13
    0 2 4 7 11:     CM9  Cmaj9
    0 2 4 6 7 11:   CM9#11  Cmaj9#11
    0 2 4 8 11:     CM9#5
    0 1 4 7:        Caddb9
    0 2 3 5 7 10:   Cm11
    0 2 3 5 6 10:   Cm11b5
    0 2 3 5 7 9 10: Cm13
    0 1 3 7 10:     Cm7b9
    0 2 3 6 10:     Cm9b5
    0 2 3 7 11:     CmM9
    0 2 3 7:        Cmadd9`,

  // C. Harte et al., ISMIR 2005, as in the corpora annotated with it; also `:min:maj7` of jazz charts.
  'labels degree by degree': `
    0 4 7 /5:        C:maj/4
    0 4 7 /1:        C:maj/#1  C:maj/b9
    0 4 7 /11:       C:maj/b1  C:maj/7
    0 4 7 /2:        C:maj/9  C:maj/2
    0 3 7 /10:       C:min/b7
    0 4 7 10 /7:     C:(3,5,b7)/5  C:7/5
    0 2 4 5 7 9 10:  C:9(11,13)  C:(3,5,b7,9,11,13)
    0 1 4 5 7 9 10:  C:7(b9,11,13)
    0 2 5 7 9 10:    C:sus4(b7,9,11,13)
    0 2 5 7 10:      C:sus4(b7,9)
    0 3 4 8 10:      C:aug(b7,#9)
    0 2 4 5 7 8 10:  C:9(11,b13)
    0 2 3 5 7 10:    C:min9(11)
    0 2 4 6 7 11:    C:maj9(#11)
    0 2 4 6 7 11 /4: C:maj9(#11)/3
    0 2 4 7 9:       C:maj6(9)
    0 2 4 7:         C:maj(9)
    0 3 6 8:         C:dim(b6)
    0 3 6 /8:        C:(b3,b5)/b6
    0 3 5 6 10:      C:hdim7(11)
    0 7 10:          C:7(*3)
    0 3 10:          C:min7(*5)
    0 5 10:          C:(4,b7)
    0 3 7 11:        C:min:maj7  C:minmaj7
    0 2 3 7 9:       C:min69
    0 3 7 8:         C:minb6
    0 5 7 10:        C:7sus
    0 3 4 6 7 11:    C:maj7#9#11
    0 4 6 7 11:      C:maj7#11;`,

  // Chord strings of tune collections in ABC notation; basses in small letters, + and - behind them.
  'tune collections': `
    0 4 7 /2:     C/d
    0 4 7 /4:     C/e
    0 4 7 /6:     C/f+  C/f#
    0 4 7 /10:    C/b-  C/bb
    0 3 7 /3:     Cm/e-
    0 4 7 10 /1:  C7/c+
    0 4 7 10 /11: C7/b
    0 1 4 7 10:   C7/b9
    0 4 8 10:     C+7  Caug7`,

  // MusicXML 4.0: kinds and degrees as programs write them into the text of a symbol.
  'score programs': `
    0 4 7:        CMaj  Cmaj
    0 3 7:        Cmin  Cmi
    0 4 7 10:     C7  Cdom7
    0 4 7 11:     CMaj7  Cmaj7  CMa7  CM7
    0 3 7 10:     Cmin7  Cmi7  CMin7
    0 3 6 9:      Cdim7  CDim7
    0 4 8 10:     Caug7  CAug7
    0 3 6 10:     Cmin7b5  Cmi7b5  Cmi7(b5)
    0 3 7 11:     CminMaj7  Cmin(Maj7)  Cmi(ma7)  CmMa7
    0 4 7 9:      C6  CMaj6
    0 2 3 7 11:   CminMaj9  Cm(maj9)
    0 1 4 7 10:   C7 add b9  C7addb9
    0 5 7 10:     Csus add 7
    0 2 5 7 10:   Csus add 7 add 9
    0 2 4 7 9:    C6 add 9
    0 1 4 8 10:   C7+ add b9
    0 2 4 7 /7:   C/G add 9  C/Gadd9  C/G(add9)
    0 4 5 7 /6:   C/F# add11`,

  // Common practice: pop and rock charts.
  'pop charts': `
    0 3 7 10:      Cmin7
    0 2 4 7:       Cadd9  C(add 9)  Cadd.9  C add9  C2
    0 2 5 7:       Csus4sus2  Csus2/4  Csus24  Csus4/2  C4add9
    0 5 7 10 /4:   C7sus4/E
    0 3 4 8 10:    C7#9#5  C7(#5#9)
    0 2 4 7 9:     C6add9  C6/9  C69  C6(add9)
    0 4 5 7:       Cadd11  Cadd4  C(add4)
    0 2 3 7:       Cmadd9  Cm(add9)  Cm add9  Cm2
    0 7:           C(no3)  C(omit3)  Cno3d  C no 3rd  C5
    0 3 5 7 10:    Cm7add11  Cm7(add11)  Cm7/11
    0 3 6 10:      Cm7-5  Cm7(-5)
    0 1 4 7 10:    C7-9  C7(b9)
    0 3 4 7 10:    C7+9  C7(♯9)
    0 1 4 6 7 10:  C7(b9,#11)  C7(b9 #11)  C7(b9/#11)  C7b9(#11)
    0 1 4 7 9 10:  C7b9/13  C7(13)(b9)  C7(13b9)  C7(b9)/13
    0 2 4 7 9 10:  C9(13)
    0 3 7 11:      Cmin/maj7  C-maj7  C-M7  CmΔ  CmΔ7
    0 5 7:         C4  Csus  Csus4
    0 5 7 10:      C7/4  C7sus
    0 7 /7:        C5/G
    0 5 7 /5:      Csus4/F
    0 2 4 5 7:     Csus4(add9,3)  Cadd9add11
    0 2 7:         Cadd9(omit3)  Cadd9/no3  C(add 9/no 3rd)  C5add9
    0 2:           Cadd9(omit3,5)
    0 4 6 9:       C6(b5)
    0 5 6:         Csus(b5)
    0 3 4 8 10 /10: C7#9#5/Bb`,

  // Common practice: Latin American songbooks, tensions apart by slashes, signs behind.
  'Latin American songbooks': `
    0 4 7 11:       C7M
    0 2 4 7 11:     C7M(9)  C7M/9
    0 2 4 6 7 11:   C7M(9/11+)  C7M/9/11+
    0 4 8 11:       C7M(5+)  C7M/5+
    0 4 7 9 11:     C7M(6)
    0 2 4 6 7 9:    C6(9/11+)
    0 2 3 6 10:     Cm7(b5/9)
    0 3 6 10:       Cm7(5-)  Cm7/5-  Cm5-/7
    0 2 3 7 11:     Cm7M(9)  Cm(7M/9)
    0 3 6 8 11:     Cº7M(b13)
    0 3 5 7 9:      Cm6(11)
    0 2 5 7 10:     C4/7(9)  C7/4/9  C7(9/4)  C7(4/9)
    0 5 8:          C4(5+)
    0 4 8 10:       C5+/7  C7/5+
    0 1 4 6 7 10:   C7(b9/11+)
    0 1 4 6 10:     C7(5-/9-)
    0 4 7 8 10:     C7(13-)
    0 3 4 7 8 10:   C7(#9/b13)`,

  // Common practice: Japanese charts, full-width signs, the bass after "on".
  'Japanese charts': `
    0 4 7 /4:        ConE  C on E  C(onE)  Ｃ／Ｅ
    0 4 7 /6:        ConF#  ConF♯
    0 3 7 10 /5:     Cm7onF  Cm7(onF)
    0 4 7 10 /10:    C7onBb
    0 1 4 7 8 10:    C7(♭9、♭13)  C7（♭9，♭13）
    0 2 4 7 11:      CM7(9)  C△7(9)  CM7・9
    0 2 4 7 9 11:    CM7(9,13)
    0 3 6 10:        Cm7(-5)  Cm7-5
    0 4 6 7 11:      CM7（♯11）`,

  // Common practice: printed sheet music, words and abbreviations with full stops.
  'sheet music': `
    0 4 7:       C Major  C maj.
    0 3 7:       C Minor  C min.
    0 4 7 11:    C Maj. 7  C maj.7
    0 3 7 10:    C Min. 7
    0 3 6 9:     C dim. 7  C diminished 7th
    0 4 8:       C aug.
    0 4 8 10:    C aug. 7
    0 3 7 9:     C minor sixth  Cmin.6
    0 5 7:       C sus.
    0 5 7 10:    C7 sus. 4
    0 3 6 10:    C half-dim7  C half dim
    0 4 7 /4:    C (E bass)  C(E Bass)  C/E bass
    0 3 7 /10:   Cm (Bb bass)`,

  // Published recommendations for handwritten symbols: capitals MA and MI, alterations in brackets.
  'capital letters': `
    0 4 7 11:      CMA7
    0 2 4 6 7 11:  CMA9(#11)
    0 2 4 6 7 9 11: CMA13(#11)
    0 5 7 11:      CMA7SUS4
    0 2 4 7 9:     CMA6/9
    0 3 7 10:      CMI7
    0 2 3 7 9:     CMI6/9
    0 2 3 7 11:    CMI(MA9)
    0 3 5 7 10:    CMI7(ADD11)
    0 2 3 5 6 10:  CMI11(b5)
    0 4 8 11:      C+(MA7)
    0 3 4 8 10:    C+7(#9)
    0 3 4 6 10:    C7(b5,#9)
    0 2 5 7 9 10:  C13SUS
    0 1 5 7 9 10:  C13SUS(b9)
    0 3 6 9:       CDIM7  CO7
    0 7 10:        C7(OMIT 3)`,

  // Unicode: superscripts, full-width forms, look-alikes; private signs of music fonts (SMuFL 1.4).
  'other characters': `
    0 4 7 10:      C⁷  C₇  Ｃ７  C７
    0 4 7 11:      C△⁷  C∆7  C▲7  Cᐃ7  Cᴹ⁷  Cᴹᵃʲ⁷  Cｍａｊ７  C\ue8737
    0 3 7 10:      Cᵐ⁷  Cₘ₇  C−7  C–7  C⁻⁷  C\ue8747
    0 3 6 10:      Cø⁷  C∅7  C⌀7  C⊘7  Cϕ7  C⦵7  C−7♭5  Cᵐ⁷♭⁵  C\ue871
    0 3 6 9:       Cº7  C˚7  C∘7  C⁰7  C°⁷  C◦7  Cᵈⁱᵐ⁷  C\ue8707
    0 4 8:         C⁺  C＋  C\ue872
    0 5 7:         Cˢᵘˢ⁴
    0 2 4 7:       Cᵃᵈᵈ⁹
    0 2 4 7 9:     C⁶⁄₉  C⁶ᐟ⁹
    0 3 4 8 10:    C⁷ᵃˡᵗ
    0 4 6 7 11:    C∆⁷♯¹¹
    0 1 4 6 7 10:  C7♭9♯11  C7\ue2609\ue26211  C7\ued609\ued6211
    0 3 4 7 10:    C⁷⁽♯⁹⁾  C7＃9
    0 4 7 9 10:    C7(♮13)
    0 4 7 /4:      C╱E  C∕E  C＼E`,

  // Common practice: marks for rhythm, doubt, footnotes, an optional chord.
  'marks behind and around': `
    0 4 7:     (C)  [C]  {C}  C*  C**  C!  C?  C~  C.  C…  C,  C;  C_  C†
    0 3 7 10:  (Cm7)  Cm7!  Cm7*  Cm7~  (Cm7)*  Cm7?
    0 4 7 /4:  C/E!  (C/E)  C/E*`,
};

const rows = (table: string): readonly (readonly [string, string])[] =>
  table
    .trim()
    .split('\n')
    .flatMap((line) => {
      const [semitones = '', tokens = ''] = line.trim().split(/: +(.*)/, 2);
      return tokens.split(/ {2,}/).map((token) => [token, semitones] as const);
    });

for (const [group, table] of Object.entries(TABLES)) {
  describe(`Tokens of ${group}`, () => {
    it.each(rows(table))('%s sounds %s', (token, semitones) => {
      expect(sounding(token)).toBe(semitones);
    });
  });
}

describe('The same tokens on other roots', () => {
  const onC = Object.values(TABLES)
    .flatMap(rows)
    .filter(([token, semitones]) => /^C(?![#b♯♭])/.test(token) && !semitones.includes('/'));

  it.each(ALL_ROOTS)('%s sound alike', (root) => {
    for (const [token, semitones] of onC) {
      expect([token, sounding(root + token.slice(1))]).toEqual([token, semitones]);
    }
  });
});
