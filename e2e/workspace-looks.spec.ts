import type { Page } from '@playwright/test';
import { axe, axeOnColours, expect, reopen, test } from './fixtures.ts';

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
  const colours = page.getByRole('group', { name: 'Colours', exact: true });
  await colours.getByRole('button', { name: theme, exact: true }).click();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
}

for (const size of SIZES) {
  test(`axe finds nothing at ${size.width} pixels, in any theme`, async ({ page }) => {
    await page.setViewportSize(size);
    await page.goto(`./#${STATE}`);
    for (const theme of ['light', 'dark', 'high contrast']) {
      await setTheme(page, theme);
      await test.step(theme, () => (theme === 'light' ? axe : axeOnColours)(page));
    }
  });
}

test('axe finds nothing in the settings and in the sheet of keys', async ({ page }) => {
  await page.goto(`./#${STATE}`);
  await page.getByRole('button', { name: 'Settings', exact: true }).click();
  await expect(page.getByRole('textbox', { name: 'Frets' })).toBeVisible();
  await axe(page);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Keys and words', exact: true }).click();
  await expect(page.getByRole('dialog', { name: 'Keys and words' })).toBeVisible();
  await axe(page);
});

// WCAG 2.2, 1.4.10: no scrolling in two directions at 320 pixels; 2.5.8: targets of 24 by 24 pixels.
test('nothing reaches beyond the sides of the page, and every button is large enough to hit', async ({
  page,
}) => {
  await page.goto(`./#${STATE}`);
  await expect(page.locator('[data-neck] svg')).toBeVisible();
  for (const size of [
    ...SIZES,
    ...[320, 390, 1024, 1920].map((width) => ({ width, height: 800 })),
  ]) {
    const at = `at ${size.width} by ${size.height}`;
    await reopen(page, size);
    const beyond = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(beyond, at).toBe(0);
    const small = await page.locator('button:visible, summary:visible').evaluateAll((all) =>
      all.flatMap((one) => {
        const { width: wide, height } = one.getBoundingClientRect();
        return wide < 24 || height < 23.9 ? [`${one.textContent} ${wide}×${height}`] : [];
      }),
    );
    expect(small, at).toEqual([]);
  }
});

const EIGHT_BARS = '| Bm7 | E7 | Amaj7 | F#m7 | Dm7/G G7alt | Cmaj7 | D9sus4 G13 | Ab13#11 |';

const SCREENS = [
  { width: 1024, height: 768 },
  { width: 1280, height: 720 },
  { width: 1440, height: 900 },
  { width: 1920, height: 1080 },
] as const;

test('eight bars, head, neck and toolbar fit on a screen', async ({ page }) => {
  await page.goto(
    `./#${new URLSearchParams({ progression: EIGHT_BARS, at: '5.1', position: '7' })}`,
  );
  await expect(page.locator('[data-neck] svg')).toBeVisible();
  for (const size of SCREENS) {
    await test.step(`${size.width} by ${size.height}`, async () => {
      await reopen(page, size);
      const tools = await page.getByRole('region', { name: 'Hand and labels' }).boundingBox();
      expect((tools?.y ?? 0) + (tools?.height ?? size.height)).toBeLessThanOrEqual(size.height);
      const lane = page.getByRole('region', { name: 'Chords' });
      const hidden = await lane.evaluate((one) => one.scrollHeight - one.clientHeight);
      expect(hidden).toBeLessThanOrEqual(1);
    });
  }
});

test('a chart too long for the screen scrolls inside itself and says so', async ({ page }) => {
  const progression = '| Am7 | D7 | Gmaj7 | Cmaj7 |'.repeat(8);
  await page.goto(`./#${new URLSearchParams({ progression, at: '1.1', position: '5' })}`);
  await expect(page.getByText('more bars below')).toBeVisible();
  const tools = await page.getByRole('region', { name: 'Hand and labels' }).boundingBox();
  expect((tools?.y ?? 0) + (tools?.height ?? 900)).toBeLessThanOrEqual(900);
  await page.keyboard.press('End');
  await expect(page.getByText('more bars below')).toBeHidden();
  await expect(page.getByText('more bars above')).toBeVisible();
  await expect(page.locator('[data-chord-cell][aria-current="true"]')).toBeInViewport();
});

