import { describe, expect, it } from 'vitest';
import { makeWav } from '#sound';

const name = (view: DataView, at: number): string =>
  String.fromCharCode(...Array.from({ length: 4 }, (_, i) => view.getUint8(at + i)));

/** Every field of the header, read as the RIFF/WAVE specification of 1991 lays it out. */
function fields(bytes: Uint8Array): readonly (readonly [string, string | number])[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  return [
    ['chunk', name(view, 0)],
    ['bytes after this field', view.getUint32(4, true)],
    ['form', name(view, 8)],
    ['format chunk', name(view, 12)],
    ['its bytes', view.getUint32(16, true)],
    ['format', view.getUint16(20, true)],
    ['channels', view.getUint16(22, true)],
    ['rate', view.getUint32(24, true)],
    ['bytes a second', view.getUint32(28, true)],
    ['bytes a frame', view.getUint16(32, true)],
    ['bits a sample', view.getUint16(34, true)],
    ['data chunk', name(view, 36)],
    ['data bytes', view.getUint32(40, true)],
  ];
}

/** Channels of whole numbers. */
function parse(bytes: Uint8Array): readonly (readonly number[])[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  const channels = view.getUint16(22, true);
  const frames = view.getUint32(40, true) / (2 * channels);
  return Array.from({ length: channels }, (_, c) =>
    Array.from({ length: frames }, (_, i) => view.getInt16(44 + 2 * (i * channels + c), true)),
  );
}

describe('a WAV file', () => {
  it('says what it holds, field by field', () => {
    const sides = [new Float32Array(100), new Float32Array(100)];
    expect(fields(makeWav(sides, 48_000))).toEqual([
      ['chunk', 'RIFF'],
      ['bytes after this field', 436],
      ['form', 'WAVE'],
      ['format chunk', 'fmt '],
      ['its bytes', 16],
      ['format', 1],
      ['channels', 2],
      ['rate', 48_000],
      ['bytes a second', 192_000],
      ['bytes a frame', 4],
      ['bits a sample', 16],
      ['data chunk', 'data'],
      ['data bytes', 400],
    ]);
  });

  it('holds the samples of the channels side by side, full scale 32767', () => {
    const left = Float32Array.of(0, 1, -1, 0.5);
    const right = Float32Array.of(-0.25, 2, -2, Number.NaN);
    expect(parse(makeWav([left, right], 44_100))).toEqual([
      [0, 32767, -32767, 16384],
      [-8192, 32767, -32767, 0],
    ]);
  });

  it('may have one channel, or no sound at all', () => {
    expect(parse(makeWav([Float32Array.of(0.1)], 8000))).toEqual([[3277]]);
    expect(makeWav([new Float32Array(0)], 8000)).toHaveLength(44);
  });

  it('is not made of channels that do not fit together', () => {
    expect(() => makeWav([], 48_000)).toThrow(RangeError);
    expect(() => makeWav([new Float32Array(1), new Float32Array(2)], 48_000)).toThrow(RangeError);
  });
});
