import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { loudest } from './ear.ts';
import { axe, expect, test } from './fixtures.ts';
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

/** −1 dBFS: the limiter lets nothing louder through. */
const CEILING = 10 ** (-1 / 20);
/** Far above the noise of a silent page, far below a struck string. */
const AUDIBLE = 0.003;

/** The bars that the cursor comes to, in order, until there are so many. */
async function barsPassed(page: Page, count: number): Promise<readonly string[]> {
  const seen: string[] = [];
  await expect
    .poll(
      async () => {
        const at = (await current(page).getAttribute('data-at')) ?? '';
        if (seen.at(-1) !== at) seen.push(at);
        return seen.length;
      },
      { timeout: 25_000, intervals: [40] },
    )
    .toBeGreaterThanOrEqual(count);
  return seen.slice(0, count);
}

test('the music is heard, and cursor, lane and neck follow it', async ({ page }) => {
  await open(page, FOUR);
  await setTempo(page, '200');
  await button(page, 'Play').click();
  expect(await barsPassed(page, 4)).toEqual(['1.1', '2.1', '3.1', '4.1']);
  await expect(page.locator('[data-neck]')).toHaveAttribute('data-symbol', 'A7');
  const level = await loudest(page);
  expect(level).toBeGreaterThan(AUDIBLE);
  expect(level).toBeLessThanOrEqual(CEILING);
});

test('when the music is over the cursor is where it began; stopped, it stays', async ({ page }) => {
  await open(page, { ...FOUR, at: '3.1' });
  await setTempo(page, '300');
  await page.getByRole('button', { name: /^Round and round/ }).click();
  await button(page, 'Play').click();
  await expect(current(page)).toHaveAttribute('data-at', '4.1');
  await expect(current(page)).toHaveAttribute('data-at', '3.1');
  await expect(button(page, 'Stop')).toHaveAttribute('aria-disabled', 'true');
  await setTempo(page, '60');
  await button(page, 'Play').click();
  await expect(button(page, 'Stop')).toHaveAttribute('aria-disabled', 'false');
  await button(page, 'Stop').click();
  await expect(current(page)).toHaveAttribute('data-at', '3.1');
});

test('bars are looped, and the next chord is the one at their beginning', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await open(page, { ...FOUR, at: '2.1' });
  await loop(page).fill('2-3');
  await loop(page).press('Enter');
  await setTempo(page, '260');
  for (let i = 0; i < 2; i += 1) await page.keyboard.press('<');
  await button(page, 'Play').click();
  expect(await barsPassed(page, 5)).toEqual(['2.1', '3.1', '2.1', '3.1', '2.1']);
  // Where there is little room, what changes is told first, and nothing is cut.
  const told = page.locator('.sound-now span');
  await expect(told).toHaveText([/^234 bpm/, /^round \d/, '90 %']);
  const isCut = (room: Element): boolean => {
    const { right, bottom } = room.getBoundingClientRect();
    const parts = [...room.querySelectorAll('.sound-now span')];
    const boxes = parts.map((part) => part.getBoundingClientRect());
    return boxes.some((box) => box.right > right + 0.5 || box.bottom > bottom + 0.5);
  };
  expect(await page.locator('.now-playing').evaluate(isCut)).toBe(false);
});

test('without a loop it goes round and round, and a loop elsewhere is gone to before the count', async ({
  page,
}) => {
  await open(page, { ...FOUR, at: '3.1' });
  await setTempo(page, '300');
  await button(page, 'Play').click();
  expect(await barsPassed(page, 4)).toEqual(['3.1', '4.1', '1.1', '2.1']);
  await button(page, 'Stop').click();
  await page.locator('[data-chord-cell]').first().click();
  await loop(page).fill('3-4');
  await loop(page).press('Enter');
  await expect(page.locator('.bar.looped .loop-sign')).toHaveText(['loop', 'loop']);
  await setTempo(page, '40');
  await button(page, 'Play').click();
  await expect(page.locator('.beats.counting')).toBeVisible();
  await expect(current(page)).toHaveAttribute('data-at', '3.1');
  await expect(page.getByRole('region', { name: 'Next chord', exact: true })).toContainText('A');
});