test('all tones of a large chord stand in the head', async ({ page }) => {
  const progression = '| Ab13#11 | Abm13/D |';
  await page.goto(`./#${new URLSearchParams({ progression, at: '1.1', position: '7' })}`);
  for (const width of [320, 390, 800, 1024, 1280, 1920]) {
    await reopen(page, { width, height: 900 });
    for (const [key, tones] of [
      ['ArrowLeft', 7],
      ['ArrowRight', 8],
    ] as const) {
      await page.keyboard.press(key);
      await expect(page.locator('.chord-tones dd')).toHaveCount(tones);
      const outside = await page.locator('.chord-tones > div').evaluateAll((all) => {
        const head = all[0]?.closest('.head')?.getBoundingClientRect();
        return all.filter((one) => {
          const { right, bottom } = one.getBoundingClientRect();
          return head === undefined || right > head.right + 0.5 || bottom > head.bottom + 0.5;
        }).length;
      });
      expect(outside, `of ${tones} at ${width}`).toBe(0);
    }
  }
});

test('on a telephone a tapped chord, its form and the neck around the hand are seen together', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(
    `./#${new URLSearchParams({ progression: EIGHT_BARS, at: '1.1', position: '12' })}`,
  );
  await page.locator('[data-chord-cell]').nth(1).click();
  await expect(page.locator('.now')).toBeInViewport({ ratio: 1 });
  await expect(page.locator('.form-name')).toBeInViewport({ ratio: 1 });
  await expect(page.locator('.hand-wash')).toBeInViewport({ ratio: 0.9 });
  await page.keyboard.press('ArrowDown');
  await expect(page.locator('[data-neck]')).toHaveAttribute('data-position', '11');
  await expect(page.locator('.hand-wash')).toBeInViewport({ ratio: 0.9 });
  // Scrolled away from the hand by hand, the neck comes back to it with the next chord.
  await page.locator('.neck-pane').evaluate((pane) => pane.scrollTo(0, 0));
  await expect(page.locator('.hand-wash')).not.toBeInViewport({ ratio: 0.5 });
  await page.getByRole('button', { name: 'Next chord in the chart' }).click();
  await expect(page.locator('.hand-wash')).toBeInViewport({ ratio: 0.9 });
  // At the nut the open strings and their names are seen, and the hand to its end.
  await page.locator('.hand-handle').press('Home');
  await expect(page.locator('.hand-wash')).toBeInViewport({ ratio: 0.98 });
  for (const part of ['.string-name', '[data-tone][data-fret="0"]'])
    await expect(page.locator(part).first()).toBeInViewport({ ratio: 0.9 });
});

test('on a telephone the hand and its form are changed in sight of neck and reading', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  const progression = `[A]\n${EIGHT_BARS.replaceAll(' | ', ' |\n| ')}`;
  await page.goto(`./#${new URLSearchParams({ progression, at: '1.1', position: '5' })}`);
  await expect(page.locator('[data-neck] svg')).toBeVisible();
  const foot = await page.getByRole('region', { name: 'Next chord', exact: true }).boundingBox();
  for (const part of ['.hand-wash', '.stepper:has(output)', '.choice:has([aria-pressed])']) {
    const box = await page.locator(part).first().boundingBox();
    expect((box?.y ?? 844) + (box?.height ?? 0)).toBeLessThanOrEqual(foot?.y ?? 0);
  }
  const pane = await page.locator('.neck-pane').boundingBox();
  expect((pane?.y ?? 844) + (pane?.height ?? 0)).toBeLessThanOrEqual(foot?.y ?? 0);
  // At least the first two lines of it.
  const reading = await page.getByRole('status', { name: 'Reading' }).boundingBox();
  expect((reading?.y ?? 844) + 34).toBeLessThanOrEqual(foot?.y ?? 0);
  // The typed text unfolds while one types, and a tap on a chord after that still finds it.
  const field = page.getByRole('textbox', { name: 'Progression' });
  const folded = await field.boundingBox();
  await field.click();
  const high = async () => (await field.boundingBox())?.height;
  expect(await high()).toBeGreaterThan(2 * (folded?.height ?? 844));
  const second = page.locator('[data-chord-cell]').nth(1);
  await second.click();
  await expect(second).toHaveAttribute('aria-current', 'true');
  await expect.poll(high).toBe(folded?.height);
  // Lines that the box breaks count like those that are typed, and no line is cut.
  await field.fill(EIGHT_BARS + EIGHT_BARS);
  const unseen = () => field.evaluate((box) => box.scrollHeight - box.clientHeight);
  expect(await unseen()).toBe(0);
  expect(await high()).toBeGreaterThan(folded?.height ?? 844);
  await second.click();
  await expect.poll(high).toBe(folded?.height);
  const lines = () =>
    field.evaluate((box) => {
      const { lineHeight, paddingTop } = getComputedStyle(box);
      return (box.clientHeight - 2 * Number.parseFloat(paddingTop)) / Number.parseFloat(lineHeight);
    });
  expect(await lines()).toBeCloseTo(2, 1);
  // A mistake is told to its end.
  await field.fill('|: Dm | Hm7 | banana | A7 :|');
  const mistakes = page.getByRole('list', { name: 'What could not be read' });
  await expect(mistakes.getByText('banana')).toBeVisible();
  expect(await mistakes.evaluate((list) => list.scrollHeight - list.clientHeight)).toBe(0);
  await field.fill(progression);
  await second.click();
  await expect.poll(high).toBe(folded?.height);
  await page.getByRole('button', { name: 'notes' }).click();
  await expect(page.locator('.hand-wash')).toBeInViewport({ ratio: 0.9 });
});

