const HOW: readonly (readonly [sample: string, meaning: string])[] = [
  ['| Am7 | D7 |', 'bars; without any bar line, each chord is a bar'],
  ['| C G |', 'chords in a bar share it evenly'],
  ['| C / / G |', 'a slash holds the chord one more beat'],
  ['| % |', 'the bar before once more'],
  ['|: … :| x3', 'a repeat, here three times in all'],
  ['|1. … :|2. …', 'first and second ending'],
  ['3/4', 'a time signature, anywhere'],
  ['[Verse]', 'a section name on a line of its own'],
  ['N.C.', 'no chord'],
];

/** How chords are spelled: several symbols for one thing where players write several. */
export const CHORDS: readonly (readonly [samples: string, meaning: string])[] = [
  ['C F# Bb', 'a root from A to G with # or b: major'],
  ['Am A- Ami', 'minor'],
  ['G7 C9 G13', 'dominant seventh and up'],
  ['Cmaj7 CM7 CΔ', 'major seventh'],
  ['Am7 A-7', 'minor seventh'],
  ['Bm7b5 Bø', 'half-diminished'],
  ['Bdim7 B°7', 'diminished seventh'],
  ['C+ Caug', 'augmented'],
  ['Csus4 G7sus4', 'the 4 in place of the 3; sus2 likewise'],
  ['C6 C6/9 Cadd9', 'with a 6 or a 9 added'],
  ['E7#9 G7b9 G7alt', 'altered'],
  ['C/E', 'another bass, behind a slash'],
];

function Samples({ rows }: { readonly rows: typeof HOW }) {
  return (
    <dl className="how">
      {rows.map(([sample, meaning]) => (
        <div key={sample}>
          <dt>
            <code>{sample}</code>
          </dt>
          <dd>{meaning}</dd>
        </div>
      ))}
    </dl>
  );
}

/** How to write a chart and its chords, by samples. */
export function ChartGuide() {
  return (
    <>
      <Samples rows={HOW} />
      <Samples rows={CHORDS} />
      <p>Esc leaves the box; then the arrow keys move the cursor.</p>
    </>
  );
}
