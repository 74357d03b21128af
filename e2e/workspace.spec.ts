import type { Page } from '@playwright/test';
import { expect, reopen, test } from './fixtures.ts';

const cells = (page: Page) => page.locator('[data-chord-cell]');
const current = (page: Page) => page.locator('[data-chord-cell][aria-current="true"]');
const neck = (page: Page) => page.locator('[data-neck]');
const field = (page: Page) => page.getByRole('textbox', { name: 'Progression' });
const reading = (page: Page) => page.getByRole('status', { name: 'Reading' });

const symbols = (page: Page): Promise<(string | null)[]> =>
  cells(page).evaluateAll((list) => list.map((cell) => cell.getAttribute('data-symbol')));

const hashOf = (page: Page): Promise<Record<string, string>> =>
  page.evaluate(() => Object.fromEntries(new URLSearchParams(location.hash.slice(1))));

const open = (page: Page, state: Record<string, string>) =>
  page.goto(`./#${new URLSearchParams(state)}`);

const TURNAROUND = '| Cmaj7 | A7 | Dm7 | G7 |';

test('a first visit finds an example on the neck, ready to be played with', async ({ page }) => {
  await page.goto('./');
  await expect(current(page)).toHaveAttribute('data-at', '1.1');
  await expect(field(page)).not.toHaveValue('');
  expect(await page.locator('[data-tone]').count()).toBeGreaterThan(20);
  await expect(reading(page)).toContainText('position');
});

test('moving the cursor changes the reading and leaves the hand where it is', async ({ page }) => {
  await open(page, { progression: TURNAROUND, at: '1.1', position: '5' });
  await expect(neck(page)).toHaveAttribute('data-symbol', 'Cmaj7');
  const before = await reading(page).textContent();
  await page.keyboard.press('ArrowRight');
  await expect(current(page)).toHaveAttribute('data-symbol', 'A7');
  await expect(neck(page)).toHaveAttribute('data-symbol', 'A7');
  await expect(neck(page)).toHaveAttribute('data-position', '5');
  await expect(reading(page)).not.toHaveText(before ?? '');
  await page.keyboard.press('End');
  await expect(current(page)).toHaveAttribute('data-at', '4.1');
  await page.keyboard.press('Home');
  await expect(current(page)).toHaveAttribute('data-at', '1.1');
});

test('a click on a chord puts the cursor there, and arrow keys go on from it', async ({ page }) => {
  await open(page, { progression: TURNAROUND, at: '1.1', position: '5' });
  await cells(page).nth(2).click();
  await expect(current(page)).toHaveAttribute('data-symbol', 'Dm7');
  await page.keyboard.press('ArrowLeft');
  await expect(current(page)).toHaveAttribute('data-symbol', 'A7');
  await expect(current(page)).toBeFocused();
});

test('Escape gives the keys back from the text to the cursor, and changes nothing', async ({
  page,
}) => {
  await open(page, { progression: TURNAROUND, at: '1.1', position: '5' });
  await field(page).click();
  await page.keyboard.press('Control+End');
  await expect(current(page)).toHaveAttribute('data-at', '4.1');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Home');
  await expect(current(page)).toHaveAttribute('data-at', '1.1');
  await expect(field(page)).toHaveValue(TURNAROUND);
});

test('the whole lane is one tab stop, and tab goes on to what is next', async ({ page }) => {
  await open(page, { progression: TURNAROUND, at: '2.1', position: '5' });
  await expect(cells(page)).toHaveCount(4);
  expect(await page.locator('[data-chord-cell][tabindex="0"]').count()).toBe(1);
  await current(page).focus();
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.closest('.lane') === null)).toBe(true);
});

test('typed text and lane are two faces of one thing', async ({ page }) => {
  await page.goto('./');
  await field(page).fill('| Dm7 | G7#9 C/E |');
  expect(await symbols(page)).toEqual(['Dm7', 'G7#9', 'C/E']);
  await field(page).press('Home');
  await expect(current(page)).toHaveAttribute('data-symbol', 'Dm7');
  await field(page).press('End');
  await expect(current(page)).toHaveAttribute('data-symbol', 'C/E');
});

