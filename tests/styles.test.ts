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
});
