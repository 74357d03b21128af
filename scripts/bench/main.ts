import { chromium } from '@playwright/test';
import { LEAN } from '../chromium.mjs';
import type { Measure, Row } from './bench.ts';

const sections = import.meta.glob<Measure>('./*.bench.ts', { import: 'measure', eager: true });

/** An unmeasured figure is not within any limit. */
const isWithin = ({ figure, limit }: Row): boolean => limit === undefined || figure <= limit;

const CELLS = ['figure', 'limit', 'ratio'] as const;

const rounded = (value: number): string =>
  Number.isInteger(value) ? String(value) : value.toPrecision(3);

const cellsOf = (row: Row) => ({
  name: row.name,
  figure: `${rounded(row.figure)} ${row.unit}`,
  limit: row.limit === undefined ? '' : `${rounded(row.limit)} ${row.unit}`,
  ratio: row.limit ? (row.figure / row.limit).toFixed(2) : '',
  mark: isWithin(row) ? '' : '  over',
});

const table = (rows: readonly Row[]): string => {
  const lines = [{ name: '', figure: 'figure', limit: 'limit', ratio: 'ratio', mark: '' }].concat(
    rows.map(cellsOf),
  );
  const width = (key: keyof (typeof lines)[number]) =>
    Math.max(...lines.map((line) => line[key].length));
  return lines
    .map((line) =>
      [line.name.padEnd(width('name')), ...CELLS.map((key) => line[key].padStart(width(key)))]
        .join('   ')
        .concat(line.mark),
    )
    .join('\n');
};

/**
 * Measures every section against the program served at `url`, one after the other, and prints one
 * table. `wanted`: names of sections, none for all. True when every figure is within its limit.
 */
export const bench = async (
  url: string,
  executablePath: string,
  wanted: readonly string[] = process.argv.slice(2),
): Promise<boolean> => {
  const browser = await chromium.launch({ executablePath, args: LEAN });
  const rows: Row[] = [];
  for (const [file, measure] of Object.entries(sections)) {
    const name = file.replace(/^\.\/|\.bench\.ts$/g, '');
    if (wanted.length > 0 && !wanted.includes(name)) continue;
    console.log(`measuring ${name} …`);
    rows.push(...(await measure({ url, browser })));
  }
  await browser.close();
  console.log(`\n${table(rows)}`);
  return rows.every(isWithin);
};
