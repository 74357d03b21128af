/** Commands for what is heard. */
import { playerOf } from '../sound/players.ts';
import type { AppState, StudyStore } from '../store/index.ts';
import { command } from './make.ts';
import type { Command } from './types.ts';

type Play = (player: NonNullable<ReturnType<typeof playerOf>>) => void;

const hasChords = ({ study }: AppState): boolean => study.cells.length > 0;

function playing(name: string, label: string, keys: readonly string[], play: Play): Command {
  const perform = (store: StudyStore): void => {
    const player = playerOf(store);
    if (player) play(player);
  };
  return {
    ...command('Sound', name, label, keys, () => undefined),
    enabled: hasChords,
    perform,
  };
}

const SHARE_STEP = 0.05;

const slowing = (name: string, label: string, key: string, by: number): Command => ({
  ...command('Sound', name, label, [key], (intents, { workspace }) =>
    intents.setShare(workspace.sound.transport.share + by),
  ),
  repeats: true,
});

const HEARD: readonly Command[] = [
  playing('play', 'Play from the cursor, or stop', ['Space'], ({ toggle }) => toggle()),
  {
    ...playing('play-typing', 'The same while typing', ['Mod+Enter'], ({ toggle }) => toggle()),
    scope: 'anywhere',
  },
  playing('from-start', 'Start over, or at the beginning of the loop', ['Backspace'], (player) =>
    player.fromStart(),
  ),
  playing('hear-chord', 'Hear the chord', ['h'], ({ hearChord }) => hearChord()),
  playing('hear-tones', 'Hear its tones one by one', ['Shift+h'], ({ hearTones }) => hearTones()),
];

const CHANGED: readonly Command[] = [
  {
    ...command('Sound', 'loop-section', 'Loop the section, or all bars again', ['o'], (intents) =>
      intents.loopSection(),
    ),
    enabled: hasChords,
  },
  slowing('slower', 'Slower', '<', -SHARE_STEP),
  slowing('faster', 'Faster, up to the full speed', '>', SHARE_STEP),
  playing('tap', 'Tap the speed', ['m'], ({ tap }) => tap()),
  command(
    'Sound',
    'practice',
    'Practice screen: open or leave it',
    ['Shift+p'],
    (intents, { practising }) => intents.setPractising(!practising),
  ),
];

export const SOUND_COMMANDS: readonly Command[] = [...HEARD, ...CHANGED];
