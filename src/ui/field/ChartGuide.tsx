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

/** How to write a chart, by samples. */
export function ChartGuide() {
  return (
    <dl className="how">
      {HOW.map(([sample, meaning]) => (
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