test('the last good reading stays on the neck while one types', async ({ page }) => {
  await page.goto('./');
  await field(page).fill('| Am7 |');
  await expect(neck(page)).toHaveAttribute('data-symbol', 'Am7');
  const tones = await page.locator('[data-tone]').count();
  await field(page).fill('| Am7zz |');
  await expect(current(page)).toHaveAttribute('data-error', /Am7zz/);
  expect(await page.locator('[data-tone]').count()).toBe(tones);
});

test('a chord that means nothing says why and what was probably meant', async ({ page }) => {
  await page.goto('./');
  await field(page).fill('| Am | Hm | C |');
  const bad = cells(page).nth(1);
  await expect(bad).toHaveAttribute('data-error', /expected a root from A to G/);
  await expect(page.getByText('1:8')).toBeVisible();
  await expect(cells(page).nth(2)).toHaveAttribute('data-form', /./);
  await page.getByRole('button', { name: 'Bm?' }).first().click();
  await expect(field(page)).toHaveValue('| Am | Bm | C |');
  await expect(page.locator('[data-error]')).toHaveCount(0);
});

test('markup in a chart is text like any other', async ({ page }) => {
  await page.goto('./');
  await field(page).fill('[<b>Verse</b>]\n| <img/src=x/onerror=alert(1)> | C |');
  await expect(cells(page).last()).toHaveAttribute('data-symbol', 'C');
  await expect(page.locator('main img, main b:has-text("Verse")')).toHaveCount(0);
});

test('undo and redo go over everything, by button and by key', async ({ page }) => {
  await open(page, { progression: TURNAROUND, at: '1.1', position: '5' });
  await field(page).fill('| E7 |');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(field(page)).toHaveValue(TURNAROUND);
  await page.keyboard.press('Control+Shift+z');
  await expect(field(page)).toHaveValue('| E7 |');
  await page.keyboard.press('Control+z');
  await expect(field(page)).toHaveValue(TURNAROUND);
});

test('the address carries the state and opens it again', async ({ page }) => {
  await open(page, { progression: '| D | A |', at: '2.1', position: '14', show: 'b7,9,4' });
  await expect(current(page)).toHaveAttribute('data-symbol', 'A');
  await expect(neck(page)).toHaveAttribute('data-position', '14');
  await expect(page.locator('[data-tone][data-kind="colour"]').first()).toBeAttached();
  await page.keyboard.press('ArrowLeft');
  await page.getByRole('button', { name: 'Hand down a fret' }).click();
  await expect.poll(async () => (await hashOf(page))['position']).toBe('13');
  const hash = await hashOf(page);
  expect(hash).toMatchObject({ progression: '| D | A |', at: '1.1', show: 'b7,9,4' });
});

test('an address that makes no sense opens with the part that does, and says so', async ({
  page,
}) => {
  await open(page, { progression: '| Em |', at: '1.1', position: 'high', frets: '99' });
  await expect(neck(page)).toHaveAttribute('data-symbol', 'Em');
  await expect(page.getByRole('log', { name: 'Messages' })).toContainText('Left out');
});

