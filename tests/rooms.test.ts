import { posix } from 'node:path';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { filesBelow, functionsOf, type Import, importsOf, read } from './source.ts';

vi.mock('react', () => ({}));

const CODE = /\.(ts|tsx|mjs|js)$/;
const SOURCES = filesBelow('src', CODE);

/**
 * Which other rooms a room may import, by face. What is heard has two: `#sound` computes and runs
 * anywhere, `#sound/browser` needs a sound device.
 */
const MAY: Readonly<Record<string, readonly string[]>> = {
  theory: [],
  neck: ['#theory'],
  line: ['#theory', '#neck'],
  sound: ['#theory', '#neck', '#line'],
  lesson: ['#theory', '#neck', '#line', '#sound'],
  ui: ['#theory', '#neck', '#line', '#lesson', '#sound', '#sound/browser'],
};

/** What the view is written in may stand in every file of it; any other library has one adapter. */
const VIEW = ['react'];

const roomOf = (file: string): string => file.split('/')[1] ?? '';

const packageOf = (from: string): string => from.split('/', from.startsWith('@') ? 2 : 1).join('/');

const isOutside = (from: string): boolean => !/^[.#]/.test(from);

/** Why an import breaks the house, or undefined. */
const breach = ({ file, from }: Import): string | undefined => {
  const room = roomOf(file);
  const told = `${file} imports ${from}`;
  if (from.startsWith('#')) return MAY[room]?.includes(from) ? undefined : told;
  if (from.startsWith('.')) {
    const target = posix.join(posix.dirname(file), from);
    return target.startsWith(`src/${room}/`) ? undefined : told;
  }
  const home = packageOf(from) === 'tonal' ? file === 'src/theory/tonal.ts' : room === 'ui';
  return home && !from.startsWith('node:') ? undefined : told;
};

const breaches = (imports: readonly Import[]): readonly string[] =>
  imports.flatMap((one) => breach(one) ?? []);

const ALL = SOURCES.flatMap((file) => importsOf(file, read(file)));

const importersOf = (library: string): readonly string[] => [
  ...new Set(ALL.filter(({ from }) => packageOf(from) === library).map(({ file }) => file)),
];

describe('imports', () => {
  it('point one way, types included', () => {
    expect(breaches(ALL)).toEqual([]);
    expect(ALL.length).toBeGreaterThan(0);
  });

  it.each([
    ["import { a } from '#ui';"],
    ["import type { A } from '#ui';"],
    ["import { type A } from '#ui';"],
    ["import '#ui';"],
    ["export { a } from '#ui';"],
    ["export type { A } from '#ui';"],
    ["export * from '#ui';"],
    ["export const a = import('#ui');"],
    ["export type A = import('#ui').A;"],
    ["import { a } from '../ui/a.ts';"],
    ["import { a } from '#theory/notes.ts';"],
    ["import { a } from 'react';"],
    ["import { a } from 'tonal';"],
    ["import { a } from 'node:fs';"],
    ['export const load = (name: string) => import(name);'],
  ])('are refused in the form %s', (code) => {
    expect(breaches(importsOf('src/neck/probe.ts', code))).toHaveLength(1);
  });

  it('of each outside library stand in one adapter file', () => {
    const libraries = new Set(
      ALL.map(({ from }) => from)
        .filter(isOutside)
        .map(packageOf),
    );
    const spread = [...libraries]
      .filter((library) => !VIEW.includes(library))
      .map((library) => [library, importersOf(library)] as const)
      .filter(([, files]) => files.length !== 1);
    expect(spread).toEqual([]);
  });
});

describe('the pure rooms', () => {
  const faces = import.meta.glob('../src/{theory,neck,line,lesson,sound}/index.ts');

  // Another test file may have loaded them, with React at hand.
  beforeEach(() => {
    vi.resetModules();
  });

  it.each(Object.entries(faces))(
    '%s loads without React and without a document',
    async (_, load) => {
      expect(typeof document).toBe('undefined');
      expect(typeof window).toBe('undefined');
      expect(Object.keys(Object(await load()))).not.toHaveLength(0);
    },
  );

  it('are there', () => {
    expect(Object.keys(faces)).toHaveLength(5);
  });
});

const median = (numbers: readonly number[]): number =>
  [...numbers].sort((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? 0;

describe('sizes', () => {
  const everything = [
    ...SOURCES,
    ...['tests', 'e2e', 'scripts'].flatMap((top) => filesBelow(top, CODE)),
  ];
  const functions = SOURCES.flatMap((file) => functionsOf(file, read(file)));
  const named = functions.filter((one) => one.named).map(({ lines }) => lines);

  it('of files stay within 400 lines', () => {
    const long = everything.filter((file) => read(file).trimEnd().split('\n').length > 400);
    expect(long).toEqual([]);
  });

  it('of functions stay within 60 lines', () => {
    expect(functions.filter(({ lines }) => lines > 60)).toEqual([]);
  });

  it('of named functions have a median of at most 8 lines, nine in ten at most 25', () => {
    expect(named.length).toBeGreaterThan(0);
    expect(median(named)).toBeLessThanOrEqual(8);
    expect(named.filter((lines) => lines > 25).length / named.length).toBeLessThanOrEqual(0.1);
  });

  it('are counted in lines, a callback apart from a named function', () => {
    const code = 'const f = () => {\n  return [1].map((n) => n);\n};\nfunction g() {}\n';
    const sizes = functionsOf('a.ts', code).map(({ line, lines, named }) => [line, lines, named]);
    expect(sizes).toEqual([
      [1, 3, true],
      [2, 1, false],
      [4, 1, true],
    ]);
  });
});

describe('the text', () => {
  /** Ways for text to become markup or code. */
  const INTO_MARKUP =
    /dangerouslySetInnerHTML|innerHTML|outerHTML|insertAdjacentHTML|createContextualFragment|srcdoc|document\.write|\beval\(|new Function\b|javascript:/i;
  const INLINE_HANDLER = /<[^>]*\son[a-z]+\s*=\s*["']/;
  /** Ways around the compiler and the linter. */
  const AROUND = /biome-\w*ignore|@ts-(?:ignore|expect-error|nocheck)|\bas any\b|as unknown as/;

  const served = ['index.html', ...SOURCES, ...filesBelow('public', /\.(js|svg|html)$/)];
  const here = posix.join('tests', 'rooms.test.ts');
  const all = [...SOURCES, ...['tests', 'e2e', 'scripts'].flatMap((top) => filesBelow(top, CODE))];

  it('that is served never turns text into markup or code', () => {
    expect(served.filter((file) => INTO_MARKUP.test(read(file)))).toEqual([]);
    expect('element.innerHTML = text').toMatch(INTO_MARKUP);
  });

  it('that is served has no inline event handlers', () => {
    const markup = served.filter((file) => /\.(html|svg)$/.test(file));
    expect(markup.filter((file) => INLINE_HANDLER.test(read(file)))).toEqual([]);
    expect('<p onclick="go()">').toMatch(INLINE_HANDLER);
  });

  it('never steps around the compiler or the linter', () => {
    expect(all.filter((file) => file !== here && AROUND.test(read(file)))).toEqual([]);
  });
});
