import { describe, expect, it } from 'vitest';
import { ALL_ROOTS, sounding } from './short.ts';

/** Semitones of what a base holds, and the ways in which it is written (common practice). */
const BASES: readonly (readonly [readonly number[], string])[] = [
  [[0, 4, 7, 10], '7 dom7'],
  [[0, 2, 4, 7, 10], '9'],
  [[0, 2, 4, 5, 7, 9, 10], '13'],
  [[0, 4, 7, 11], 'maj7 M7 MA7 ma7 Maj7 Δ7 ^7 j7'],
  [[0, 2, 4, 7, 11], 'maj9 M9 Δ9 ^9'],
  [[0, 3, 7, 10], 'm7 -7 min7 mi7 MI7'],
  [[0, 2, 3, 7, 10], 'm9 -9 min9'],
  [[0, 2, 3, 5, 7, 10], 'm11 -11'],
];

/** An alteration, the semitone it sounds, and the one it takes the place of. */
const ALTERATIONS = [
  { text: 'b5', sounds: 6, replaces: 7 },
  { text: '#5', sounds: 8, replaces: 7 },
  { text: 'b9', sounds: 1, replaces: 2 },
  { text: '#9', sounds: 3, replaces: 2 },
  { text: '#11', sounds: 6, replaces: 5 },
  { text: 'b13', sounds: 8, replaces: 9 },
] as const;
type Alteration = (typeof ALTERATIONS)[number];

/** Up to three different alterations in every order. */
function orders(most: number): readonly (readonly Alteration[])[] {
  if (most === 0) return [[]];
  const shorter = orders(most - 1);
  const longer = shorter.flatMap((order) =>
    ALTERATIONS.filter((next) => !order.includes(next)).map((next) => [...order, next]),
  );
  return [...shorter, ...longer.filter((order) => order.length === most)];
}

const behind = (text: string): string => text.slice(1) + text.charAt(0);
const signs = (text: string): string => text.replace('#', '+').replace('b', '-');
const engraved = (text: string): string => text.replace('#', '♯').replace('b', '♭');

const STYLES: Readonly<Record<string, (texts: readonly string[]) => string>> = {
  run: (texts) => texts.join(''),
  commas: (texts) => `(${texts.join(',')})`,
  brackets: (texts) => texts.map((text) => `(${text})`).join(''),
  'one bracket': (texts) => `(${texts.join('')})`,
  square: (texts) => ` [${texts.join(' ')}]`,
  spaces: (texts) => texts.map((text) => ` ${text}`).join(''),
  slashes: (texts) => texts.map((text) => `/${text}`).join(''),
  signs: (texts) => texts.map(signs).join(''),
  engraved: (texts) => texts.map(engraved).join(''),
  behind: (texts) => texts.map(behind).join(''),
};

/** Before 79b13, which corpora write, accidentals behind numbers follow only a seven. */
const fits = (style: string, base: string, order: readonly Alteration[]): boolean =>
  (style !== 'behind' || base.endsWith('7')) &&
  // To a minor chord a plus only adds: m7+9.
  !(style === 'signs' && /^(?:m|-|MI)/.test(base) && order.some(({ text }) => text === '#9')) &&
  !(base === '13' && order.some(({ text }) => text === 'b13'));

function meant(base: readonly number[], order: readonly Alteration[]): string {
  const replaced = new Set<number>(order.map(({ replaces }) => replaces));
  const kept = base.filter((semitone) => !replaced.has(semitone));
  const all = new Set([...kept, ...order.map(({ sounds }) => sounds)]);
  return [...all].sort((a, b) => a - b).join(' ');
}

describe('Every base with up to three alterations in every order', () => {
  const altered = orders(3).filter((order) => order.length > 0);

  it.each(Object.entries(STYLES))('written with %s is read', (style, write) => {
    let count = 0;
    for (const [base, spellings] of BASES) {
      for (const spelling of spellings.split(' ')) {
        for (const order of altered.filter((one) => fits(style, spelling, one))) {
          const root = ALL_ROOTS[count % ALL_ROOTS.length] ?? 'C';
          const token = root + spelling + write(order.map(({ text }) => text));
          const heard = sounding(token);
          const expected = meant(base, order);
          if (heard !== expected) throw new Error(`${token}: ${heard}, not ${expected}`);
          count += 1;
        }
      }
    }
    expect(count).toBeGreaterThan(1500);
  });
});
