import { CommandButton } from '../controls/CommandButton.tsx';
import { useStudy } from '../store/index.ts';
import { PEDAL_DOES, percent } from './words.ts';

/** On the practice screen: a few big keys beside those of the transport. */
export function PracticeKeys() {
  const practising = useStudy((state) => state.practising);
  const share = useStudy(({ workspace }) => workspace.sound.transport.share);
  const looped = useStudy(({ workspace }) => workspace.sound.transport.loop !== undefined);
  const pedal = useStudy(({ workspace }) => workspace.sound.pedal);
  if (!practising) return null;
  return (
    <div className="practice-keys">
      <p className="pedal-does">{PEDAL_DOES[pedal]}</p>
      <CommandButton name="from-start">start over</CommandButton>
      <CommandButton name="bar-back">bar back</CommandButton>
      <CommandButton name="slower">slower</CommandButton>
      <output className="share-now" aria-label="Share of the speed">
        {percent(share)}
      </output>
      <CommandButton name="faster">faster</CommandButton>
      <CommandButton name="loop-section">{looped ? 'all bars' : 'loop section'}</CommandButton>
      <CommandButton name="practice">leave</CommandButton>
    </div>
  );
}
