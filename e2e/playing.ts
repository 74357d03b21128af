/** The transport of a page that is open, for the tests of what is heard and practised. */
import { expect, type Page } from '@playwright/test';
import { listen } from './ear.ts';

export const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
export const current = (page: Page) => page.locator('[data-chord-cell][aria-current="true"]');
export const tempo = (page: Page) => page.getByRole('textbox', { name: 'Tempo' });
export const loop = (page: Page) => page.getByRole('textbox', { name: 'Loop' });

export async function open(page: Page, state: Record<string, string>): Promise<void> {
  await listen(page);
  await page.goto(`./#${new URLSearchParams(state)}`);
  await page.mouse.move(4, 4);
  await page.mouse.move(8, 8);
  await expect(button(page, 'Play')).toBeVisible();
}

export const SIZES = [
  { width: 390, height: 844 },
  { width: 1024, height: 768 },
  { width: 1440, height: 900 },
  { width: 1920, height: 1080 },
  { width: 844, height: 390 },
];

export const FOUR = { progression: '| Dm7 | G7 | Cmaj7 | A7 |', at: '1.1', position: '5' };

export const sidewaysOf = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

export async function setTempo(page: Page, value: string): Promise<void> {
  await tempo(page).fill(value);
  await tempo(page).press('Enter');
}
