import { makeLoop } from '#sound';
import { CommandButton } from '../controls/CommandButton.tsx';
import { type AppState, useStudy } from '../store/index.ts';
import { loopBefore, loopNow } from '../store/looped.ts';
import { PEDAL_DOES, percent } from './words.ts';

/** What the key for the loop does now. */
function loopWords(state: AppState): string {
  if (loopNow(state) !== undefined) return 'all bars';
  return `loop ${makeLoop(loopBefore(state)) || 'section'}`;
}

/** On the practice screen: a few big keys beside those of the transport. */
export function PracticeKeys() {
  const practising = useStudy((state) => state.practising);
  const share = useStudy(({ workspace }) => workspace.sound.transport.share);
  const looping = useStudy(loopWords);
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
      <CommandButton name="loop-section">{looping}</CommandButton>
      <CommandButton name="practice">leave</CommandButton>
    </div>
  );
}
