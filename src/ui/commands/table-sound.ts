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

/** The first chord of the next bar that has one, before or after that of the cursor. */
function barAway({ study }: AppState, by: 1 | -1): number | undefined {
  const { cells, cursor } = study;
  const here = cells[cursor]?.bar ?? 1;
  const bars = cells.map(({ bar }) => bar).filter((bar) => (bar - here) * by > 0);
  const bar = by > 0 ? bars[0] : bars.at(-1);
  return cells.find((cell) => cell.bar === bar)?.index;
}

const byBar = (name: string, label: string, key: string, by: 1 | -1): Command => ({
  ...command('Cursor', name, label, [key], (intents, state) => {
    const cell = barAway(state, by);
    if (cell !== undefined) intents.moveCursorTo(cell);
  }),
  repeats: true,
  enabled: (state) => barAway(state, by) !== undefined,
});

const CHANGED: readonly Command[] = [
  {
    ...command(
      'Sound',
      'loop-section',
      'Loop the section or the last loop, or all bars again',
      ['o'],
      (intents) => intents.loopSection(),
    ),
    enabled: hasChords,
  },
  command('Sound', 'rounds', 'Round and round, or once', ['Shift+o'], (intents, { workspace }) =>
    intents.setOnce(workspace.sound.transport.once !== true),
  ),
  byBar('bar-back', 'One bar back', 'Shift+ArrowLeft', -1),
  byBar('bar-on', 'One bar on', 'Shift+ArrowRight', 1),
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
