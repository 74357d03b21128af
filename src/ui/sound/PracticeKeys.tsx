import { CommandButton } from '../controls/CommandButton.tsx';
import { useStudy } from '../store/index.ts';
import { percent } from './words.ts';

/** On the practice screen: a few big keys beside those of the transport. */
export function PracticeKeys() {
  const practising = useStudy((state) => state.practising);
  const share = useStudy(({ workspace }) => workspace.sound.transport.share);
  const looped = useStudy(({ workspace }) => workspace.sound.transport.loop !== undefined);
  if (!practising) return null;
  return (
    <div className="practice-keys">
      <CommandButton name="from-start">start over</CommandButton>
      <CommandButton name="slower">slower</CommandButton>
      <output className="share-now" aria-label="Share of the speed">
        {percent(share)}
      </output>
      <CommandButton name="faster">faster</CommandButton>
      <CommandButton name="loop-section">{looped ? 'all bars' : 'section'}</CommandButton>
      <CommandButton name="practice">leave</CommandButton>
    </div>
  );
}
