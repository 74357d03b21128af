import type { Page } from '@playwright/test';
import { axe, axeOnColours, expect, reopen, test } from './fixtures.ts';

const STATE = new URLSearchParams({
  progression: '| Bm7 | E7 | Amaj7 | F#m7 |',
  at: '1.1',
  position: '7',
  route: 'stay',
});

const LENSES = ['Turn', 'Bends', 'Into the next chord', 'Route', 'Fingering', 'Compare'] as const;

const lens = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Study' }).getByRole('button', { name, exact: true });

/** Something to see in every lens. */
async function fill(page: Page): Promise<void> {
  await page.getByRole('textbox', { name: 'Fingering' }).fill('x7678x');
  await page.keyboard.press('Escape');
  await lens(page, 'Compare').click();
  await page.getByRole('button', { name: 'the next, E7' }).click();
}

const THEMES = ['light', 'dark', 'contrast'] as const;

/** Axe on what a lens changes, or on everything, in each theme. */
async function axeInThemes(page: Page, parts: readonly string[] = []): Promise<void> {
  for (const theme of THEMES) {
    await test.step(theme, async () => {
      await page.evaluate((name) => {
        document.documentElement.dataset['theme'] = name;
      }, theme);
      await (theme === THEMES[0] ? axe : axeOnColours)(page, parts);
    });
  }
}

async function openLens(page: Page, name: string): Promise<void> {
  if ((await lens(page, name).getAttribute('aria-pressed')) !== 'true')
    await lens(page, name).click();
}

for (const size of [
  { width: 390, height: 844 },
  { width: 1440, height: 900 },
]) {
  test(`axe finds nothing in any lens at ${size.width} pixels, in any theme`, async ({ page }) => {
    test.setTimeout(240_000);
    await page.setViewportSize(size);
    await page.goto(`./#${STATE}`);
    await fill(page);
    await axeInThemes(page);
    for (const name of LENSES) {
      await openLens(page, name);
      await test.step(name, () => axeInThemes(page, ['.lenses', '[data-neck]']));
    }
  });
}

test('no lens reaches beyond the sides of a page 320, 390, 1024 or 1920 pixels wide', async ({
  page,
}) => {
  await page.goto(`./#${STATE}`);
  await fill(page);
  for (const width of [320, 390, 1024, 1920]) {
    await reopen(page, { width, height: 800 });
    await expect(page.getByRole('textbox', { name: 'Fingering' })).toHaveValue('x7678x');
    for (const name of LENSES) {
      await openLens(page, name);
      const beyond = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(beyond, `${name} at ${width}`).toBe(0);
      const buttons = page.locator('.lenses button:visible, .leave-route:visible');
      const small = await buttons.evaluateAll((all) =>
        all.flatMap((one) => {
          const { width: wide, height } = one.getBoundingClientRect();
          return wide < 24 || height < 23.9 ? [`${one.textContent} ${wide}×${height}`] : [];
        }),
      );
      expect(small, `${name} at ${width}`).toEqual([]);
    }
  }
});

test('the neck stays in sight when a lens is opened on a low screen', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  await page.goto(`./#${STATE}`);
  await lens(page, 'Bends').click();
  await expect(page.locator('.hand-wash')).toBeInViewport({ ratio: 0.99 });
  await expect(page.locator('[data-bend]').first()).toBeVisible();
  // A little higher, chord and panel are seen together.
  await reopen(page, { width: 1366, height: 768 });
  await page.mouse.move(8, 8);
  await expect(lens(page, 'Bends')).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Shift+C');
  await expect(page.locator('.connections')).toBeInViewport();
  await expect(page.locator('.head .now')).toBeInViewport({ ratio: 0.99 });
});
