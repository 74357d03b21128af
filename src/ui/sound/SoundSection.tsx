import { useEffect, useRef, useState } from 'react';
import { Choice } from '../controls/Choice.tsx';
import { CommandButton } from '../controls/CommandButton.tsx';
import { useIntents, useStudy } from '../store/index.ts';
import { Levels } from './Levels.tsx';
import { SaveWav } from './SaveWav.tsx';
import { Speed } from './Speed.tsx';
import { FEEL_OPTIONS, STUDY_HINTS, STUDY_OPTIONS } from './words.ts';

function StudyChoice() {
  const study = useStudy(({ workspace }) => workspace.sound.study);
  const { setStudy } = useIntents();
  return (
    <div className="study-choice">
      <Choice
        label="Heard over the backing"
        options={STUDY_OPTIONS}
        value={study}
        onChange={setStudy}
      />
      <p className="hint">{STUDY_HINTS[study]}</p>
    </div>
  );
}

function FeelChoice() {
  const feel = useStudy(({ workspace }) => workspace.sound.feel);
  const { setFeel } = useIntents();
  return <Choice label="Feel" options={FEEL_OPTIONS} value={feel} onChange={setFeel} />;
}

/** What one opens one wants to see: it lies below the screen. */
function SoundPanel() {
  const panel = useRef<HTMLDivElement>(null);
  useEffect(() => panel.current?.scrollIntoView({ block: 'nearest' }), []);
  return (
    <div ref={panel} className="sound-panel">
      <Levels />
      <Speed />
    </div>
  );
}

/** What is heard, how loud and how fast; the transport stands beside the chart. */
export function SoundSection() {
  const [open, setOpen] = useState(false);
  return (
    <section className="sound-section" aria-label="Sound">
      <div className="lens-row">
        <StudyChoice />
        <FeelChoice />
        <fieldset className="choice">
          <legend className="label">Sound</legend>
          <div className="choice-options">
            <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
              Levels and speed
            </button>
            <CommandButton name="practice">Practice screen</CommandButton>
          </div>
        </fieldset>
        <SaveWav />
      </div>
      {open && <SoundPanel />}
    </section>
  );
}
