/** Files of what is heard. */
import { onlyParts, PARTS, type PartName, type RenderQuery, tempoIn } from '#sound';
import { type WavError, wavFile } from '#sound/browser';
import type { Result } from '#theory';
import type { StudyStore } from '../store/index.ts';
import { settingsOf, sourceOf } from './piece.ts';
import type { Player } from './player.ts';
import { PART_WORDS } from './words.ts';

const RATE = 44_100;

/** Parts that can be had alone; the count-in is no music. */
export const ALONE = PARTS.filter((part) => part !== 'count');

export const WHATS = ['heard', ...ALONE, 'each'] as const;
/** `heard`: everything as it is mixed; a part: that one alone; `each`: every part, a file of its own. */
export type What = (typeof WHATS)[number];

/** A file that is asked for. */
export interface Wanted {
  readonly name: string;
  readonly query: RenderQuery;
}

const isPart = (what: What): what is (typeof ALONE)[number] => what !== 'heard' && what !== 'each';

function wantedOf(whole: RenderQuery, name: string, part: PartName | undefined): Wanted {
  if (part === undefined) return { name: `${name}.wav`, query: whole };
  const query = { ...whole, mix: onlyParts(whole.mix, [part]) };
  return { name: `${name}-${PART_WORDS[part]}.wav`, query };
}

/** The files of what would be played now: the loop once, or the whole chart, without a count-in. */
export function wantedFiles(store: StudyStore, player: Player, what: What): readonly Wanted[] {
  const state = store.cell.get();
  const { instrument, sound } = state.workspace;
  const settings = { ...settingsOf(sourceOf(state)), countInBars: 0 };
  const { performance } = player.piece();
  const whole = { performance, instrument, mix: sound.mix, settings, rate: RATE };
  const name = `handspan-${Math.round(tempoIn(settings, 0))}bpm`;
  if (what === 'each') return ALONE.map((part) => wantedOf(whole, name, part));
  return [wantedOf(whole, name, isPart(what) ? what : undefined)];
}

/** Hands a file to the person. */
function download(name: string, bytes: Uint8Array<ArrayBuffer>): void {
  const address = URL.createObjectURL(new Blob([bytes], { type: 'audio/wav' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser still reads it when this task is over.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

export interface Watch {
  /** Share of all files that is done, 0 to 1. */
  readonly progress: (share: number) => void;
  readonly signal: AbortSignal;
}

/** Makes the files one after the other and hands them over; the first that fails ends it. */
export async function saveFiles(
  files: readonly Wanted[],
  { progress, signal }: Watch,
): Promise<Result<undefined, WavError>> {
  for (const [i, { name, query }] of files.entries()) {
    const file = await wavFile(query, {
      progress: (share) => progress((i + share) / files.length),
      signal,
    });
    if (!file.ok) return file;
    download(name, file.value);
  }
  return { ok: true, value: undefined };
}
