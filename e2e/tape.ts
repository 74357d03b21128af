import type { Page } from '@playwright/test';

interface Tape {
  /** Whether everything from here on is recorded. */
  running: boolean;
  readonly chunks: { readonly frame: number; readonly sides: readonly Float32Array[] }[];
}

declare global {
  interface Window {
    tape?: Tape;
  }
}

/** Samples a second of everything that is recorded: those of a saved file. */
export const RATE = 44_100;

/** Sends on what it hears, with the number of its first sample; runs in the audio thread, so that no page can hold it up. */
const RECORDER = `
const SIZE = 4096;
registerProcessor('tape', class extends AudioWorkletProcessor {
  at = 0;
  sides = [new Float32Array(SIZE), new Float32Array(SIZE)];
  process([input]) {
    const count = 128;
    for (const [i, side] of this.sides.entries()) {
      const heard = input[i];
      if (heard) side.set(heard, this.at); else side.fill(0, this.at, this.at + count);
    }
    this.at += count;
    if (this.at < SIZE) return true;
    const frame = currentFrame + count - SIZE;
    this.port.postMessage({ frame, sides: this.sides });
    this.sides = this.sides.map(() => new Float32Array(SIZE));
    this.at = 0;
    return true;
  }
});`;

const install = ({ rate, recorder }: { readonly rate: number; readonly recorder: string }) => {
  const tape: Tape = { running: false, chunks: [] };
  window.tape = tape;
  const { connect } = AudioNode.prototype;
  const attend = async (node: AudioNode): Promise<void> => {
    const address = URL.createObjectURL(new Blob([recorder], { type: 'text/javascript' }));
    await node.context.audioWorklet.addModule(address);
    const listener = new AudioWorkletNode(node.context, 'tape', { outputChannelCount: [2] });
    listener.port.onmessage = ({ data }) => {
      tape.running = true;
      tape.chunks.push(data);
    };
    Reflect.apply(connect, node, [listener]);
    Reflect.apply(connect, listener, [node.context.destination]);
  };
  Object.defineProperty(AudioNode.prototype, 'connect', {
    value(this: AudioNode, ...given: unknown[]) {
      if (given[0] instanceof AudioDestinationNode) attend(this);
      return Reflect.apply(connect, this, given);
    },
  });
  const Plain = AudioContext;
  window.AudioContext = class extends Plain {
    constructor(options?: AudioContextOptions) {
      super({ ...options, sampleRate: rate });
    }
  };
};

/** Both sides as text: a million numbers would take seconds as JSON. */
const read = (): readonly string[] => {
  const chunks = window.tape?.chunks ?? [];
  const size = chunks[0]?.sides[0]?.length ?? 0;
  const first = chunks[0]?.frame ?? 0;
  return [0, 1].map((side) => {
    const whole = new Float32Array(chunks.length * size);
    for (const { frame, sides } of chunks) {
      if (frame - first >= whole.length) throw new Error(`samples are missing before ${frame}`);
      whole.set(sides[side] ?? [], frame - first);
    }
    const bytes = new Uint8Array(whole.buffer);
    let text = '';
    for (let i = 0; i < bytes.length; i += 8192)
      text += String.fromCharCode(...bytes.subarray(i, i + 8192));
    return btoa(text);
  });
};

/** Source text that records, sample by sample, what a page sends to the loudspeaker; to run before the page's own. */
export const RECORDING = `(${install})(${JSON.stringify({ rate: RATE, recorder: RECORDER })})`;
/** Expressions: whether everything from here on is recorded; both sides of all that was. */
export const RUNNING = 'window.tape.running';
export const SIDES = `(${read})()`;

/** Both sides out of what the second expression gives. */
export const sidesOf = (texts: readonly string[]): readonly Float32Array[] =>
  texts.map((text) => {
    const bytes = Uint8Array.from(Buffer.from(text, 'base64'));
    return new Float32Array(bytes.buffer);
  });

/**
 * Records what the page sends to the loudspeaker. To be called before the page is opened, in a spec
 * that says `test.use({ bypassCSP: true })`: the page's policy knows no recorder.
 */
export const record = (page: Page): Promise<unknown> => page.addInitScript({ content: RECORDING });

/** Both sides of everything recorded so far. Fails when samples are missing between. */
export const recorded = async (page: Page): Promise<readonly Float32Array[]> =>
  sidesOf(await page.evaluate<readonly string[]>(SIDES));
