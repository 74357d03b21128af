import type { Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';

const neck = (page: Page) => page.locator('[data-neck]');
const hand = (page: Page) => page.getByRole('slider', { name: 'Hand position' });
const tone = (page: Page, place: string) => {
  const [string, fret] = place.split(':');
  return page.locator(`[data-tone][data-string="${string}"][data-fret="${fret}"]`);
};

const open = (page: Page, state: Record<string, string>) =>
  page.goto(`./#${new URLSearchParams({ at: '1.1', position: '7', ...state })}`);

/** Middle of a tone on the page. */
async function middleOf(page: Page, place: string): Promise<{ x: number; y: number }> {
  const box = await tone(page, place).boundingBox();
  if (box === null) throw new Error(`no tone at ${place}`);
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

// Common practice: D at position XIV, its C and D forms sharing the three high strings.
test('a D chord at position XIV lies as players know it', async ({ page }) => {
  await open(page, { progression: '| D |', position: '14', show: '4,2' });
  for (const [place, pitch, degree] of [
    ['1:14', 'F#5', '3'],
    ['2:15', 'D5', 'R'],
    ['3:14', 'A4', '5'],
    ['1:17', 'A5', '5'],
    ['1:15', 'G5', '4'],
    ['2:17', 'E5', '2'],
  ] as const) {
    await expect(tone(page, place)).toHaveAttribute('data-pitch', pitch);
    await expect(tone(page, place)).toHaveAttribute('data-degree', degree);
    await expect(tone(page, place)).toHaveAttribute('data-reach', 'hand');
  }
  await expect(tone(page, '1:15')).toHaveAttribute('data-kind', 'colour');
  await expect(tone(page, '1:14')).toHaveAttribute('data-kind', 'shape');
});

/**
 * What is drawn in each of some tones: all tones of a look share a path, so the parts of the paths
 * are looked through for those that lie in the tone. Gives `kind`, the commands, and how it is filled.
 */
const drawnIn = (page: Page, tones: string, paths: string): Promise<readonly string[]> =>
  page.locator(tones).evaluateAll((marks, selector) => {
    const parts = [...document.querySelectorAll<SVGPathElement>(selector)].flatMap((path) => {
      const { fill, stroke } = getComputedStyle(path);
      const probe = path.cloneNode();
      if (!(probe instanceof SVGPathElement)) return [];
      path.after(probe);
      const found = (path.getAttribute('d') ?? '').split(/(?=M)/).map((d) => {
        probe.setAttribute('d', d);
        const commands = d.replace(/[^a-zA-Z]/g, '');
        return { box: probe.getBBox(), commands, filled: fill === stroke ? 'solid' : 'ring' };
      });
      probe.remove();
      return found;
    });
    return marks.flatMap((mark) => {
      if (!(mark instanceof SVGGraphicsElement)) return [];
      const { x, y, width, height } = mark.getBBox();
      return parts
        .filter(({ box }) => Math.abs(box.x + box.width / 2 - x - width / 2) < width / 2)
        .filter(({ box }) => Math.abs(box.y + box.height / 2 - y - height / 2) < height / 2)
        .map(({ commands, filled }) => `${mark.getAttribute('data-kind')} ${commands} ${filled}`);
    });
  }, paths);

const UNDER_HAND = '[data-tone][data-reach="hand"]';

test('shape, chord and colour tones are told apart without colour', async ({ page }) => {
  await open(page, { progression: '| Bm7 |', show: '9' });
  const looks = await drawnIn(page, UNDER_HAND, '.tones .mark');
  expect(looks).toHaveLength(await page.locator(UNDER_HAND).count());
  expect(new Set(looks)).toEqual(
    new Set([
      'shape MaaZ solid',
      'shape MhvhZ solid',
      'chord MhvhZ ring',
      'chord MaaZ ring',
      'colour MlllZ ring',
    ]),
  );
});

test('the hand is dragged along the neck', async ({ page }) => {
  await open(page, { progression: '| Bm7 |' });
  const from = await middleOf(page, '6:7');
  const to = await middleOf(page, '5:14');
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move((from.x + to.x) / 2, from.y, { steps: 4 });
  await page.mouse.move(to.x, from.y, { steps: 4 });
  await page.mouse.up();
  await expect(neck(page)).toHaveAttribute('data-position', '14');
  await expect(hand(page)).toHaveAttribute('aria-valuetext', 'position XIV');
});

test('the hand is set by a click on a fret beside its tones, by its keys and by its buttons', async ({
  page,
}) => {
  await open(page, { progression: '| Bm7 |' });
  const { x } = await middleOf(page, '5:2');
  const { y } = await middleOf(page, '4:7');
  await page.mouse.click(x, y);
  await expect(neck(page)).toHaveAttribute('data-position', '2');
  await hand(page).focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(neck(page)).toHaveAttribute('data-position', '4');
  await page.keyboard.press('Home');
  await expect(neck(page)).toHaveAttribute('data-position', '1');
  await page.getByRole('button', { name: 'Hand up a fret' }).click();
  await expect(neck(page)).toHaveAttribute('data-position', '2');
  const higher = page.getByRole('button', { name: 'Next place up the neck' });
  await page.keyboard.press('e');
  await higher.click();
  await expect(neck(page)).toHaveAttribute('data-position', '7');
  await higher.click();
  await expect(neck(page)).toHaveAttribute('data-position', '19');
  await expect(higher).toHaveAttribute('aria-disabled', 'true');
});

test('a bracket takes the hand to another place of a form', async ({ page }) => {
  await open(page, { progression: '| Bm7 |' });
  await expect(neck(page)).toHaveAttribute('data-form', 'E');
  await page.getByRole('button', { name: /^A form, at II/ }).click();
  await expect(neck(page)).toHaveAttribute('data-form', 'A');
  await expect(neck(page)).toHaveAttribute('data-anchor', '2');
  await page.keyboard.press('Escape');
});

test('labels show degrees, notes, fingers or nothing', async ({ page }) => {
  await open(page, { progression: '| Bm7 |' });
  const third = '[data-tone][data-string="3"][data-fret="7"]';
  const written = async () => (await drawnIn(page, third, 'path.tone-label')).length;
  for (const [label, signs] of [
    ['♭3', 2],
    ['D', 1],
    ['1', 1],
    ['', 0],
  ] as const) {
    await expect(page.locator(third)).toHaveAttribute('data-label', label);
    // As type at first; as outlines once what writes them has been fetched.
    await expect.poll(written).toBe(signs);
    await page.keyboard.press('l');
  }
});

test('strings that the grip leaves silent carry a cross, and a form without a grip says so', async ({
  page,
}) => {
  await open(page, { progression: '| A7#9#5 | Dm7 |', position: '7' });
  await expect(
    page.getByRole('button', { name: 'D form, at VII, no playable grip' }),
  ).toBeVisible();
  await expect(page.getByRole('status', { name: 'Reading' })).toContainText(
    'The D form lies here, but has no grip for this chord.',
  );
  await page.keyboard.press('ArrowRight');
  await expect(page.locator('[data-neck]')).toHaveAttribute('data-symbol', 'Dm7');
  await expect(page.locator('.grip .rest-mark')).toHaveAttribute('d', /^M/);
});

test('a colour tone is switched on and off', async ({ page }) => {
  await open(page, { progression: '| Bm7 |' });
  const nine = page.getByRole('button', { name: '2/9' });
  await nine.click();
  await expect(nine).toHaveAttribute('aria-pressed', 'true');
  await expect(tone(page, '1:9')).toHaveAttribute('data-kind', 'colour');
  await nine.click();
  await expect(tone(page, '1:9')).toHaveCount(0);
});

test('the neck is mirrored for the left hand', async ({ page }) => {
  await open(page, { progression: '| Bm7 |', hand: 'left' });
  const seventh = await middleOf(page, '6:7');
  const second = await middleOf(page, '5:2');
  expect(seventh.x).toBeLessThan(second.x);
});

/** Where to take the hand at a fret under it, on an upright neck. */
async function gripAt(page: Page, fret: number): Promise<{ x: number; y: number }> {
  const handle = await hand(page).boundingBox();
  const number = await page
    .locator('.fret-number')
    .filter({ hasText: new RegExp(`^${fret}$`) })
    .boundingBox();
  if (handle === null || number === null) throw new Error(`fret ${fret} is not drawn`);
  return { x: handle.x + handle.width / 2, y: number.y + number.height / 2 };
}

/** Drags down or up by steps of a few pixels, as a finger does. */
async function draggedByTouch(page: Page, from: { x: number; y: number }, to: number) {
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', y?: number) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: y === undefined ? [] : [{ x: from.x, y }],
    });
  await touch('touchStart', from.y);
  for (let step = 1; step <= 8; step += 1)
    await touch('touchMove', from.y + ((to - from.y) * step) / 8);
  await touch('touchEnd');
}

