import { axe, expect, reopen, test } from './fixtures.ts';
import {
  button,
  current,
  FOUR,
  loop,
  open,
  SIZES,
  setTempo,
  sidewaysOf,
  tempo,
} from './playing.ts';

test('on the practice screen a pedal plays, stops and starts over', async ({ page }) => {
  await open(page, FOUR);
  await page.keyboard.press('End');
  await page.keyboard.press('Shift+P');
  await expect(page.getByRole('textbox', { name: 'Progression' })).toBeHidden();
  await expect(page.locator('[data-neck] svg')).toBeVisible();
  await page.keyboard.press('PageUp');
  await expect(current(page)).toHaveAttribute('data-at', '1.1');
  await tempo(page).click();
  await page.keyboard.press('PageDown');
  await expect(button(page, 'Stop')).toHaveAttribute('aria-disabled', 'false');
  await setTempo(page, '95');
  await page.keyboard.press('ArrowRight');
  await expect(button(page, 'Stop')).toHaveAttribute('aria-disabled', 'true');
  await page.getByRole('button', { name: /^Slower/ }).click();
  await page.keyboard.press('-');
  await expect(page.getByLabel('Share of the speed')).toHaveText('90 %');
  const loops = page.getByRole('button', { name: /^Loop the section/ });
  await expect(loops).toHaveText('loop section');
  await loop(page).fill('1-2');
  await loop(page).press('Enter');
  await loops.click();
  await expect(loop(page)).toHaveValue('');
  await expect(loops).toHaveText('loop 1-2');
  await loops.click();
  await expect(loop(page)).toHaveValue('1-2');
  await expect(loops).toHaveText('all bars');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('textbox', { name: 'Progression' })).toBeVisible();
});

test('the practice screen holds chord, neck and keys', async ({ page }) => {
  // The open strings are the root of the first chord, whose mark is the largest.
  const progression = '| Ebm7b5 | E7b9 | Am | Am/G | Dm7 | G7 | Cmaj7 | E7 |';
  const tuning = 'Eb2-Ab2-Db3-Gb3-Bb3-Eb4';
  await open(page, { ...FOUR, progression, position: '1', tuning });
  for (const size of SIZES) {
    await test.step(`${size.width} by ${size.height}`, async () => {
      await reopen(page, size);
      await page.keyboard.press('Shift+P');
      const keys = page.getByRole('region', { name: 'Transport' });
      const top = async () => (await keys.boundingBox())?.y ?? 0;
      await expect.poll(top).toBeGreaterThan(size.height / 2);
      const numeral = await page.locator('[data-neck] .hand-wash').boundingBox();
      expect((numeral?.y ?? 9999) + (numeral?.height ?? 0)).toBeLessThanOrEqual(await top());
      await expect(page.locator('.now')).toBeInViewport();
      const high = async (part: string) =>
        Number.parseFloat(await page.locator(part).evaluate((e) => getComputedStyle(e).fontSize));
      if (size.width >= 1024) {
        await expect(page.locator('.lane-more')).toBeHidden();
        expect(await high('.next-form')).toBeGreaterThanOrEqual((await high('.now')) / 2);
        await expect(page.getByText('Pedal: on plays and stops')).toBeVisible();
      }
      expect(await sidewaysOf(page)).toBe(0);
      await axe(page);
      const open6 = await page.locator('[data-tone][data-string="6"][data-fret="0"]').boundingBox();
      const names = await page.locator('.string-name').last().boundingBox();
      const gap = Math.max(
        (open6?.x ?? 0) - (names?.x ?? 0) - (names?.width ?? 0),
        (open6?.y ?? 0) - (names?.y ?? 0) - (names?.height ?? 0),
      );
      expect(gap).toBeGreaterThanOrEqual(0);
    });
  }
});

/** Bars, tones and the hand's ruler, and what one types in. */
const PLAYED_BY =
  '[data-chord-cell], [data-tone], .finger, .dimension-line, .numeral, textarea, .transport input';

test('the caution hides nothing that one plays by, and a large chord pushes nothing away', async ({
  page,
}) => {
  const progression = '| Ab13#11 | Gbm7b5/Bbb | Dm7 | G7 | C | F | Dm7 | G7 |';
  await open(page, { ...FOUR, progression });
  await page.keyboard.press('Shift+P');
  const note = page.getByRole('note', { name: 'Hearing' });
  await expect(note).toBeVisible();
  const covered = () =>
    note.evaluate((one, played) => {
      const { left, right, top, bottom } = one.getBoundingClientRect();
      const pane = document.querySelector('.neck-pane')?.getBoundingClientRect();
      const end = one.matches('.upright') ? (pane?.bottom ?? 0) : window.innerHeight;
      return [...document.querySelectorAll(played)].filter((part) => {
        const box = part.getBoundingClientRect();
        const low = Math.min(box.bottom, part.closest('.neck') ? end : box.bottom);
        const seen = box.width > 0 && box.top < low;
        return seen && box.left < right && box.right > left && box.top < bottom && low > top;
      }).length;
    }, PLAYED_BY);
  // The letters themselves end above the edge of their box.
  const pushed = (part: string) =>
    page.locator(part).evaluate((one) => {
      const neck = document.querySelector('.neck-pane')?.getBoundingClientRect().top ?? 0;
      return Math.max(0, one.getBoundingClientRect().bottom - neck - 4);
    });
  // A tone is seen whole or not at all; its letters end above the edge of its box.
  const cut = () =>
    page.locator('.chord-tones > div').evaluateAll((all) => {
      const within = all[0]?.parentElement?.getBoundingClientRect();
      const bottom = within?.bottom ?? 0;
      return all.filter((one) => {
        const tone = one.getBoundingClientRect();
        return tone.top < bottom - 2 && tone.bottom > bottom + 4;
      }).length;
    });
  await page.keyboard.press('Shift+P');
  for (const size of SIZES) {
    await page.setViewportSize(size);
    await expect.poll(covered, `${size.width} by ${size.height}`).toBe(0);
  }
  await page.keyboard.press('Shift+P');
  for (const size of SIZES) {
    await test.step(`${size.width} by ${size.height}`, async () => {
      await page.setViewportSize(size);
      if (size.width > 500) await expect.poll(cut).toBe(0);
      await expect.poll(covered).toBe(0);
      for (const part of size.width > 500 ? ['.now', '.form-name', '.next-form'] : [])
        await expect.poll(() => pushed(part), part).toBe(0);
    });
  }
});