test('what one was doing is there again after a reload', async ({ page }) => {
  await page.goto('./');
  await field(page).fill('| F#m7 | B7 |');
  await page.getByRole('button', { name: 'notes' }).click();
  await expect.poll(async () => (await hashOf(page))['progression']).toBe('| F#m7 | B7 |');
  // A page that is left for another process writes while that one begins already: which is first is open.
  const kept = () => page.evaluate(() => Object.values(localStorage).join());
  await expect.poll(kept).toContain('notes');
  await page.goto('about:blank');
  await page.goto('./');
  await expect(field(page)).toHaveValue('| F#m7 | B7 |');
  await expect(page.getByRole('button', { name: 'notes' })).toHaveAttribute('aria-pressed', 'true');
  await page.getByRole('button', { name: 'none', exact: true }).click();
  await page.reload();
  await expect(page.getByRole('button', { name: 'none', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
});

test('without storage the program works on and says that it cannot keep things', async ({
  page,
}) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'localStorage', {
      get: () => {
        throw new DOMException('denied', 'SecurityError');
      },
    });
  });
  await page.goto('./');
  await field(page).fill('| Gm7 |');
  await expect(neck(page)).toHaveAttribute('data-symbol', 'Gm7');
  await expect(page.getByRole('log', { name: 'Messages' })).toContainText('keep');
});

test('a refused setting is told at its field and the last good value stays', async ({ page }) => {
  await open(page, { progression: '| Em |', at: '1.1', position: '7' });
  await page.getByRole('button', { name: 'Settings', exact: true }).click();
  const tuning = page.getByRole('textbox', { name: 'Open strings' });
  await tuning.fill('E2-A2-X3-G3-B3-E4');
  await tuning.press('Enter');
  await expect(tuning).toHaveAttribute('aria-invalid', 'true');
  await expect(tuning).toHaveAccessibleDescription(/X3/);
  await expect(
    page.locator('[data-tone][data-string="6"][data-pitch^="E"]').first(),
  ).toBeAttached();
  await tuning.fill('D2-A2-D3-G3-B3-E4');
  await tuning.press('Enter');
  await expect(tuning).toHaveAttribute('aria-invalid', 'false');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toHaveCount(0);
  await expect.poll(async () => (await hashOf(page))['tuning']).toBe('D2-A2-D3-G3-B3-E4');
});

test('an emptied number says what is expected and the last good value stays', async ({ page }) => {
  await open(page, { progression: '| Em |', at: '1.1', position: '7' });
  await page.getByRole('button', { name: 'Settings', exact: true }).click();
  const frets = page.getByRole('textbox', { name: 'Frets' });
  await frets.fill('');
  await frets.press('Enter');
  await expect(frets).toHaveAccessibleDescription(
    'Nothing is typed: expected a whole number from 12 to 27',
  );
  await frets.fill('many');
  await frets.press('Enter');
  await expect(frets).toHaveAccessibleDescription(/^“many”/);
  await expect(page.getByRole('dialog')).not.toContainText('NaN');
  await frets.fill('24');
  await frets.press('Enter');
  await expect(frets).toHaveAttribute('aria-invalid', 'false');
  await frets.press('ArrowDown');
  await expect(frets).toHaveValue('23');
  await page.keyboard.press('Escape');
  await expect.poll(async () => (await hashOf(page))['frets']).toBe('23');
});

