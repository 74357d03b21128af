import { type RefObject, useEffect, useRef } from 'react';
import { Masthead } from './controls/Masthead.tsx';
import { Notices } from './controls/Notices.tsx';
import { Toolbar } from './controls/Toolbar.tsx';
import { ProgressionField } from './field/ProgressionField.tsx';
import { Head, Next, ReadingText } from './head/Head.tsx';
import { Lane } from './lane/Lane.tsx';
import { Lenses, useNeckLayers, useParts } from './material/loading.tsx';
import { centreHand } from './neck/in-view.ts';
import { Neck } from './neck/Neck.tsx';
import { KeySheet } from './settings/KeySheet.tsx';
import { Settings } from './settings/Settings.tsx';
import { useIntents, useStudy } from './store/index.ts';

/** The neck with what it shows taken from the study. */
function StudyNeck() {
  const reading = useStudy(({ study }) => study.reading);
  const symbol = useStudy(({ study }) => study.symbol);
  const turned = useStudy(({ study }) => study.turned?.symbol);
  const places = useStudy(({ study }) => study.places);
  const position = useStudy(({ study }) => study.position);
  const practising = useStudy((state) => state.practising);
  const held = useStudy((state) => state.held);
  const { instrument, span, labels, spacing, lens } = useStudy(({ workspace }) => workspace);
  // Nothing lies beside the reading yet: it is the reading that is seen.
  const alone = useStudy(({ study }) => study.compared === undefined);
  const { setPosition, pickForm } = useIntents();
  return (
    <Neck
      {...useNeckLayers()}
      lens={lens === 'compare' && alone ? 'none' : lens}
      reading={reading}
      symbol={symbol}
      turned={turned}
      places={places}
      held={held}
      instrument={instrument}
      span={span}
      position={position}
      labels={labels}
      spacing={spacing}
      tall={practising}
      onPosition={setPosition}
      onPick={pickForm}
    />
  );
}

function useTheme(): void {
  const theme = useStudy(({ workspace }) => workspace.theme);
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
}

/** The practice screen is the same sheet with other styles. */
function usePractice(): void {
  const practising = useStudy((state) => state.practising);
  useEffect(() => {
    const { documentElement: page } = document;
    if (page.hasAttribute('data-practice') === practising) return;
    page.toggleAttribute('data-practice', practising);
    // The type has another size now, and what is laid out by it measures itself when the window does.
    window.dispatchEvent(new Event('resize'));
  }, [practising]);
}

/**
 * On a narrow screen the neck stands in a pane of its own, which follows the hand: while the hand is
 * held it follows the finger, and the pane only when it is let go.
 */
function useHandInView(): RefObject<HTMLDivElement | null> {
  const pane = useRef<HTMLDivElement>(null);
  const grip = useRef<'free' | 'held' | 'moved'>('free');
  const position = useStudy(({ study }) => study.position);
  useEffect(() => {
    if (grip.current !== 'free') grip.current = 'moved';
    else if (pane.current !== null && position > 0) centreHand(pane.current);
  }, [position]);
  useEffect(() => {
    const element = pane.current;
    if (element === null) return undefined;
    const stop = new AbortController();
    const { signal } = stop;
    element.addEventListener('pointerdown', () => (grip.current = 'held'), { signal });
    for (const end of ['pointerup', 'pointercancel'] as const) {
      window.addEventListener(
        end,
        () => {
          if (grip.current === 'moved') centreHand(element);
          grip.current = 'free';
        },
        { signal },
      );
    }
    return () => stop.abort();
  }, []);
  useEffect(() => {
    const element = pane.current;
    if (element === null || element.firstElementChild === null) return undefined;
    const observer = new ResizeObserver(() => centreHand(element));
    observer.observe(element.firstElementChild);
    return () => observer.disconnect();
  }, []);
  return pane;
}

function NeckPane() {
  const pane = useHandInView();
  return (
    <div ref={pane} className="neck-pane">
      <StudyNeck />
    </div>
  );
}

/** The whole sheet. What one plays by stands in the first part, which fits on the screen. */
export function App() {
  useTheme();
  const lens = useStudy(({ workspace }) => workspace.lens);
  usePractice();
  const parts = useParts();
  return (
    <>
      <Masthead>{parts && <parts.Transport />}</Masthead>
      <Notices />
      {parts && <parts.PrintTitle />}
      <main>
        <div className="sheet" data-lens={lens}>
          <div className="progression">
            <ProgressionField />
            <Lane />
          </div>
          <div className="head-slot">
            <div className="head-row">
              <Head />
              <Next />
            </div>
          </div>
          <ReadingText />
          <NeckPane />
          <Toolbar />
        </div>
        {parts && <parts.SoundSection />}
        <Lenses />
        {parts && <parts.Legend />}
      </main>
      {parts && <parts.TitleBlock />}
      <Settings />
      <KeySheet />
    </>
  );
}