test('on a telephone on its side chord, lane, form and the whole hand are seen', async ({
  page,
}) => {
  await page.setViewportSize({ width: 844, height: 390 });
  await page.goto(`./#${STATE}`);
  for (const part of ['.chart-text', '.now', '.form-name'])
    await expect(page.locator(part)).toBeInViewport({ ratio: 1 });
  // Of a drawn rectangle the browser computes a share that may be a rounding short of the whole.
  await expect(page.locator('.hand-wash')).toBeInViewport({ ratio: 0.9999 });
  await expect(page.locator('[data-chord-cell]').first()).toBeInViewport({ ratio: 1 });
  // The neck, which comes after it, paints over what hangs out of the head.
  const hanging = () =>
    page.locator('.next button').evaluateAll((arrows) => {
      const head = arrows[0]?.closest('.head-slot')?.getBoundingClientRect().bottom ?? 0;
      return arrows.filter((arrow) => arrow.getBoundingClientRect().bottom > head).length;
    });
  expect(await hanging()).toBe(0);
  for (const width of [844, 720]) {
    await page.setViewportSize({ width, height: 360 });
    // The neck is drawn anew in the frame after the window has changed.
    const beyond = () =>
      page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
    await expect.poll(beyond).toBe(0);
  }
});

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
  await expect(
    page.getByText(/^Key .+ · strings E A D G B E · no capo · position VII$/),
  ).toBeVisible();
  await expect(page.getByRole('textbox', { name: 'Progression' })).toBeHidden();
  await expect(page.getByRole('button', { name: 'Undo' })).toBeHidden();
});

test('where the system chooses the colours the cursor in the lane is seen', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  await page.goto(`./#${STATE}`);
  const cell = page.locator('[data-chord-cell]').first();
  await expect(cell).toBeVisible();
  // What marks it lies under the cell.
  const plates = await cell.evaluate((one) => {
    const inside = [one, ...one.querySelectorAll('*')];
    return inside
      .filter(({ className }) => !/share/.test(className))
      .map((e) => getComputedStyle(e).backgroundColor);
  });
  expect([...new Set(plates)]).toEqual(['rgba(0, 0, 0, 0)']);
  await expect(page.locator('.lane-mark')).toHaveCSS('background-image', /gradient/);
});

test('the page does not move where motion is not wanted', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await page.goto(`./#${STATE}`);
  const moving = await page.evaluate(() => document.getAnimations().length);
  expect(moving).toBe(0);
});

const WINDOWS = [
  { width: 1440, height: 757, rows: 2 },
  { width: 1280, height: 800, rows: 3 },
  { width: 1024, height: 700, rows: 2 },
  { width: 390, height: 844, rows: 1 },
] as const;