/** Minutes of arc that a capital takes at two metres, its type in CSS pixels (96 to the inch). */
const arcOf = (type: number): number =>
  (Math.atan((type * 0.67 * 25.4) / 96 / 2000) * 180 * 60) / Math.PI;

// Visual acuity 1.0 tells signs of 5 minutes of arc apart (ISO 8596); 16 are the least for reading at
// ease (ISO 9241-303). Both from memory.
const SEEN = 5;
const READ = 16;
/** Type of a label of one or two signs, of the height of its mark (tests/ui/neck/marks.test.ts). */
const LABEL = 0.47;

test('the practice screen is read from two metres', async ({ page }) => {
  await open(page, FOUR);
  const type = (part: string) =>
    page.locator(part).evaluateAll((all) => {
      const sizes = all.map((one) => Number.parseFloat(getComputedStyle(one).fontSize));
      return Math.min(...sizes);
    });
  for (const size of SIZES.filter(({ width }) => width >= 1024)) {
    await test.step(`${size.width} by ${size.height}`, async () => {
      await reopen(page, size);
      await page.keyboard.press('Shift+P');
      for (const part of ['.now', '.form-name'])
        expect(arcOf(await type(part)), part).toBeGreaterThanOrEqual(READ);
      for (const part of ['.next-chord .symbol', '.next-form', '.form-place', '.chord-tones dd'])
        expect(arcOf(await type(part)), part).toBeGreaterThanOrEqual(READ / 2);
      for (const part of ['.cell .symbol', '.cell-form', '.fret-number', '.string-name', '.finger'])
        expect(arcOf(await type(part)), part).toBeGreaterThanOrEqual(SEEN);
      const marks = await page
        .locator('[data-tone][data-reach="hand"]')
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
      const labels = Math.min(...marks) * LABEL;
      expect(arcOf(labels), 'labels of tones').toBeGreaterThanOrEqual(SEEN);
    });
  }
});

test('in a low window chord, neck and transport are in sight while it plays', async ({ page }) => {
  await page.setViewportSize({ width: 844, height: 390 });
  await open(page, FOUR);
  const neck = page.locator('[data-neck] .hand-wash');
  // What is told moves nothing.
  const before = await page.locator('.lane').boundingBox();
  await page.keyboard.press('<');
  await expect(page.locator('.sound-now')).toHaveText(/95 %/);
  expect(await page.locator('.lane').boundingBox()).toEqual(before);
  await page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
  await expect(neck).not.toBeInViewport();
  await button(page, 'Play').click();
  await expect(neck).toBeInViewport({ ratio: 1 });
  await expect(page.locator('.now')).toBeInViewport({ ratio: 1 });
  await expect(button(page, 'Stop')).toBeInViewport({ ratio: 1 });
});

test('on a telephone all that differs from plain playing is told beside the keys', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(page, { ...FOUR, progression: '|: Dm7 | G7 :| Cmaj7 | A7 |' });
  await setTempo(page, '300');
  await page.keyboard.press('Shift+P');
  await page.keyboard.press('-');
  await page.keyboard.press('-');
  await button(page, 'Play').click();
  const told = page.locator('.sound-now');
  await expect(told).toHaveText(/^270 bpm · .*90 %$/);
  await expect(page.locator('.beats b')).toBeVisible();
  const outside = () =>
    told.evaluate((one) => {
      const { right, bottom } = one.getBoundingClientRect();
      return [...one.children].filter((part) => {
        const box = part.getBoundingClientRect();
        return box.right > right + 4 || box.bottom > bottom;
      }).length;
    });
  expect(await outside()).toBe(0);
  // On the sheet there are three short lines, all of them beside the beat.
  await page.keyboard.press('Escape');
  await expect(page.getByRole('textbox', { name: 'Progression' })).toBeVisible();
  const left = await told
    .locator('span')
    .evaluateAll(
      (all) => new Set(all.map((one) => Math.round(one.getBoundingClientRect().left))).size,
    );
  expect(left).toBe(1);
});
