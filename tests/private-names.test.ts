import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PRIVATE_NAMES } from '../scripts/private-names.ts';

const ROOT = join(import.meta.dirname, '..');

const textsIn = (folder: string, kind: RegExp): readonly string[] =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => kind.test(name))
    .map((name) => readFileSync(join(ROOT, folder, name), 'utf8'));

const REACT = ['react-dom', 'react', 'scheduler'].map((name) => `node_modules/${name}/cjs`);
/** Everything else that is part of the first load. */
const OTHERS = ['src', 'node_modules/zustand', 'node_modules/@tonaljs'];

const usedIn = (texts: readonly string[]): readonly string[] => {
  const words = new Set(texts.flatMap((text) => text.match(/\w+/g) ?? []));
  return PRIVATE_NAMES.filter((name) => words.has(name));
};

describe('the names that the build shortens', () => {
  it('are all used by React', () => {
    const texts = REACT.flatMap((folder) => textsIn(folder, /production\.js$/));
    expect(usedIn(texts)).toEqual(PRIVATE_NAMES);
  });

  it.each(OTHERS)('are not used in %s', (folder) => {
    expect(usedIn(textsIn(folder, /(?<!development)\.(?:m?js|tsx?)$/))).toEqual([]);
  });
});
