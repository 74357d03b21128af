/**
 * Sound as a file: RIFF/WAVE, 16-bit PCM ("Multimedia Programming Interface and Data Specifications
 * 1.0", IBM and Microsoft, 1991).
 */

const HEADER_BYTES = 44;
const FORMAT_BYTES = 16;
const PCM = 1;
const BYTES = 2;
const HIGHEST = 32767;

const writeName = (view: DataView, at: number, name: string): void => {
  for (let i = 0; i < name.length; i++) view.setUint8(at + i, name.charCodeAt(i));
};

interface Shape {
  readonly channels: number;
  readonly frames: number;
  readonly rate: number;
}

function writeHeader(view: DataView, { channels, frames, rate }: Shape): void {
  const data = frames * channels * BYTES;
  writeName(view, 0, 'RIFF');
  view.setUint32(4, HEADER_BYTES - 8 + data, true);
  writeName(view, 8, 'WAVEfmt ');
  view.setUint32(16, FORMAT_BYTES, true);
  view.setUint16(20, PCM, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * channels * BYTES, true);
  view.setUint16(32, channels * BYTES, true);
  view.setUint16(34, 8 * BYTES, true);
  writeName(view, 36, 'data');
  view.setUint32(40, data, true);
}

const whole = (sample: number): number =>
  Math.round(Math.min(1, Math.max(-1, Number.isNaN(sample) ? 0 : sample)) * HIGHEST);

/**
 * A WAV file of one or more channels of equal length (full scale ±1; what is beyond is clipped) at
 * `rate` samples a second. Throws a RangeError for channels of different length or none.
 */
export function makeWav(channels: readonly Float32Array[], rate: number): Uint8Array<ArrayBuffer> {
  const frames = channels[0]?.length;
  if (frames === undefined || channels.some((channel) => channel.length !== frames))
    throw new RangeError('channels of one length are needed');
  const bytes = new Uint8Array(HEADER_BYTES + frames * channels.length * BYTES);
  const view = new DataView(bytes.buffer);
  writeHeader(view, { channels: channels.length, frames, rate });
  for (const [c, samples] of channels.entries()) {
    for (let i = 0; i < frames; i++) {
      const at = HEADER_BYTES + (i * channels.length + c) * BYTES;
      view.setInt16(at, whole(samples[i] ?? 0), true);
    }
  }
  return bytes;
}
