import { useEffect } from 'react';
import { Masthead } from './controls/Masthead.tsx';
import { Notices } from './controls/Notices.tsx';
import { TitleBlock } from './controls/TitleBlock.tsx';
import { Toolbar } from './controls/Toolbar.tsx';
import { ProgressionField } from './field/ProgressionField.tsx';
import { Head, Next, ReadingText } from './head/Head.tsx';
import { Lane } from './lane/Lane.tsx';
import { Legend } from './neck/Legend.tsx';
import { Neck } from './neck/Neck.tsx';
import { KeySheet } from './settings/KeySheet.tsx';
import { Settings } from './settings/Settings.tsx';
import { useIntents, useStudy } from './store/index.ts';

/** The neck with what it shows taken from the study. */
function StudyNeck() {
  const reading = useStudy(({ study }) => study.reading);
  const symbol = useStudy(({ study }) => study.symbol);
  const places = useStudy(({ study }) => study.places);
  const { instrument, span, position, labels, spacing } = useStudy(({ workspace }) => workspace);
  const { setPosition, pickForm } = useIntents();
  return (
    <Neck
      reading={reading}
      symbol={symbol}
      places={places}
      instrument={instrument}
      span={span}
      position={position}
      labels={labels}
      spacing={spacing}
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

/** The whole sheet. */
export function App() {
  useTheme();
  return (
    <>
      <Masthead />
      <Notices />
      <main>
        <div className="progression">
          <ProgressionField />
          <Lane />
        </div>
        <Head />
        <Next />
        <ReadingText />
        <section className="neck-sheet" aria-label="Neck and hand">
          <StudyNeck />
          <Toolbar />
          <Legend />
        </section>
      </main>
      <TitleBlock />
      <Settings />
      <KeySheet />
    </>
  );
}