test('keys go on working after a click on a form, a label, a colour or a menu', async ({
  page,
}) => {
  await open(page, { progression: TURNAROUND, at: '1.1', position: '5' });
  const tools = page.getByRole('region', { name: 'Hand and labels' });
  const form = tools.getByRole('button', { name: 'G', exact: true });
  await form.click();
  await expect(form).toHaveAttribute('aria-pressed', 'true');
  await expect(neck(page)).toHaveAttribute('data-form', 'G');
  await page.keyboard.press('ArrowRight');
  await expect(current(page)).toHaveAttribute('data-at', '2.1');
  await page.keyboard.press('0');
  await expect(tools.getByRole('button', { name: 'best' })).toHaveAttribute('aria-pressed', 'true');
  await form.click();
  await page.keyboard.press('Escape');
  await expect(form).toHaveAttribute('aria-pressed', 'false');
  await tools.getByRole('button', { name: 'notes' }).click();
  await page.keyboard.press('l');
  await expect(tools.getByRole('button', { name: 'fingers' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await tools.getByRole('button', { name: '♭9' }).click();
  await page.keyboard.press('ArrowRight');
  await expect(current(page)).toHaveAttribute('data-at', '3.1');
  await page.getByText('Examples').click();
  await page.getByRole('button', { name: /Blues/ }).click();
  await page.keyboard.press('ArrowRight');
  await expect(current(page)).toHaveAttribute('data-at', '2.1');
});

test('the head names the form as large as the chord, and the bass of a slash chord', async ({
  page,
}) => {
  await open(page, { progression: '| Bm7 | Dm7/G |', at: '1.1', position: '7' });
  const head = page.getByRole('region', { name: 'Chord under the cursor' });
  await expect(head).toContainText('E form at VII 6 of 6 places');
  const sizes = await head
    .locator('.now, .form-name')
    .evaluateAll((all) => all.map((one) => getComputedStyle(one).fontSize));
  expect(new Set(sizes).size).toBe(1);
  await page.keyboard.press('ArrowRight');
  await expect(head.locator('.bass')).toHaveText(/bass\s*G/);
});

test('the sheet of keys opens by its key and lists what the keys do', async ({ page }) => {
  await page.goto('./');
  await page.keyboard.press('?');
  const sheet = page.getByRole('dialog', { name: 'Keys and words' });
  await expect(sheet).toContainText('Next chord');
  await page.keyboard.press('Escape');
  await expect(sheet).toHaveCount(0);
});

test('an example from the menu is put on the neck', async ({ page }) => {
  await page.goto('./');
  const before = await field(page).inputValue();
  await page.getByText('Examples').click();
  await page.getByRole('button', { name: /Blues/ }).click();
  await expect(field(page)).not.toHaveValue(before);
  await expect(page.locator('[data-error]')).toHaveCount(0);
});

test('the whole chart moves to another key, spelled as that key would', async ({ page }) => {
  await open(page, { progression: '| C | Am | F | G7 |', at: '1.1', position: '1' });
  await page
    .getByRole('navigation')
    .getByText(/^Key C major/)
    .click();
  await page.getByRole('combobox', { name: 'Move everything to' }).selectOption('Eb major');
  expect(await symbols(page)).toEqual(['Eb', 'Cm', 'Ab', 'Bb7']);
});

test('of keys pressed before everything is fetched those are kept that mean nothing yet', async ({
  page,
}) => {
  let release = (): void => undefined;
  const released = new Promise<void>((done) => {
    release = done;
  });
  await page.route(/\/parts-[^/]*\.js$/, async (route) => {
    await released;
    await route.continue();
  });
  await page.goto(`./#${new URLSearchParams({ progression: '| C | F | G7 |', at: '1.1' })}`);
  await expect(current(page)).toHaveAttribute('data-at', '1.1');
  // It leads nowhere from the first chord, now and later.
  await page.keyboard.press('Home');
  await page.keyboard.press('Shift+B');
  await page.keyboard.press('End');
  await expect(current(page)).toHaveAttribute('data-at', '3.1');
  release();
  await expect(page.getByRole('button', { name: 'Bends', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await expect(current(page)).toHaveAttribute('data-at', '3.1');
});

test('the box of the chart cuts no line where it shares the height of the lane', async ({
  page,
}) => {
  const progression = '[A]\n| C | Am |\n| F | G |\n| C | F |\n| C | G |\n| C |';
  await page.goto(`./#${new URLSearchParams({ progression, at: '1.1', position: '5' })}`);
  for (const size of [
    { width: 1180, height: 820 },
    { width: 1366, height: 768 },
  ]) {
    await reopen(page, size);
    const lines = await page.getByRole('textbox', { name: 'Progression' }).evaluate((box) => {
      const { lineHeight, paddingTop } = getComputedStyle(box);
      return (box.clientHeight - 2 * Number.parseFloat(paddingTop)) / Number.parseFloat(lineHeight);
    });
    expect(Math.abs(lines - Math.round(lines))).toBeLessThan(0.06);
  }
});
