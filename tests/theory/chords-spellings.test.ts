import { describe, expect, it } from 'vitest';
import { meaning } from './short.ts';

/** Every line of a table is `degrees: symbol  symbol  …`, symbols two spaces apart. */
const rows = (table: string): readonly (readonly [string, string])[] =>
  table
    .trim()
    .split('\n')
    .flatMap((line) => {
      const [degrees = '', symbols = ''] = line.split(/: +/, 2);
      return symbols.split(/ {2,}/).map((symbol) => [symbol.trim(), degrees.trim()] as const);
    });

/** Common practice, unless a line of the group says otherwise. */
const TABLES: Readonly<Record<string, string>> = {
  'major and minor triads': `
    R 3 5:  C  CM  Cma  Cmaj  CMaj  CMAJ  CMa  CMA  Cmajor  CMajor  C major  Bb  B♭  F#  F♯  Ebb  F##  G𝄪  D𝄫  Gx  (C)  [G]  {A}  E*  D,  A;  F.  Bb...  \u200bC  Ｃ
    R b3 5: Cm  Cmin  CMin  CMIN  Cmi  CMi  CMI  Cminor  CMinor  C minor  C-  C–  C—  C−  C‑  Cᵐ  C#m  Ebm  F♯m  B♭−  Am*  [Em]  C(b3)`,
  'roots in words': `
    R 3 5:      Bflat  B flat  B-flat  Fsharp  F-sharp  F sharp major  A♮  Bflat major
    R 3 5 b7:   Bflat7  B flat 7  E-flat7  F♮7
    R b3 5:     F sharp minor  Bflat minor
    R b3 5 b7:  C minor seventh  B flat m7
    R 3 5 7:    C major-seventh  C major seventh
    R 3 5 b7 9: C dominant ninth
    R 4 5:      C suspended fourth
    R b3 b5 b7: C half-diminished seventh
    R 5:        Cno third`,
  'power chords and omissions': `
    R 5:       C5  F#5  Bb5  Cb5  G⁵  C(5)  Cno3  C(no3)  Cno3rd  C(no 3rd)  C(no3d)  Comit3  C(omit3)  C(omit 3rd)  C no 3  Cmno3  C5no3
    R 3:       Cno5  C(no5)  Comit5  C(omit 5)
    R 5 9:     C5add9  C5(add9)  C5/9  Cadd9no3  C2(no3)  C2no3  Cadd9(no3)  Cadd2(no3)
    R 5 b7:    C7no3  C7(no3)  C7(omit3)  C5/7  C5(7)  C7omit3
    R 3 b7:    C7no5  C7(no5)  C7omit5  C7(omit 5)
    R b3 b7:   Cm7no5  C-7(no5)  Cmi7(omit5)
    R 3 7:     Cmaj7no5  CMA7(no5)  CΔ(no5)
    R:         C(no3)(no5)  Cno3no5  Cno3,5  C5no5`,
  'added tones': `
    R 3 5 9:      Cadd9  C(add9)  C add9  Cadd 9  CAdd9  CADD9  C(add 9)  Cadd2  C(add2)  C2  C(2)  C(9)  C/9  CM(9)  Cmaj(9)  Cmaj2  Cma2  CM2  CMadd9  Cmajadd9  CMaj(add9)  C+2  Cmaj9(no7)
    R b3 5 9:     Cmadd9  Cm(add9)  C-add9  Cmin(add9)  Cmadd2  Cm2  Cm(9)  Cm/9  Cm(add2)  Cm+9  Cmi(add9)  C-(add9)
    R 3 5 11:     Cadd4  C(add4)  Cadd11  C(add11)  C(11)  Cmaj4
    R b3 5 11:    Cmadd4  Cm(add4)  Cmadd11  Cm(add11)  C-add11  Cm(11)  Cm4
    R 3 5 #11:    Cadd#11  C(add#11)  Cadd#4  C(#11)  Cadd+11  C(add ♯11)  C(#4)
    R 3 5 13:     Cadd13  C(add13)
    R 3 5 b9:     Caddb9  C(addb9)  C(b9)  Cadd♭9  C(add-9)
    R 3 5 #9:     Cadd#9  C(#9)  C(+9)
    R 3 5 9 11:   Cadd9add11  Cadd9,11  Cadd9/11  C(add9,11)  Cadd2add4  Cadd2/4  C(add9)(add11)  Cadd9 11
    R 3 5 9 #11:  Cadd9#11  C(add9,#11)  C(add9)(#11)
    R 3 5 b6:     Caddb6  C(addb6)  C(b6)
    R b3 5 b6:    Cmb6  C-b6  Cm(b6)  Cmaddb6
    R 3 5 b7:     Cadd7  C(7)  C/7  C(b7)  Caddb7
    R 3 5 7:      C(maj7)  Caddmaj7  C(M7)  C(+7)  CaddM7  C(#7)`,
  sixths: `
    R 3 5 6:        C6  CM6  Cmaj6  CMA6  Cma6  Cadd6  C(6)  C(add6)  C/6  C⁶  C₆  CΔ6
    R b3 5 6:       Cm6  C-6  Cmin6  Cmi6  CMI6  Cm(6)  Cm(add6)  Cmadd6  C–6
    R 3 5 6 9:      C6/9  C69  C6(9)  C6add9  C6(add9)  C(6/9)  C6,9  CM69  Cmaj6/9  Cma6/9  CMA6(9)  C6\\9  C⁶/₉  C⁶⁄₉  C(69)  C/6/9  Cadd6add9
    R b3 5 6 9:     Cm6/9  Cm69  C-69  C-6/9  Cmi6/9  Cm6(9)  Cm6add9  Cmin69
    R 3 5 6 #11:    C6#11  C6(#11)  C6/#11  C6add#11
    R 3 5 6 9 #11:  C6/9#11  C69#11  C6911#  C6/9(#11)  C69(#11)  C6/9/#11  C6/9/11+
    R 3 5 7 9 13:   C6/9maj7  C69(maj7)
    R 3 6:          C6no5  C6(no5)
    R 4 5 6:        C6sus4  C6sus  C6(sus4)
    R b3 5 7 13:    Cm6(maj7)  Cm6/maj7`,
  dominants: `
    R 3 5 b7:         C7  Cdom7  Cdom  C dom 7  C⁷  C₇  C7th  C dominant 7  Cdominant7  C(7)  C７
    R 3 5 b7 9:       C9  C7/9  C7(9)  C79  C7add9  C7(add9)  C7,9  Cdom9  C9th  C⁹
    R 3 5 b7 9 11:    C11  C9/11  C7911  C7/9/11  C9add11  C7(9,11)
    R 3 5 b7 11:      C7/11  C711  C7add11  C7(11)  C7add4  C7(add4)
    R 3 5 b7 9 11 13: C13  Cdom13  C¹³
    R 3 5 b7 13:      C7/13  C7(13)  C713  C7add13  C7/6  C7add6  C7(add13)  C67  C7(6)  C6/7
    R 3 5 b7 9 13:    C9/13  C7913  C7/9/13  C9(13)  C7(9,13)  C7(9/13)  C9add13  C9add6  C13(no11)  C13no11`,
  'altered dominants': `
    R 3 5 b7 b9:          C7b9  C7♭9  C7(b9)  C7-9  C7(-9)  C7/b9  C7b9th  C79b  C7/9-  C7(9-)  C7/9b  C7[b9]  C7{b9}  C7,b9  C7 b9  C7 (b9)  C7addb9  C7flat9  C7 flat 9  C9b  C9-  C7-b9  C7/-9  C7⁽♭⁹⁾
    R 3 5 b7 #9:          C7#9  C7♯9  C7(#9)  C7+9  C7(+9)  C7/#9  C79#  C7/9+  C7(9+)  C7/9#  C7sharp9  C7 (#9)  C7/+9
    R 3 b5 b7:            C7b5  C7♭5  C7(b5)  C7-5  C7(-5)  C7/5-  C7(5-)  C75b  C7/5b  C7/b5  C7dim5
    R 3 #5 b7:            C7#5  C7♯5  C7(#5)  C7+5  C7(+5)  C7+  C+7  Caug7  C7aug  C7/5+  C75#  C7/#5  C7aug5  C+(7)  C augmented 7  C7(+)
    R 3 #5 b7 9:          C9#5  C9+5  C9+  C+9  Caug9  C9(#5)  C+79  C7/9/5+  C+7(9)
    R 3 b5 b7 9:          C9b5  C9-5  C9(b5)  C9♭5  C7/9/5-
    R 3 5 b7 b13:         C7b13  C7♭13  C7(b13)  C7-13  C713b  C7/b13  C7/13-  C7(13-)  C7/13b  C7addb13
    R 3 5 b6 b7:          C7b6  C7(b6)
    R 3 5 b7 9 b13:       C9b13  C9(b13)  C7913b  C9-13  C7/9/b13
    R 3 5 b7 #11:         C7#11  C7♯11  C7(#11)  C7+11  C7(+11)  C711#  C7/#11  C7/11+  C7(11+)  C7#4  C7(#4)  C7/4+
    R 3 5 b7 9 #11:       C9#11  C9(#11)  C9+11  C9(+11)  C7911#  C9#4  C9+4  C7/9/11+  C7(9,#11)  C7(9)(#11)  C9♯11  C7/9/#11
    R 3 5 b7 9 #11 13:    C13#11  C13(#11)  C13+11  C13♯11  C13+4  C13(+11)
    R 3 5 b7 #11 13:      C7(#11,13)  C7(#11/13)  C7#11/13  C711#13  C7 #11 13  C7#11add13
    R 3 5 b7 b9 11 13:    C13b9  C13(b9)  C13-9  C13♭9
    R 3 5 b7 b9 11:       C11b9
    R 3 5 b7 #9 11 13:    C13#9  C13(#9)  C13+9  C13♯9
    R 3 b5 b7 9 11 13:    C13b5  C13(b5)  C13-5
    R 3 #5 b7 9 11 13:    C13#5  C13(#5)  C+13
    R 3 5 b7 b9 13:       C7b9/13  C7(b9,13)  C7(b9 13)  C7b913  C79b13  C7b9(13)  C7b9add13  C7(b9/13)  C7/b9/13  C7b9(add13)  C7/9-/13  C7♭9♮13  C13b9no11
    R 3 5 b7 #9 13:       C7(#9,13)  C79#13  C7#913  C7#9(13)
    R 3 5 b7 b9 b13:      C7b9b13  C7(b9,b13)  C7(b9b13)  C7b9/b13  C79b13b  C7(b9)(b13)  C7/9-/13-  C7 b9 b13  C7(b13,b9)  C7♭9♭13  C7b13b9  C7-9-13  C7/9-13-  C7b9 b13  C7(b9/b13)
    R 3 5 b7 #9 b13:      C7#9b13  C7(#9,b13)  C79#13b  C7(b13#9)  C7+9-13
    R 3 5 b7 b9 #11:      C7b9#11  C7(b9,#11)  C7(b9)(#11)  C79b11#  C7♭9♯11  C7#11b9  C7-9+11
    R 3 5 b7 #9 #11:      C7#9#11  C7(#9,#11)  C79#11#  C7♯9♯11
    R 3 5 b7 b9 #9:       C7b9#9  C7(b9,#9)  C7#9b9
    R 3 #5 b7 b9:         C7#5b9  C7b9#5  C7(#5,b9)  C7(b9,#5)  C7+5-9  C+7b9  C+7(b9)  Caug7b9  C+79b  C7aug-9  C7#5(b9)  C7(#5b9)  C7#5-9  C7-9+5  C7/5+/9-  C7/5+9-
    R 3 #5 b7 #9:         C7#5#9  C7#9#5  C7(#5,#9)  C7(#9#5)  C+7#9  C+7(#9)  C7+5+9  C+79#  C7(♯9♯5)  Calt  C7alt  C7(alt)  C7 alt  C7altered  C7ALT  C alt  Calt7  C7alt.
    R 3 b5 b7 b9:         C7b5b9  C7b9b5  C7(b5,b9)  C7-5-9  C7-9-5  C7(b5b9)  C7(♭9♭5)
    R 3 b5 b7 #9:         C7b5#9  C7#9b5  C7(b5,#9)  C7-5+9  C7(#9,b5)
    R 3 b5 #5 b7:         C7b5#5  C7(b5,#5)
    R 3 b5 b7 9 13:       C9b5(13)  C7b5(9,13)
    R 3 #5 b7 #9 #11:     C7#5#9#11  C7#11#9#5
    R 3 #5 b7 9 #11:      C9#5#11  C9#11#5
    R 3 b5 #5 b7 b9 #9:   C7(b5,#5,b9,#9)  C7b5#5b9#9
    R 3 #5 b7 b9 #9:      C7alt(b9,#9)
    R 3 b5 b7 b13:        C7b5b13  C7(b5,b13)`,
  'major sevenths': `
    R 3 5 7:              Cmaj7  CMaj7  CMAJ7  Cma7  CMa7  CMA7  CM7  CΔ  CΔ7  C△  C△7  C∆  C∆7  C^  C^7  Cj7  Cj  CJ7  C7M  C7maj  C7Maj  Cmajor7  C major 7  Cmaj.7  Cmaj-7  Cmaj 7  C maj7  Cmaj7th  CM⁷  Cᴹ⁷  C▵7  Cmj7  Cmaj(7)  C7Δ  C7j
    R 3 5 7 9:            Cmaj9  CM9  CMA9  Cma9  CΔ9  C^9  Cj9  Cj79  Cmaj7/9  Cmaj7(9)  C7M/9  C7M(9)  C7M9  CM7/9  CM7(9)  C9M  Cmaj7add9  Cmaj-9  Cmaj7·9  Cmaj79  CMaj9  C9maj7
    R 3 5 7 9 11 13:      Cmaj13  CM13  CΔ13  C^13  Cma13  CMA13
    R 3 5 7 9 11:         Cmaj11  CM11  CΔ11
    R 3 5 7 9 13:         Cj7913  Cmaj9(13)  Cmaj7(9,13)  Cmaj9add13  Cmaj9/13  C7M(9/13)  Cmaj9add6
    R 3 5 7 13:           Cmaj7(13)  Cmaj7/13  Cmaj7add13  Cmaj7/6  Cmaj7(6)  C7M/6  C7M(13)  Cmaj7add6  C6maj7  C6(maj7)
    R 3 5 7 #11:          Cmaj7#11  Cmaj7(#11)  CM7#11  CΔ7#11  CΔ#11  CΔ(#11)  C^7#11  Cj711#  Cmaj7+11  C7M(#11)  C7M/11+  C7M(11+)  Cma7(#11)  Cmaj7♯11  CMA7+11  Cmaj7#4  CΔ#4  C7M/#11  CΔ7(♯11)
    R 3 5 7 9 #11:        Cmaj9#11  Cmaj9(#11)  CM9#11  CΔ9#11  C^9#11  Cj7911#  Cj79#11  Cmaj7(9,#11)  C7M(9/#11)  C7M/9/11+  Cmaj9+11
    R 3 5 7 #9:           Cmaj7#9  Cj79#  CM7(#9)
    R 3 5 7 b9:           Cmaj7b9  CM7b9
    R 3 5 7 #9 #11:       Cmaj7#9#11  Cj79#11#
    R 3 5 7 9 #11 13:     Cmaj13#11  CM13#11  Cma13(#11)  CΔ13(#11)
    R 3 b5 7:             Cmaj7b5  Cmaj7(b5)  CM7-5  CMA7-5  CΔb5  C7M(b5)  C7M/5-
    R 3 #5 7:             Cmaj7#5  Cmaj7(#5)  CM7+5  Cmaj7+  C+M7  C+maj7  C+j7  C+Δ7  C+Δ  C+^7  Caugmaj7  Caug(maj7)  C+(maj7)  CΔ#5  CΔ7#5  C^7#5  C^#5  C7M(#5)  C7M/5+  C+7M  CaugM7  CMA7+5  CΔ+  Cmaj7aug
    R 3 #5 7 9:           Cmaj9#5  CM9#5  CΔ9#5  Cmaj9(#5)  C+maj9
    R 3 5 7 b13:          Cmaj7b13`,
  'minor sevenths': `
    R b3 5 b7:            Cm7  C-7  C–7  C−7  Cmin7  Cmi7  CMin7  CMI7  CMi7  CMIN7  Cminor7  C minor 7  Cmin.7  Cmin-7  Cm 7  Cm(7)  Cm/7  Cᵐ⁷  Cm₇  C7m  Cm(b7)
    R b3 5 b7 9:          Cm9  C-9  Cmin9  Cmi9  CMI9  Cm7/9  Cm7(9)  Cm79  C-79  Cm7add9  Cm7(add9)  Cm7,9  Cmin-9  Cm7+9
    R b3 5 b7 9 11:       Cm11  C-11  Cmin11  Cmi11  C-7911  Cm9/11  Cm7/9/11  Cm7(9,11)  Cm9(11)  Cm9add11
    R b3 5 b7 11:         Cm7/11  Cm7(11)  Cm7add11  Cm7add4  Cm7(add4)  Cm7(4)  C-7(11)  C-7/11  Cm7(add11)  Cm7/4  Cm711
    R b3 5 b7 9 11 13:    Cm13  C-13  Cmin13
    R b3 5 b7 9 13:       C-7913  Cm9(13)  Cm7(9,13)  Cm9/13
    R b3 5 b7 13:         Cm7(13)  Cm7/13  Cm7add13  Cm7/6  Cm7(6)  Cm6/7
    R b3 #5 b7:           Cm7#5  Cm7+5  Cm7(#5)  C-7#5  Cm7+  C-7+5
    R b3 5 b7 b9:         Cm7b9  Cm7(b9)  Cm7-9  C-79b
    R b3 5 b7 b13:        Cm7b13  Cm7(b13)
    R b3 5 b6 b7:         Cm7b6
    R b3 5 b7 #11:        Cm7#11  Cm7(#11)
    R b3 5 b7 9 #11:      Cm9#11  Cm9(#11)  C-7911#
    R b3 #5 b7 9:         Cm9#5
    R b3 #5:              Cm#5  Cm+  C-#5  Cm(#5)  Cm+5
    R b3 5 b9:            Cmaddb9  Cm(b9)  Cm(addb9)
    R b3 5 b7 b9 11:      Cm11b9  Cm11(b9)`,
  'minor with the major seventh': `
    R b3 5 7:       Cm(maj7)  CmMaj7  CmM7  Cmmaj7  Cm/maj7  Cm/M7  CmΔ  CmΔ7  C-Δ  C-Δ7  C-^7  C-^  Cminmaj7  CminMaj7  C-maj7  C-M7  C-j7  Cm(M7)  Cm7M  Cm(7M)  C-(maj7)  Cmin(maj7)  Cmi(ma7)  Cmi(maj7)  CMI(MA7)  Cmima7  Cm+7  Cm(+7)  Cm#7  Cm(#7)  Cm maj7  C minor major 7  C–Δ7  CmM  C-maj-7  Cm-maj7  Cm(addmaj7)  Cm(Δ7)
    R b3 5 7 9:     CmM9  Cm(maj9)  Cmmaj9  C-Δ9  C-^9  CmMaj9  C-j79  Cm(maj7)9  Cm7M/9  Cm7M(9)  Cm(maj7,9)  Cmi(maj9)  Cm(M9)  Cm9(maj7)  Cm9M
    R b3 5 7 9 #11: C-j7911#  Cm(maj9)#11
    R b3 5 7 11:    Cm(maj7)(11)  CmM7/11
    R b3 5 7 13:    Cm(maj7)13  CmM7(13)  CmM7add13
    R b3 #5 7:      CmM7#5`,
  'diminished and half-diminished': `
    R b3 b5:            Cdim  Co  C°  Cº  C˚  C0  CDim  CDIM  Cdiminished  C dim  Cmb5  Cm(b5)  C-b5  C-(b5)  Cm-5  Cmin(b5)  Cm5-  Cm5b  C⁰  CO
    R b3 b5 bb7:        Cdim7  Co7  C°7  Cº7  C˚7  C07  Cdim 7  Cdim-7  Cdiminished7  C7dim  C dim 7  C°⁷  CDim7  C⁰⁷
    R b3 b5 7:          Cdim(maj7)  Cdimmaj7  CdimM7  CoM7  C°M7  C°maj7  Co^7  CoΔ7  C°7M  C°Δ  Cdim(M7)  C°(maj7)  Cm(maj7)b5  CmM7b5  Co(maj7)
    R b3 b5 bb7 7:      Cdim7(maj7)  C°7(maj7)  Cdim7M7  Co7M7  C°7maj7
    R b3 b5 bb7 9:      Cdim9  C°9  Co9  Cdim7(9)  C°7/9  Cdim7add9  C°7(add9)
    R b3 b5 bb7 9 11:   Cdim11  C°11
    R b3 b5 bb7 b13:    Cdim7(b13)  C°7b13  C°7(b13)
    R b3 b5 bb7 11:     Cdim7(11)  C°7/11  Cdim7add11
    R b3 b5 b7:         Cø  Cø7  CØ  CØ7  C∅  C∅7  C⌀7  Ch  Ch7  Chdim  Chdim7  C half-diminished  C half-diminished 7  Chalfdim7  Chalf-dim  Cm7b5  Cm7(b5)  Cm7♭5  Cm7-5  Cm7(-5)  C-7b5  C-7(b5)  C-7♭5  C-7-5  Cmin7b5  Cmin7(b5)  Cmi7(b5)  Cmi7b5  CMI7(b5)  Cm7/5-  Cm7(5-)  Cm5-/7  Cm75b  Cm7/5b  Cm7/b5  Cm7 b5  Cm7 (b5)  Cmin7-5  Cm7dim5  Cø⁷  C−7♭5  Cmin7 flat 5  Cm7-b5
    R b3 b5 b7 9:       Cø9  Cm9b5  Cm9(b5)  Cm7b5(9)  Cm7b5/9  Cø7(9)  Ch9  C-9b5  Cm7b5add9  Cm7(b5,9)  Cm7/5-/9  Cm7(9)(b5)  Cm7/9/5-  Cø(9)  Cm7(b5)(9)  Cm79(b5)
    R b3 b5 b7 9 11:    Cø11  Cm11b5  Cm11(b5)  Ch11  C-11b5
    R b3 b5 b7 11:      Cm7b5(11)  Cm7b5/11  Cø7(11)  Cm7b5add11  Cø(11)  Cm7(b5,11)
    R b3 b5 b7 b9:      Cm7b5b9  Cm7b5(b9)  Cø7b9  Cøb9
    R b3 b5 b7 b13:     Cø7(b13)  Cm7b5b13  Cm7b5(b13)  Cøb13`,
  'augmented and flat-fifth triads': `
    R 3 #5:       C+  Caug  CAug  CAUG  Caugmented  C aug  C+5  C(+5)  C(#5)  C5+  C5#  CM#5  Cmaj#5  Cmaj(#5)  Cmaj+5  C+#5  Caug5  C＋  C(♯5)  C/5+
    R 3 b5:       C(b5)  C(♭5)  C-5  C(-5)  CMb5  Cmaj(b5)  Cmajb5  C5-  C/5-  C5b
    R 3 #5 9:     C+add9  C+(add9)  Caug(add9)  CM#5add9
    R 3 #5 #9:    C+add#9  C+(#9)`,
  suspended: `
    R 4 5:            Csus  Csus4  CSus  CSUS4  CSus4  Csus 4  C sus  C sus4  C(sus4)  C(sus)  Csus(4)  C4  C(4)  Csuspended  Csuspended4  Csusp4  Cmsus4  Cmsus  CMsus4  Cmajsus4  C4sus  Csus4th  Csus⁴
    R 2 5:            Csus2  C(sus2)  Csus 2  CSUS2  C2sus  Cmsus2  Csus(2)
    R 2 4 5:          Csus24  Csus2sus4  Csus4sus2  Csus2/4  Csus42  Csus4/2  Csus2,4  C(sus2/4)  C(sus2sus4)  Csus(2,4)  Csus2 4
    R #4 5:           Csus#4  Csus(#4)  Csus♯4
    R b2 5:           Csusb2
    R 4 5 b7:         C7sus4  C7sus  C7(sus4)  C7(sus)  Csus7  Csus47  C7/4  C4/7  C7(4)  C4(7)  C7SUS4  C7 sus4  C7 sus  C7/sus4  Csus4/7  Csus4(7)  C7Sus4  Cm7sus4  Cm7sus  C-7sus4  C7sus(4)  Cdom7sus4  C7-sus4  C⁷sus⁴  C7susp4  Csus(7)
    R 2 5 b7:         C7sus2  C7(sus2)  Cm7sus2  C-7sus2  Csus2/7
    R 2 4 5 b7:       C7sus24  C7sus2sus4
    R 4 5 b7 9:       C9sus4  C9sus  C9(sus4)  C9(sus)  Csus9  C7sus4(9)  C7sus4/9  C7sus9  C7(sus4/9)  C7/4/9  C4/7/9  C4(7/9)  C7(4/9)  C9/4  C9(4)  C7sus4add9  Csus79  C11sus  C11sus4  Cm9sus4  C7/9sus4  C7(9)sus4  C7sus(9)
    R 4 5 b7 9 13:    C13sus4  C13sus  C13(sus4)  Csus13  Csus7913  C9sus4(13)  C7sus4(9,13)  C7(4/9/13)  C9sus13  C13sus(4)
    R 4 5 b7 13:      C7sus4(13)  C7sus4/13  C7sus(13)  C7sus13  Csus713  C7(sus4,13)
    R 4 5 b7 b9:      C7sus4b9  C7sus4(b9)  C7susb9  C7sus(b9)  C7b9sus4  C7b9sus  C7(b9)sus4  C7(b9)sus  C7(b9sus)  C7(b9sus4)  C7(sus4,b9)  Csusb9  Csus4b9  Csus(b9)  C(b9)sus  C9sus4b9  Csus79b  C7sus4/9-  C7sus4-9  C7sus-9  C7sus♭9  Cphryg  Csus7b9
    R 4 5 b7 b13:     C7susb13  C7b13sus  C7sus4(b13)
    R 4 5 b7 b9 b13:  C7sus4b9b13  C7b9b13sus4  Csus79b13b  C7sus4(b9,b13)
    R 4 5 b7 b9 13:   C13sus4b9  C13susb9  C13sus(b9)  C13sus4(b9)  C13b9sus4  Csus79b13  C7sus4b9/13
    R 4 #5 b7:        C7#5sus4  C+7sus4
    R 3 4 5 b7:       C7susadd3  C7sus4add3  C7sus(add3)  C7sus4(add3)
    R 3 4 5:          Csusadd3
    R 4 5 7:          Cmaj7sus4  Cmaj7sus  CM7sus4  CΔsus  CΔ7sus4  Csus4maj7  Csus(maj7)  Cmaj7(sus4)  C^7sus
    R 2 5 7:          Cmaj7sus2  CM7sus2  Csus2maj7  Csus2(maj7)
    R 4 5 7 9:        Cmaj9sus4  CM9sus4  CΔ9sus
    R 4 5 9:          Csus4add9  Csus4(9)  Csus4/9  Csus(add9)  C4(9)  C4/9  Csus4(add9)
    R 2 5 6:          Csus2(6)  C6sus2  Csus2add6
    R 2 5 #11:        Csus2add#11  Csus2(#11)
    R 2 5 11:         Csus2add4  Csus2(add11)`,
  basses: `
    R 3 5 /E:             C/E  C / E  C\\E  C∕E  C／E  C/e  (C/E)  C(/E)  C/(E)  C/E*  Cmaj/E
    R 3 5 /Bb:            C/Bb  C/bb  C/B♭  C/b♭
    R 3 5 /B:             C/B  C/b
    R 3 5 /F#:            D/F#  D/f#  D/F♯  C/F#
    R b3 5 /G:            Am/G  A-/G  Ami/G
    R b3 5 /G#:           Am/G#  A-/G♯
    R b3 5 b7 /G:         Am7/G  A-7/G  Dm7/G
    R 4 5 b7 /D:          G7sus4/D  C7sus/D
    R 3 5 b7 9 /E:        C7/9/E  C9/E  C7(9)/E
    R 3 5 6 9 /G:         C6/9/G  C69/G
    R 3 5 7 #11 /A:       Bbmaj7#11/A  Bbmaj7(#11)/A
    R 3 5 9 /E:           Cadd9/E  C(add9)/E  C2/E
    R 4 5 /E:             A4/E  Asus4/E
    R 2 5 /B:             Gsus2/B
    R 5 /F:               Bb5/F  Bb(no3)/F
    R b3 b5 b7 /A:        F#m7b5/A  F#ø/A  F#m7(b5)/A
    R b3 b5 bb7 /Eb:      Cdim7/Eb  C°7/E♭
    R b3 5 7 /B:          Cm(maj7)/B
    R 3 5 b7 b9 /G#:      E7b9/G#  E7(b9)/G#  E7/b9/G#
    R 3 5:                C/C  Bb/Bb  F♯/F#
    R 3 5 11 /F#:         D/F#(add11)
    R b3 b5 b7 /G:        Am7/G(b5)
    R 3 5 /Ebb:           Dbb/Ebb  C/Ebb  C/E𝄫`,
};

for (const [group, table] of Object.entries(TABLES)) {
  describe(`Spellings: ${group}`, () => {
    it.each(rows(table))('%s is %s', (symbol, degrees) => {
      expect(meaning(symbol)).toBe(degrees);
    });
  });
}
