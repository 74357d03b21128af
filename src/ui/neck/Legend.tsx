import { memo, type ReactNode } from 'react';
import type { Reach, ToneKind } from '#neck';
import { useStudy } from '../store/index.ts';
import { ShareBar } from '../type/ShareBar.tsx';
import { type Outline, outlinePath } from './marks.ts';

interface Entry {
  readonly kind: ToneKind;
  readonly reach: Reach;
  readonly outline: Outline;
  readonly words: string;
}

const ENTRIES: readonly Entry[] = [
  { kind: 'shape', reach: 'hand', outline: 'disc', words: 'in the form’s grip' },
  { kind: 'shape', reach: 'hand', outline: 'square', words: 'the root' },
  { kind: 'chord', reach: 'hand', outline: 'disc', words: 'another chord tone' },
  { kind: 'colour', reach: 'hand', outline: 'lozenge', words: 'a colour tone' },
  { kind: 'chord', reach: 'open', outline: 'disc', words: 'open string' },
  { kind: 'chord', reach: 'stretch', outline: 'disc', words: 'a stretch away' },
  { kind: 'chord', reach: 'bend', outline: 'disc', words: 'reached by a bend' },
  { kind: 'chord', reach: 'out', outline: 'disc', words: 'out of reach' },
];

const RADIUS = 9;
const MIDDLE = { x: 0, y: 0 };
/** Share of the full size, as the tones on the neck have it. */
const SIZE: Readonly<Record<Reach, number>> = {
  hand: 1,
  open: 0.9,
  stretch: 0.86,
  bend: 0.74,
  out: 0.62,
};

function Mark({ children }: { readonly children: ReactNode }) {
  return (
    <svg className="legend-mark" viewBox="-13 -13 26 26" aria-hidden="true">
      {children}
    </svg>
  );
}

/** The bar of an open string, on the side of the nut. */
const NUT_BAR = `M${RADIUS * 0.9 + 3} ${-RADIUS * 0.6}v${RADIUS * 1.2}`;

function ToneSample({ kind, reach, outline }: Entry) {
  return (
    <Mark>
      <path
        className={`mark ${kind} ${reach}`}
        d={outlinePath(outline, RADIUS * SIZE[reach], MIDDLE) + (reach === 'open' ? NUT_BAR : '')}
      />
      {reach === 'stretch' && (
        <path className={`mark ${kind} far`} d={outlinePath(outline, RADIUS * 1.1, MIDDLE)} />
      )}
    </Mark>
  );
}

interface Sign {
  /** It is drawn with the tones of a grip. */
  readonly grip?: true;
  readonly sample: ReactNode;
  readonly words: string;
}

const SIGNS: readonly Sign[] = [
  {
    grip: true,
    sample: <path className="grip-line" d="M-10 6L0 -6L10 2" />,
    words: 'the grip, string by string',
  },
  {
    grip: true,
    sample: <path className="barre" d="M0 -7V7" strokeWidth="9" />,
    words: 'barre: one finger on these strings',
  },
  {
    sample: <path className="rest-mark" d="M-5 -5L5 5M5 -5L-5 5" />,
    words: 'a string that the grip leaves silent',
  },
  {
    sample: <path className="bracket-line no-grip" d="M-11 0H11" />,
    words: 'a form in which no hand can grip the chord',
  },
  {
    sample: <path className="dimension-line" d="M-10 0H10M-10 -5V5M10 -5V5" />,
    words: 'four frets under the hand, one finger to each',
  },
  {
    sample: <circle className="coming-ring" r="10" />,
    words: 'while it plays: the grip that comes next',
  },
  {
    sample: <path className="mark-sounding" d="M-11 0a11 11 0 1 1 22 0a11 11 0 1 1 -22 0Z" />,
    words: 'it sounds',
  },
  { sample: <path className="stretch-line" d="M-10 0H10" />, words: 'as far as it stretches' },
];

/** What the marks on the neck mean, and the words of the head. */
export const Legend = memo(function Legend() {
  // What is drawn then instead of the tones is told beside what is compared.
  const comparing = useStudy(
    ({ workspace, study }) => workspace.lens === 'compare' && study.compared !== undefined,
  );
  return (
    <section className="legend-part" aria-label="Legend">
      <p className="legend-words">
        <b>E form</b>: the open E chord’s shape, moved along the neck; likewise the others.{' '}
        <ShareBar share={0.67} /> the share of its places that lies under the hand. <b>String 1</b>{' '}
        is the thinnest.
      </p>
      <ul className="legend" aria-label="What the marks mean">
        {(comparing ? [] : ENTRIES).map((entry) => (
          <li key={entry.words}>
            <ToneSample {...entry} />
            {entry.words}
          </li>
        ))}
        {(comparing ? SIGNS.filter(({ grip }) => !grip) : SIGNS).map(({ sample, words }) => (
          <li key={words}>
            <Mark>{sample}</Mark>
            {words}
          </li>
        ))}
      </ul>
    </section>
  );
});
