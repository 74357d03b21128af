import type { Page } from '@playwright/test';
import { axe, expect, test } from './fixtures.ts';

const STATE = new URLSearchParams({
  progression: '[Verse]\n|: Bm7 | E7 | Amaj7 | F#m7b5 B7b9 :| x3\n| Hm | N.C. | 3/4 D/F# | % |',
  at: '1.1',
  position: '7',
  show: '9,b6',
});

const SIZES = [
  { width: 390, height: 844 },
  { width: 1440, height: 900 },
] as const;

async function setTheme(page: Page, theme: string): Promise<void> {
  await page.getByRole('button', { name: 'Settings', exact: true }).click();
  await page.getByRole('radio', { name: theme, exact: true }).check({ force: true });
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
}

for (const size of SIZES) {
  for (const theme of ['light', 'dark', 'high contrast']) {
    test(`axe finds nothing at ${size.width} pixels, ${theme}`, async ({ page }) => {
      await page.setViewportSize(size);
      await page.goto(`./#${STATE}`);
      await setTheme(page, theme);
      await axe(page);
    });
  }
}

test('axe finds nothing in the settings and in the sheet of keys', async ({ page }) => {
  await page.goto(`./#${STATE}`);
  await page.getByRole('button', { name: 'Settings', exact: true }).click();
  await expect(page.getByRole('dialog', { name: 'Settings' })).toBeVisible();
  await axe(page);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Keys', exact: true }).click();
  await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible();
  await axe(page);
});

// WCAG 2.2, 1.4.10: no scrolling in two directions at 320 pixels.
for (const width of [320, 390, 1024, 1920]) {
  test(`nothing reaches beyond the sides of a page ${width} pixels wide`, async ({ page }) => {
    await page.setViewportSize({ width, height: 800 });
    await page.goto(`./#${STATE}`);
    await expect(page.locator('[data-neck] svg')).toBeVisible();
    const beyond = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(beyond).toBe(0);
  });
}

// WCAG 2.2, 2.5.8: targets of at least 24 by 24 pixels.
for (const size of SIZES) {
  test(`every button is large enough to hit at ${size.width} pixels`, async ({ page }) => {
    await page.setViewportSize(size);
    await page.goto(`./#${STATE}`);
    await expect(page.locator('[data-neck] svg')).toBeVisible();
    const small = await page.locator('button:visible, summary:visible').evaluateAll((all) =>
      all.flatMap((one) => {
        const { width, height } = one.getBoundingClientRect();
        return width < 24 || height < 23.9 ? [`${one.textContent} ${width}×${height}`] : [];
      }),
    );
    expect(small).toEqual([]);
  });
}

test('on paper stand lane, reading, neck and legend, without controls, on one sheet', async ({
  page,
}) => {
  await page.goto(`./#${STATE}`);
  await expect(page.locator('[data-neck] svg')).toBeVisible();
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  // Text is text on the sheet, not a picture of it.
  expect(pdf).toContain('/ToUnicode');
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('status', { name: 'Reading' })).toBeVisible();
  await expect(page.locator('[data-chord-cell]').first()).toBeVisible();
  await expect(page.getByRole('list', { name: 'What the marks mean' })).toBeVisible();
  await expect(page.getByRole('textbox', { name: 'Progression' })).toBeHidden();
  await expect(page.getByRole('button', { name: 'Undo' })).toBeHidden();
});

test('the page does not move where motion is not wanted', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`./#${STATE}`);
  const moving = await page.evaluate(() => document.getAnimations().length);
  expect(moving).toBe(0);
});