test.describe('on a narrow screen', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  for (const fret of [6, 8, 9]) {
    test(`the hand taken at fret 7 and let go at fret ${fret} has moved as far as the finger`, async ({
      page,
    }) => {
      for (const by of ['mouse', 'touch']) {
        await open(page, { progression: '| Bm7 |', position: '6' });
        await page.reload();
        await expect(neck(page)).toHaveAttribute('data-position', '6');
        const from = await gripAt(page, 7);
        const { y } = await gripAt(page, fret);
        if (by === 'touch') await draggedByTouch(page, from, y);
        else {
          await page.mouse.move(from.x, from.y);
          await page.mouse.down();
          await page.mouse.move(from.x, y, { steps: 8 });
          await page.mouse.up();
        }
        await expect(neck(page)).toHaveAttribute('data-position', String(fret - 1));
        await expect(page.locator('.hand-wash')).toBeInViewport({ ratio: 0.9 });
      }
    });
  }

  test('the neck stands upright, low string at the left', async ({ page }) => {
    await open(page, { progression: '| Bm7 |' });
    const seventh = await middleOf(page, '6:7');
    const second = await middleOf(page, '5:2');
    expect(second.y).toBeLessThan(seventh.y);
    expect(seventh.x).toBeLessThan((await middleOf(page, '1:7')).x);
  });

  test('the cursor is moved with the thumb at the foot of the screen', async ({ page }) => {
    await open(page, { progression: '| Bm7 | E7 |' });
    await page.getByRole('button', { name: 'Next chord in the chart' }).click();
    await expect(neck(page)).toHaveAttribute('data-symbol', 'E7');
  });
});