test('the tempo that is heard is told beside the transport', async ({ page }) => {
  await open(page, FOUR);
  const told = page.locator('.sound-now');
  await expect(told).toHaveText('');
  for (let i = 0; i < 6; i += 1) await page.keyboard.press('<');
  await expect(told).toHaveText('63 bpm · 70 %');
});

test('a field that was left shows the tempo in force, and for a while why', async ({ page }) => {
  await open(page, FOUR);
  for (const leave of ['Tab', 'Escape']) {
    await tempo(page).fill('abc');
    await tempo(page).press('Enter');
    await expect(tempo(page)).toHaveAccessibleDescription(/“abc”: expected .*; still 90/);
    await tempo(page).press(leave);
    await expect(tempo(page)).toHaveValue('90');
    await expect(tempo(page)).toHaveAttribute('aria-invalid', 'false');
  }
  await button(page, 'Levels and speed').click();
  await expect(page.getByText('NIOSH recommended exposure limit')).toBeInViewport();
  await page.getByRole('checkbox', { name: 'Faster with the rounds' }).check();
  const by = page.getByRole('textbox', { name: 'by', exact: true });
  const next = page.getByRole('textbox', { name: 'after', exact: true });
  const before = await next.boundingBox();
  await by.fill('-5');
  await by.press('Enter');
  await expect(page.locator('.rise-fields .field-error')).toHaveCount(1);
  expect(await next.boundingBox()).toEqual(before);
});

test('a tone that is clicked is marked and leaves the hand; beside it the hand is moved', async ({
  page,
}) => {
  await open(page, { progression: '| Bm7 | E7 |', at: '1.1', position: '7' });
  const neck = page.locator('[data-neck]');
  const rings = page.locator('[data-sounding]');
  const box = await page.locator('[data-tone][data-string="5"][data-fret="2"]').boundingBox();
  const other = await page.locator('[data-tone][data-string="4"][data-fret="7"]').boundingBox();
  if (box === null || other === null) throw new Error('nothing to click on');
  const x = box.x + box.width / 2;
  await page.mouse.click(x, box.y + box.height / 2);
  await expect(rings).toHaveAttribute('d', /a/);
  await expect(neck).toHaveAttribute('data-position', '7');
  await expect(rings).toHaveAttribute('d', '');
  await page.keyboard.press('h');
  await expect(rings).toHaveAttribute('d', /(a.*){8}/);
  await page.mouse.click(x, other.y + other.height / 2);
  await expect(neck).toHaveAttribute('data-position', '2');
});

test('the page does not move when the transport arrives', async ({ page }) => {
  for (const size of [SIZES[0], SIZES[1], SIZES[2]]) {
    await page.setViewportSize(size ?? { width: 1440, height: 900 });
    await page.goto('about:blank');
    await page.goto(`./#${new URLSearchParams(FOUR)}`);
    const field = page.getByRole('textbox', { name: 'Progression' });
    await expect(field).toBeVisible();
    // The letters themselves, which come after the first words, make half a pixel of difference.
    await page.evaluate(() => document.fonts.ready);
    const before = await field.boundingBox();
    await expect(button(page, 'Play')).toBeVisible();
    expect(await field.boundingBox()).toEqual(before);
  }
});

test('the form of the next chord is drawn before the change', async ({ page }) => {
  await open(page, FOUR);
  await setTempo(page, '120');
  await button(page, 'Play').click();
  await expect(page.locator('[data-coming] circle').first()).toBeVisible();
  await expect(page.locator('[data-coming] text').first()).toHaveText(/^[R♭♯\d]/);
  await page.keyboard.press('l');
  await expect(page.locator('[data-coming] text').first()).toHaveText(/^[A-G]/);
  await button(page, 'Stop').click();
  await expect(page.locator('[data-coming]')).toHaveCount(0);
});

