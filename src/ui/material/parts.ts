/** One file of everything that the lenses are made of, fetched together. */
import '../styles/material.css';
import '../styles/material-neck.css';
import '../styles/material-rows.css';

export { PrintTitle, TitleBlock } from '../controls/TitleBlock.tsx';
export { Legend } from '../neck/Legend.tsx';
export { installEngine } from '../store/engine.ts';
export { FingerBoard } from './FingerBoard.tsx';
export { LensSection } from './LensSection.tsx';
export { Overlay } from './Overlay.tsx';
export { RouteLadder } from './RouteLadder.tsx';
