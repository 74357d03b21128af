import AxeBuilder from '@axe-core/playwright';
import { test as base, expect, type Page } from '@playwright/test';

export { expect } from '@playwright/test';

interface RunOnly {
  readonly type: 'tag' | 'rule';
  readonly values: string[];
}

const WCAG_22_AA = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** What went wrong on a page so far: console and page errors, broken policy, requests elsewhere. */
export const watch = (page: Page, home: string): readonly string[] => {
  const problems: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') problems.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => problems.push(`page: ${error.message}`));
  page.on('request', (request) => {
    const { protocol, origin } = new URL(request.url());
    const elsewhere = origin !== new URL(home).origin && protocol.startsWith('http');
    if (elsewhere) problems.push(`request: ${request.url()}`);
  });
  return problems;
};

/** Playwright's `test`, whose page must stay free of problems; `goto('./#…')` opens the program. */
export const test = base.extend({
  baseURL: async ({ browserName: _ }, use) => {
    const url = process.env['HANDSPAN_URL'];
    if (url === undefined) throw new Error('e2e/serve-dist.ts has not run');
    await use(url);
  },
  page: async ({ page, baseURL }, use) => {
    const problems = watch(page, baseURL ?? '');
    await use(page);
    expect(problems, 'the page stays free of problems').toEqual([]);
  },
});

/** Frames that have to look alike before a page counts as laid out. */
const ALIKE = 4;

/** Opens the page anew in a window of another size, and waits until nothing of it moves any more. */
export async function reopen(page: Page, size: { width: number; height: number }): Promise<void> {
  await page.setViewportSize(size);
  await page.reload();
  await expect(page.locator('[data-neck] svg')).toBeVisible();
  await page.evaluate(
    (wanted) =>
      new Promise<void>((done) => {
        const parts = document.querySelectorAll('main, .sheet > *, .neck svg, .lane, .row');
        let before = '';
        let alike = 0;
        const look = (): void => {
          const boxes = [...parts].map((part) => {
            const { x, y, width, height } = part.getBoundingClientRect();
            return [x, y, width, height].join();
          });
          const now = boxes.join(' ');
          alike = now === before ? alike + 1 : 0;
          before = now;
          if (alike >= wanted) done();
          else requestAnimationFrame(look);
        };
        requestAnimationFrame(look);
      }),
    ALIKE,
  );
}

/** Those of the rules that look at colours, for a theme that the same page is shown in once more. */
const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];

/**
 * Asserts that axe finds nothing against WCAG 2.2 AA on the page as it stands, or in those `parts`
 * (selectors) that changed since the whole was looked at.
 */
export const axe = (page: Page, parts: readonly string[] = []): Promise<void> =>
  look(page, parts, { type: 'tag', values: WCAG_22_AA });

/**
 * As `axe`, for a page that was looked at and has only other colours now: a theme changes nothing else
 * (tests/styles.test.ts).
 */
export const axeOnColours = (page: Page, parts: readonly string[] = []): Promise<void> =>
  look(page, parts, { type: 'rule', values: COLOUR_RULES });

async function look(page: Page, parts: readonly string[], runOnly: RunOnly): Promise<void> {
  // No frames and no interest in what passes: without either it takes a third of the time.
  const builder = new AxeBuilder({ page })
    .options({ runOnly, resultTypes: ['violations'] })
    .setLegacyMode(true);
  for (const part of parts) builder.include(part);
  const { violations } = await builder.analyze();
  const told = violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary}`),
  );
  expect(told, 'axe finds nothing against WCAG 2.2 AA').toEqual([]);
}
