/** A WAV file of what is heard, made in a thread of its own. */
import { secondsPerTick } from '#line';
import { err, ok, type Result } from '#theory';
import type { RenderQuery } from '../render.ts';
import { tempoIn } from '../settings.ts';
import { DEFAULT_SETTINGS } from '../setup.ts';
import WavWorker from './wav.worker.ts?worker';

/** What the thread says. */
export type FromWav =
  | { readonly kind: 'share'; readonly share: number }
  | { readonly kind: 'file'; readonly bytes: Uint8Array<ArrayBuffer> };

export type WavError = {
  readonly code: 'too-long' | 'stopped' | 'failed';
  readonly message: string;
};

/** Longer files would not fit into the memory of small devices: 20 minutes are 230 MB. */
export const MOST_WAV_SECONDS = 1200;

/** About how long a file would be, seconds; the count-in and a rising tempo left out. */
export function wavSeconds({
  performance,
  settings = DEFAULT_SETTINGS,
  rounds = 1,
}: RenderQuery): number {
  return performance.length * secondsPerTick(tempoIn(settings, 0)) * rounds;
}

/** How the making of a file is followed and stopped. */
export interface WavWatch {
  readonly progress?: (share: number) => void;
  readonly signal?: AbortSignal;
}

/** The bytes of a WAV file. Parts that are not wanted are muted in the mix (`onlyParts`). */
export function wavFile(
  query: RenderQuery,
  { progress, signal }: WavWatch = {},
): Promise<Result<Uint8Array<ArrayBuffer>, WavError>> {
  const minutes = MOST_WAV_SECONDS / 60;
  if (wavSeconds(query) > MOST_WAV_SECONDS)
    return Promise.resolve(
      err({
        code: 'too-long',
        message: `A file holds at most ${minutes} minutes: loop fewer bars.`,
      }),
    );
  const worker = new WavWorker();
  return new Promise<Result<Uint8Array<ArrayBuffer>, WavError>>((resolve) => {
    signal?.addEventListener('abort', () => resolve(err({ code: 'stopped', message: 'Stopped.' })));
    worker.onerror = ({ message }) => resolve(err({ code: 'failed', message }));
    worker.onmessage = ({ data }: MessageEvent<FromWav>) => {
      if (data.kind === 'share') progress?.(data.share);
      else resolve(ok(data.bytes));
    };
    worker.postMessage(query);
  }).finally(() => worker.terminate());
}
