/** The band in the browser's audio thread. */
import {
  type Band,
  beginRun,
  makeBand,
  renderBand,
  schedule,
  scheduleRun,
  setMix,
  silence,
  takeBack,
} from '../band.ts';
import { frameOf } from '../render-string.ts';
import type { StringTone } from '../string.ts';
import type { BandEvent, Struck } from '../types.ts';
import type { BandOptions, BandToClock, Begins, ClockToBand, ToBand } from './messages.ts';

/** What the audio thread offers; the compiler knows only the page. */
declare const sampleRate: number;
declare const currentFrame: number;
declare function registerProcessor(
  name: string,
  processor: new (options: { readonly processorOptions: BandOptions }) => AudioWorkletProcessor,
): void;
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
  abstract process(inputs: Float32Array[][], outputs: Float32Array[][]): boolean;
}

/** Blocks between two words to the clock: 11 ms at 48 kHz. */
const CLOCK_BLOCKS = 4;

const eventOf = ({ string, note }: Struck, frame: number): BandEvent => ({
  kind: 'note',
  part: 'line',
  frame: frame + frameOf(note.start, sampleRate),
  string,
  note,
});

class BandProcessor extends AudioWorkletProcessor {
  band: Band;
  clock: MessagePort | undefined;
  blocks = 0;

  constructor({ processorOptions }: { readonly processorOptions: BandOptions }) {
    super();
    this.band = makeBand(processorOptions.guitar, processorOptions.mix, sampleRate);
    this.port.onmessage = ({ data }: MessageEvent<ToBand>) => this.hear(data);
  }

  hear(message: ToBand): void {
    switch (message.kind) {
      case 'clock':
        this.clock = message.port;
        this.clock.onmessage = ({ data }: MessageEvent<ClockToBand>) => this.follow(data);
        return;
      case 'mix':
        setMix(this.band, message.mix);
        return;
      case 'guitar':
        this.restring(message.guitar);
        return;
      case 'strike':
        schedule(
          this.band,
          message.notes.map((struck) => eventOf(struck, currentFrame)),
        );
    }
  }

  /** Another instrument, in the middle of the music. */
  restring(guitar: readonly StringTone[]): void {
    const { mix, queue, late, frame } = this.band;
    this.band = { ...makeBand(guitar, mix, sampleRate), late, frame };
    schedule(this.band, queue);
  }

  follow(message: ClockToBand): void {
    if (message.kind === 'silence') silence(this.band);
    else if (message.kind === 'back') takeBack(this.band, message.keep);
    else {
      if (message.begins !== undefined) this.begin(message.begins);
      scheduleRun(this.band, message.events);
    }
  }

  begin({ run, frame }: Begins): void {
    const seconds = beginRun(this.band, frame) / sampleRate;
    const word: BandToClock = { kind: 'late', run, seconds };
    if (seconds > 0) this.clock?.postMessage(word);
  }

  tell(): void {
    this.blocks = (this.blocks + 1) % CLOCK_BLOCKS;
    const word: BandToClock = { kind: 'now', seconds: currentFrame / sampleRate, at: Date.now() };
    if (this.blocks === 0) this.clock?.postMessage(word);
  }

  process(_inputs: Float32Array[][], outputs: Float32Array[][]): boolean {
    const [left, right] = outputs[0] ?? [];
    if (left === undefined || right === undefined) return true;
    this.band.frame = currentFrame;
    renderBand(this.band, left, right);
    this.tell();
    return true;
  }
}

registerProcessor('band', BandProcessor);