test('Space plays and stops, also after a click on a button, and types in the field', async ({
  page,
}) => {
  await open(page, FOUR);
  await page.keyboard.press('Space');
  await expect(button(page, 'Stop')).toHaveAttribute('aria-disabled', 'false');
  await page.keyboard.press('Space');
  await expect(button(page, 'Stop')).toHaveAttribute('aria-disabled', 'true');
  const form = page.getByRole('group', { name: 'Form' }).getByRole('button', {
    name: 'E',
    exact: true,
  });
  await form.click();
  await page.keyboard.press('Space');
  await expect(button(page, 'Stop')).toHaveAttribute('aria-disabled', 'false');
  await expect(form).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Space');
  const field = page.getByRole('textbox', { name: 'Progression' });
  await field.focus();
  await page.keyboard.press('End');
  await page.keyboard.press('Space');
  await expect(field).toHaveValue(`${FOUR.progression} `);
  await expect(button(page, 'Stop')).toHaveAttribute('aria-disabled', 'true');
  await page.keyboard.press('Control+Enter');
  await expect(button(page, 'Stop')).toHaveAttribute('aria-disabled', 'false');
});

test('tempo and loop refuse nonsense at the field and keep the last good value', async ({
  page,
}) => {
  await open(page, FOUR);
  for (const [field, good, bad] of [
    [tempo(page), '72', '999'],
    [loop(page), '1-2', '3-9'],
  ] as const) {
    await field.fill(good);
    await field.press('Enter');
    await field.fill(bad);
    await field.press('Enter');
    await expect(field).toHaveAttribute('aria-invalid', 'true');
    await expect(field).toHaveAccessibleDescription(/expected/);
    await page.keyboard.press('Escape');
  }
  await axe(page);
  await page.reload();
  await page.mouse.move(4, 4);
  await page.mouse.move(8, 8);
  await expect(tempo(page)).toHaveValue('72');
  await expect(loop(page)).toHaveValue('1-2');
  // Of bars that are no longer there it does not say that they are looped.
  const told = page.locator('.sound-now');
  const chart = page.getByRole('textbox', { name: 'Progression' });
  await chart.fill('| Dm7 |');
  await expect(loop(page)).toHaveValue('1');
  await expect(told).toHaveText('no bar 2');
  await chart.fill('');
  await expect(loop(page)).toHaveValue('');
  await expect(told).toHaveText('no bars 1-2');
  await chart.fill('| Dm7 | G7 |');
  await expect(loop(page)).toHaveValue('1-2');
  await expect(told).toHaveText('');
});

test('a change of tempo is taken back', async ({ page }) => {
  await open(page, FOUR);
  await setTempo(page, '72');
  await button(page, 'Undo').click();
  await expect(tempo(page)).toHaveValue('90');
});

test('a tone, a chord and a grip sound when they are clicked, unless that is switched off', async ({
  page,
}) => {
  await open(page, { progression: '| Bm7 | E7 |', at: '1.1', position: '7' });
  const clicks = [
    page.locator('[data-tone][data-string="4"][data-fret="7"]'),
    page.locator('[data-chord-cell]').nth(1),
    page.locator('.bracket-button').first(),
  ];
  const click = async (target: (typeof clicks)[number]): Promise<void> => {
    const box = await target.boundingBox();
    if (box === null) throw new Error('nothing to click on');
    await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  };
  for (const target of clicks) {
    await expect.poll(() => loudest(page), { timeout: 15_000 }).toBeLessThan(AUDIBLE);
    await click(target);
    await expect.poll(() => loudest(page)).toBeGreaterThan(AUDIBLE);
  }
  await button(page, 'Levels and speed').click();
  await page.getByRole('checkbox', { name: /sound when they are clicked/ }).uncheck();
  await expect.poll(() => loudest(page), { timeout: 15_000 }).toBeLessThan(AUDIBLE);
  await page.locator('[data-chord-cell]').first().click();
  await expect(current(page)).toHaveAttribute('data-at', '1.1');
  expect(await loudest(page)).toBeLessThan(AUDIBLE);
});

