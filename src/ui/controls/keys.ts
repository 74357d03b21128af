import { type Key, LETTERS, MODES, type Mode, makeNoteName } from '#theory';

/** A key to choose, with its name for people. */
export interface KeyOption {
  readonly id: string;
  readonly key: Key;
  readonly name: string;
}

/** `A major`, `F♯ minor`. */
export const keyName = (key: Key): string => `${makeNoteName(key.tonic, 'sign')} ${key.mode}`;

export const keyId = (key: Key): string => `${makeNoteName(key.tonic)} ${key.mode}`;

/** Tonics of the fifteen key signatures, from seven flats to seven sharps. */
const FIFTHS = { major: [-7, 7], minor: [-7, 7] } as const;

/** Letters in the order of fifths, F = -1 fifth from C. */
const FIFTH_LETTERS = ['F', 'C', 'G', 'D', 'A', 'E', 'B'] as const;

/** Where the tonic of a mode without signature lies in the order of fifths: C major, A minor. */
const HOME: Readonly<Record<Mode, number>> = { major: 1, minor: 4 };

function keyAt(mode: Mode, signature: number): Key {
  const step = HOME[mode] + signature;
  const letter = FIFTH_LETTERS[((step % 7) + 7) % 7] ?? LETTERS[0];
  return { tonic: { letter, alter: Math.floor(step / 7) }, mode };
}

const option = (key: Key): KeyOption => ({ id: keyId(key), key, name: keyName(key) });

/** All keys that have a signature, by mode and then by the note they stand on. */
export const KEYS: readonly KeyOption[] = MODES.flatMap((mode) => {
  const [low, high] = FIFTHS[mode];
  const signatures = Array.from({ length: high - low + 1 }, (_, i) => low + i);
  return signatures
    .map((signature) => option(keyAt(mode, signature)))
    .sort((a, b) => a.name.localeCompare(b.name));
});