test('whole rows of the lane fill its height, and none is cut', async ({ page }) => {
  const progression = '| Am7 | D7 | Gmaj7 | Cmaj7 |'.repeat(8);
  await page.goto(`./#${new URLSearchParams({ progression, at: '1.1', position: '5' })}`);
  for (const { rows, ...size } of WINDOWS) {
    await test.step(`${size.width} by ${size.height}`, async () => {
      await reopen(page, size);
      await expect(page.getByText('more bars below')).toBeVisible();
      const cells = page.locator('[data-chord-cell]');
      for (const at of [0, 5, 17]) {
        await cells.nth(at).evaluate((cell) => (cell as HTMLElement).click());
        const cut = await cells.evaluateAll((all) => {
          const lane = all[0]?.closest('.lane')?.getBoundingClientRect();
          if (lane === undefined) return ['no lane'];
          return all.flatMap((cell) => {
            const { top, bottom } = cell.getBoundingClientRect();
            const out = bottom <= lane.top + 5 || top >= lane.bottom - 5;
            return out || (top >= lane.top - 1 && bottom <= lane.bottom + 1)
              ? []
              : [top - lane.top];
          });
        });
        expect(cut).toEqual([]);
      }
      const lane = await page.getByRole('region', { name: 'Chords' }).boundingBox();
      const bottom = (lane?.y ?? 0) + (lane?.height ?? 0);
      const tops = await page
        .locator('.row:visible')
        .evaluateAll((all) =>
          all.map((row) => ({ top: row.getBoundingClientRect().top, high: row.clientHeight })),
        );
      const inSight = tops.filter(({ top }) => top >= (lane?.y ?? 0) - 1 && top < bottom - 5);
      expect(inSight).toHaveLength(rows);
      // No band stands empty below them, and the word that the lane goes on covers no bar.
      const last = inSight.at(-1);
      expect(bottom - (last?.top ?? 0) - (last?.high ?? 0)).toBeLessThan(2);
      const foot = await page.locator('.progression').boundingBox();
      expect((foot?.y ?? 0) + (foot?.height ?? 0) - bottom).toBeLessThanOrEqual(17);
      const word = await page.getByText('more bars below').boundingBox();
      expect(word?.y ?? 0).toBeGreaterThanOrEqual(bottom - 0.5);
    });
  }
});

test('mistakes in the chart take nothing of the text box, and each is told in its turn', async ({
  page,
}) => {
  await page.goto(
    `./#${new URLSearchParams({ progression: '| C | Am |', at: '1.1', position: '5' })}`,
  );
  const field = page.getByRole('textbox', { name: 'Progression' });
  const before = await field.boundingBox();
  await field.fill('| Xyz | Hm | Qsus |');
  const mistakes = page.getByRole('list', { name: 'What could not be read' });
  await expect(mistakes).toBeVisible();
  expect(await field.boundingBox()).toEqual(before);
  for (const [turn, symbol] of ['Xyz', 'Hm', 'Qsus', 'Xyz'].entries()) {
    const next = mistakes.getByRole('button', { name: `${(turn % 3) + 1} of 3, next` });
    await expect(next).toBeInViewport({ ratio: 1 });
    await expect(mistakes.getByRole('listitem').first()).toContainText(symbol);
    await next.click();
  }
});

test('how to write a chart is read beside the box that one types in', async ({ page }) => {
  await page.goto(`./#${STATE}`);
  for (const width of [390, 800, 1024, 1440]) {
    await test.step(`at ${width}`, async () => {
      await reopen(page, { width, height: 800 });
      await page.getByText('How to write a chart').click();
      const help = page.locator('.field .menu-sheet');
      await expect(help.getByText('first and second ending')).toBeVisible();
      const field = page.getByRole('textbox', { name: 'Progression' });
      await field.fill('| C | Am |');
      const [box, sheet] = [await field.boundingBox(), await help.boundingBox()];
      if (box === null || sheet === null) throw new Error('no box');
      const beside = sheet.x >= box.x + box.width;
      expect(beside || sheet.y >= box.y + box.height).toBe(true);
      expect(beside).toBe(width >= 960);
      expect(sheet.x + sheet.width).toBeLessThanOrEqual(width);
      await page.locator('.wordmark').click();
      await expect(help).toBeHidden();
    });
  }
});

test('the page keeps still behind an open sheet', async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 600 });
  await page.goto(`./#${STATE}`);
  await page.getByRole('button', { name: 'Keys and words', exact: true }).click();
  const sheet = page.getByRole('dialog', { name: 'Keys and words' });
  await expect(sheet.getByRole('table', { name: 'Study' })).toBeAttached();
  await page.mouse.move(5, 300);
  await page.mouse.wheel(0, 400);
  await sheet.hover();
  await page.mouse.wheel(0, 9000);
  await page.mouse.wheel(0, 400);
  await expect.poll(() => sheet.evaluate((one) => one.scrollTop)).toBeGreaterThan(0);
  expect(await page.evaluate(() => window.scrollY)).toBe(0);
});
