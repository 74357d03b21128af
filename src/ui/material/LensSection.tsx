import { type ReactNode, useEffect, useRef } from 'react';
import type { Lens } from '#lesson';
import { commandNamed } from '../commands/index.ts';
import { useStudy, useStudyStore } from '../store/index.ts';
import { BendPanel } from './BendPanel.tsx';
import { ComparePanel } from './ComparePanel.tsx';
import { ConnectionPanel } from './ConnectionPanel.tsx';
import { FingeringField } from './FingeringField.tsx';
import { FingeringPanel } from './FingeringPanel.tsx';
import { RoutePanel } from './RoutePanel.tsx';
import { TurnPanel } from './TurnPanel.tsx';

type Open = Exclude<Lens, 'none'>;

interface LensPart {
  readonly lens: Open;
  readonly label: string;
  readonly about: string;
  readonly Panel: (props: { readonly open: boolean }) => ReactNode;
  /** There even while it is closed, so that what it lists can be found. */
  readonly always: boolean;
}

const PARTS: readonly LensPart[] = [
  {
    lens: 'turn',
    label: 'Turn',
    about: 'The form in another quality, and its colour tones',
    Panel: TurnPanel,
    always: false,
  },
  {
    lens: 'bends',
    label: 'Bends',
    about: 'Every bend under the hand that reaches a tone of this chord or the next',
    Panel: BendPanel,
    always: true,
  },
  {
    lens: 'connections',
    label: 'Into the next chord',
    about: 'What leads to the next chord without leaving the hand, best first',
    Panel: ConnectionPanel,
    always: true,
  },
  {
    lens: 'route',
    label: 'Route',
    about: 'One hand through the whole progression',
    Panel: RoutePanel,
    always: false,
  },
  {
    lens: 'fingering',
    label: 'Fingering',
    about: 'What any grip is called, and your own forms',
    Panel: FingeringPanel,
    always: true,
  },
  {
    lens: 'compare',
    label: 'Compare',
    about: 'Another form or another chord on the same neck',
    Panel: ComparePanel,
    always: false,
  },
];

function LensButton({ lens, label }: LensPart) {
  const isOn = useStudy(({ workspace }) => workspace.lens === lens);
  const store = useStudyStore();
  const { keys, perform } = commandNamed(`lens-${lens}`);
  return (
    <button
      type="button"
      aria-pressed={isOn}
      aria-keyshortcuts={keys.join(' ')}
      aria-controls={`lens-${lens}`}
      onClick={() => perform(store)}
    >
      {label}
    </button>
  );
}

/** Pixels that are kept free above the neck. */
const AIR = 8;

/** Pixels of a panel that are enough for a beginning: its heading, and the first of what it lists. */
const GLIMPSE = 80;

const topOf = (part: string): number =>
  document.querySelector(part)?.getBoundingClientRect().top ?? 0;

/**
 * How far to scroll so that a panel is seen, with the neck above it still in sight; the chord over the
 * neck too where that leaves a beginning of the panel.
 */
function wayDown(panel: HTMLElement): number {
  const { top, bottom } = panel.getBoundingClientRect();
  const missing = bottom - window.innerHeight;
  const head = topOf('.head-slot');
  const enough = top + GLIMPSE - window.innerHeight <= head;
  return Math.max(0, Math.min(missing, (enough ? head : topOf('.neck-pane')) - AIR));
}

/** Brings a panel that was just opened into sight, with as much of the neck as there is room for. */
function useInSight(open: boolean, kept: boolean) {
  const ref = useRef<HTMLElement>(null);
  const was = useRef(kept);
  useEffect(() => {
    const isNew = open && !was.current;
    was.current = open;
    const panel = ref.current;
    if (isNew && panel !== null) window.scrollBy(0, wayDown(panel));
  }, [open]);
  return ref;
}

interface SectionProps {
  /** The lens that was on when the page was opened: nobody asked to be taken there. */
  readonly kept: Lens;
}

function LensPanel({ lens, about, Panel, always, kept }: LensPart & SectionProps) {
  const open = useStudy(({ workspace }) => workspace.lens === lens);
  const ref = useInSight(open, lens === kept);
  return (
    <section
      ref={ref}
      id={`lens-${lens}`}
      className={open ? 'lens-panel' : 'lens-panel closed'}
      aria-label={about}
    >
      {(open || always) && <Panel open={open} />}
    </section>
  );
}

/** Ways to look at what is on the neck, one at a time. */
export function LensSection({ kept }: SectionProps) {
  return (
    <div className="lenses">
      <div className="lens-row">
        <fieldset className="choice">
          <legend className="label">Study</legend>
          <div className="choice-options">
            {PARTS.map((part) => (
              <LensButton key={part.lens} {...part} />
            ))}
          </div>
        </fieldset>
        <FingeringField />
      </div>
      {PARTS.map((part) => (
        <LensPanel key={part.lens} kept={kept} {...part} />
      ))}
    </div>
  );
}