test('a bend and a connection are heard from their lists', async ({ page }) => {
  await open(page, { progression: '| Bm7 | E7 |', at: '1.1', position: '7' });
  for (const [key, row] of [
    ['Shift+B', '[data-bend] button'],
    ['Shift+C', '[data-connection] button'],
  ] as const) {
    await page.keyboard.press(key);
    await expect.poll(() => loudest(page), { timeout: 15_000 }).toBeLessThan(AUDIBLE);
    await page.locator(row).first().click();
    await expect.poll(() => loudest(page)).toBeGreaterThan(AUDIBLE);
  }
});

test('what is heard is saved as a WAV file, together and alone', async ({ page }) => {
  await open(page, { progression: '| Dm7 | G7 |', at: '1.1', position: '5' });
  await setTempo(page, '240');
  const saved = async (what: string) => {
    await page.getByRole('combobox', { name: 'What is in the file' }).selectOption(what);
    const waiting = page.waitForEvent('download');
    await button(page, 'Save WAV').click();
    const file = await waiting;
    return { name: file.suggestedFilename(), bytes: readFileSync((await file.path()) ?? '') };
  };
  const { name, bytes } = await saved('as it is heard');
  expect(name).toBe('handspan-240bpm.wav');
  await expect(page.getByText('Saved: handspan-240bpm.wav')).toBeVisible();
  expect(bytes.toString('latin1', 0, 4) + bytes.toString('latin1', 8, 12)).toBe('RIFFWAVE');
  // Two bars of 4/4 at 240 are two seconds; two more for the last sounds to die away. 16 bits, stereo.
  expect(bytes.readUInt32LE(40)).toBe(4 * 44_100 * 4);
  const bass = await saved('the bass alone');
  expect(bass.name).toBe('handspan-240bpm-bass.wav');
  expect(bass.bytes.length).toBe(bytes.length);
  expect(bass.bytes.equals(bytes)).toBe(false);
});

test('axe finds nothing in levels and speed, and the caution names its source', async ({
  page,
}) => {
  await open(page, FOUR);
  await button(page, 'Levels and speed').click();
  await page.getByRole('checkbox', { name: 'Faster with the rounds' }).check();
  await expect(page.getByText('ITU-T H.870')).toBeVisible();
  await expect(page.getByText('NIOSH recommended exposure limit')).toBeVisible();
  await axe(page);
  for (const width of [320, 390]) {
    await page.setViewportSize({ width, height: 844 });
    expect(await sidewaysOf(page)).toBe(0);
    const right = async (part: string) => {
      const box = await page.locator(part).boundingBox();
      return (box?.x ?? 9999) + (box?.width ?? 0);
    };
    expect(await right('.levels')).toBeLessThanOrEqual(await right('.sound-panel'));
    expect(await right('.levels-part .caution')).toBeLessThanOrEqual(await right('.sound-panel'));
  }
});

test('the screen stays awake while it plays', async ({ page }) => {
  await page.addInitScript(() => {
    const asked: string[] = [];
    Object.assign(window, { asked });
    Object.defineProperty(navigator, 'wakeLock', {
      value: {
        request: (kind: string) => {
          asked.push(kind);
          return Promise.resolve(
            Object.assign(new EventTarget(), {
              release: () => {
                asked.push('released');
                return Promise.resolve();
              },
            }),
          );
        },
      },
    });
  });
  await open(page, FOUR);
  const asked = () => page.evaluate(() => String(Reflect.get(window, 'asked')));
  await button(page, 'Play').click();
  await expect.poll(asked).toBe('screen');
  await button(page, 'Stop').click();
  await expect.poll(asked).toBe('screen,released');
});
