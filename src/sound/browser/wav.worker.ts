/** Renders a WAV file away from the page, and says how far it is. */
import { advanceRender, beginRender, type RenderQuery } from '../render.ts';
import { makeWav } from '../wav.ts';
import type { FromWav } from './wav-file.ts';

/** Seconds rendered between two words about it. */
const STEP_SECONDS = 2;

const tell = (message: FromWav, transfer: Transferable[] = []): void =>
  self.postMessage(message, { transfer });

self.onmessage = ({ data }: MessageEvent<RenderQuery>) => {
  const rendering = beginRender(data);
  let share = 0;
  while (share < 1) {
    share = advanceRender(rendering, STEP_SECONDS * data.rate);
    tell({ kind: 'share', share });
  }
  const bytes = makeWav([rendering.left, rendering.right], data.rate);
  tell({ kind: 'file', bytes }, [bytes.buffer]);
};
