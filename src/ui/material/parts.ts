/** One file of everything that the lenses are made of, fetched together. */
import '../styles/material.css';
import '../styles/material-neck.css';
import '../styles/material-rows.css';
import '../styles/sound.css';
import '../styles/sound-panel.css';
import '../styles/practice.css';
import { installAllCommands } from '../commands/index.ts';
import { keepOffline } from '../offline.ts';
import { browserPlayer } from '../sound/browser-player.ts';
import { installPlayers } from '../sound/players.ts';
import { installEngine } from '../store/engine.ts';

export { PrintTitle, TitleBlock } from '../controls/TitleBlock.tsx';
export { DrawnAhead } from '../neck/DrawnAhead.tsx';
export { FormMap } from '../neck/FormMap.tsx';
export { Legend } from '../neck/Legend.tsx';
export { SoundSection } from '../sound/SoundSection.tsx';
export { Transport } from '../sound/Transport.tsx';
export { installEngine } from '../store/engine.ts';
/** What writes the labels of tones and brackets as outlines. */
export { PENS } from '../type/pens.ts';
export { FingerBoard } from './FingerBoard.tsx';
export { LeaveRoute } from './LeaveRoute.tsx';
export { LensSection } from './LensSection.tsx';
export { Overlay } from './Overlay.tsx';
export { UnderNeck } from './UnderNeck.tsx';

/** Puts in what the first view did without. */
export function installParts(): void {
  installAllCommands();
  installPlayers(browserPlayer);
  // Last: whatever waited for the lenses is done now, and may want the others.
  installEngine();
  keepOffline();
}
