/** What the program calls things; whoever knows the trade's words needs none of it. */
const WORDS = [
  [
    'Form',
    'One of the five open-chord shapes C, A, G, E and D, moved along the neck. Its letter names the shape, not the chord: a D chord in the A form looks like an open A.',
  ],
  [
    'Place',
    'A string at a fret. “Five of six places”: five of the six tones of the form’s grip lie under the hand.',
  ],
  [
    'Position',
    'Where your hand is: the fret under the first finger, as a Roman numeral. The hand has four frets from there. Move it with − and +, by dragging it, or with a key; the chords are read for where it is.',
  ],
  [
    'A barre for its nut',
    'The first finger lies flat across the strings where the open shape has the nut.',
  ],
  [
    'Lowest fret',
    'The lowest fret that this chord’s grip holds, where that is not the fret at which the shape’s nut would lie.',
  ],
  [
    'With a stretch',
    'The first finger reaches back or the little finger reaches out, as far as your span in the settings says. Stop when a stretch hurts.',
  ],
  [
    'Best',
    'The form of which the greatest share lies under the hand; a tone that takes a stretch counts half. Where two are level: the one with fewer stretches, then within four frets, then nearer, then more usual.',
  ],
  [
    'Second best',
    'The form that would come next, and what the hand has of it. The difference is the reason for the first.',
  ],
  [
    'Most of it is moved',
    'The chord is far from a plain major: more than half of the grip’s tones lie elsewhere than in the open shape. The root shows which shape it comes from.',
  ],
  [
    'Shares places',
    'Tones of the grip that another form’s grip holds at the very same places: there one form leads over into the other.',
  ],
  ['Turned', 'A form whose third is moved: to minor, sus2, sus4 or a quality of yours.'],
  ['Beside the grip', 'A chord tone under the hand that the form’s grip has to leave out.'],
] as const;

/** The words of the reading, for whoever asks. */
export function Words() {
  return (
    <details className="words">
      <summary>What the words mean</summary>
      <dl>
        {WORDS.map(([word, meaning]) => (
          <div key={word}>
            <dt>{word}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
