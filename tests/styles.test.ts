import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const STYLES = join(import.meta.dirname, '../src/ui/styles');
const SHEETS = readdirSync(STYLES).filter((name) => name.endsWith('.css'));

describe('the styles', () => {
  it('are found', () => {
    expect(SHEETS.length).toBeGreaterThan(10);
  });

  it.each(SHEETS)(
    'ask in %s for no element by what it has: every change would be looked through',
    (name) => {
      expect(readFileSync(join(STYLES, name), 'utf8')).not.toContain(':has(');
    },
  );

  it.each(SHEETS)('change in %s nothing but colours for a theme', (name) => {
    const sheet = readFileSync(join(STYLES, name), 'utf8').replaceAll(/\/\*.*?\*\//gs, '');
    const themes = [...sheet.matchAll(/\[data-theme[^{]*\{([^}]*)\}/g)].map(([, inside]) => inside);
    const declared = themes.flatMap((inside = '') => inside.split(';').map((one) => one.trim()));
    for (const one of declared.filter((text) => text !== ''))
      expect(one).toMatch(
        /^(--[a-z-]+: (#[0-9a-f]{6}|[A-Z][A-Za-z]+)|color-scheme: (light|dark))$/,
      );
    if (name === 'tokens.css') expect(declared.length).toBeGreaterThan(50);
  });
});
