/** What the program calls things; whoever knows the trade's words needs none of it. */
const WORDS = [
  [
    'Form',
    'One of the five open-chord shapes C, A, G, E and D, moved along the neck. Its letter names the shape, not the chord: a D chord in the A form looks like an open A.',
  ],
  [
    'Place',
    'A string at a fret. “Five of six places”: five of the six tones of the form’s grip lie under the hand, so that it lies there mostly; of half of them or fewer it says only partly. Open strings count where the hand holds half of what the grip frets, or more.',
  ],
  [
    'Position',
    'Where your hand is, as a Roman numeral: four frets from there are under it, one for each finger. It stays while the chords change. A grip may begin higher in it: the numeral behind “at” is the grip’s lowest fret. Move the hand with − and +, by dragging it, or with a key.',
  ],
  ['Barred', 'The first finger lies flat across the strings where the open shape has the nut.'],
  [
    'Its nut V unused',
    '“Open C shape 5 frets up” has its nut at fret V. Where no tone of this chord lies there, it is told.',
  ],
  [
    '3 on string 4 as in C',
    'Where half of a shape or more is changed, what is left of it beside the root. Where that is nothing: “no fret higher as in C”, for in C and G the lowest root lies at the highest fret of the grip, and “no fret lower as in A”, for in A, E and D it lies at the lowest.',
  ],
  [
    'Changed, added, left out',
    'What the chord has elsewhere than the plain open shape, and on which string: “♭3 on string 2” is the third of the shape, lowered for minor. Added is a string that the shape does not play; left out are outer strings of the shape that stay silent.',
  ],
  [
    'Stretched',
    'The first finger reaches back or the little finger reaches out, as far as your span in the settings says. Stop when a stretch hurts.',
  ],
  [
    'Best',
    'The form of which the greatest share lies under the hand; a tone that takes a stretch counts half, save in a grip wider than four frets, which stretches the hand wherever it is. Where two are level: the one with fewer stretches, then the one within four frets, then nearer, then the one without a string to mute in it, then the form that players reach for first: E, A, D, C, G. What is only a part of another form’s grip counts as that part. It says nothing of how well the whole grip is held: for a line you need its places one after the other.',
  ],
  [
    'Second best',
    'The form that would come next, and what the hand has of it. The difference is the reason for the first.',
  ],
  [
    'Position … has all of it',
    'With the hand there, the whole grip lies under it without a stretch.',
  ],
  [
    'Overlaps, a part of',
    'Tones of the grip that another form’s grip holds at the very same places: there one form leads over into the other. Where a grip has all the places of another and more, that is a part of it.',
  ],
  ['Turned', 'A form whose third is moved: to minor, sus2, sus4 or a quality of yours.'],
  ['Also under the hand', 'A chord tone at hand that the form’s grip has to leave out.'],
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
