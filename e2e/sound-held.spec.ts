import type { Page } from '@playwright/test';
import { listen, loudest } from './ear.ts';
import { axe, expect, test } from './fixtures.ts';
import { openTab } from './tab.ts';

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const current = (page: Page) => page.locator('[data-chord-cell][aria-current="true"]');
const trouble = (page: Page) => page.getByRole('region', { name: 'Transport' }).getByRole('alert');
const stops = (page: Page) => expect(button(page, 'Stop'));

const AUDIBLE = 0.003;
const SONG = { progression: '| Dm7 | G7 | Cmaj7 | A7 |', at: '1.1', position: '5' };

/** What a device does, done by hand. */
interface Hand {
  /** The last context that was opened. */
  context?: AudioContext;
  /** Nothing can be resumed: something else holds the device. */
  held: boolean;
  /** No context can be opened. */
  away: boolean;
}

declare global {
  interface Window {
    hand: Hand;
  }
}

/** Lets the test do to the device what a system does. To be called before the page is opened. */
const layHands = (page: Page): Promise<unknown> =>
  page.addInitScript(() => {
    const hand: Hand = { held: false, away: false };
    window.hand = hand;
    const Plain = AudioContext;
    window.AudioContext = class extends Plain {
      constructor(options?: AudioContextOptions) {
        if (hand.away) throw new DOMException('No device.', 'NotSupportedError');
        super(options);
        hand.context = this;
      }
      override resume(): Promise<void> {
        return hand.held ? new Promise(() => undefined) : super.resume();
      }
    };
  });

async function open(page: Page): Promise<void> {
  await listen(page);
  await layHands(page);
  await page.goto(`./#${new URLSearchParams(SONG)}`);
  await page.mouse.move(4, 4);
  await page.mouse.move(8, 8);
  await expect(button(page, 'Play')).toBeVisible();
}

const sounds = async (page: Page): Promise<void> => {
  await loudest(page);
  await expect.poll(() => loudest(page)).toBeGreaterThan(AUDIBLE);
};

/** Plays until the second bar. */
async function playOn(page: Page): Promise<void> {
  await button(page, 'Play').click();
  await expect(current(page)).toHaveAttribute('data-at', '2.1', { timeout: 15_000 });
}

test('suspended in the middle, the music goes on by itself where it was', async ({ page }) => {
  await open(page);
  await playOn(page);
  await page.evaluate(() => window.hand.context?.suspend());
  await expect.poll(() => page.evaluate(() => window.hand.context?.state)).toBe('running');
  await expect(current(page)).toHaveAttribute('data-at', '3.1');
  await sounds(page);
  await expect(trouble(page)).toHaveCount(0);
});

test('held back, it says what to do, and Play works again', async ({ page }) => {
  await open(page);
  await playOn(page);
  await page.evaluate(() => {
    window.hand.held = true;
    return window.hand.context?.suspend();
  });
  await expect(trouble(page)).toHaveText('The browser holds the sound back. Press Play once more.');
  await axe(page);
  await button(page, 'Play').click();
  await expect(trouble(page)).toBeVisible();
  await page.evaluate(() => {
    window.hand.held = false;
  });
  await page.keyboard.press('Space');
  await stops(page).toHaveAttribute('aria-disabled', 'false');
  await expect(trouble(page)).toHaveCount(0);
  await sounds(page);
});

test('let go by what held it back, it plays on without a key', async ({ page }) => {
  await open(page);
  await playOn(page);
  await page.evaluate(() => {
    window.hand.held = true;
    return window.hand.context?.suspend();
  });
  await expect(trouble(page)).toBeVisible();
  await page.evaluate(() => {
    window.hand.held = false;
    return window.hand.context?.resume();
  });
  await expect(trouble(page)).toHaveCount(0);
  await stops(page).toHaveAttribute('aria-disabled', 'false');
  await expect(current(page)).toHaveAttribute('data-at', '3.1');
});

test('when the device is gone another is opened, and the music goes on where it was', async ({
  page,
}) => {
  await open(page);
  await playOn(page);
  await page.evaluate(() => window.hand.context?.close());
  await expect(current(page)).toHaveAttribute('data-at', '3.1');
  await sounds(page);
  await expect(trouble(page)).toHaveCount(0);
});

test('when no other device can be had it says what to do, and Play goes on from there', async ({
  page,
}) => {
  await open(page);
  await playOn(page);
  await page.evaluate(() => {
    window.hand.away = true;
    return window.hand.context?.close();
  });
  await expect(trouble(page)).toHaveText(
    'The sound device does not answer. Check that it is connected, then press Play.',
  );
  await expect(current(page)).toHaveAttribute('data-at', '2.1');
  await axe(page);
  await page.evaluate(() => {
    window.hand.away = false;
  });
  await page.keyboard.press('Space');
  await expect(trouble(page)).toHaveCount(0);
  await sounds(page);
});

const SPACE = { key: ' ', code: 'Space', text: ' ', windowsVirtualKeyCode: 32 };
const SAID = `document.querySelector('.transport [role="alert"]')?.textContent ?? ''`;
const PLAYING = `[...document.querySelectorAll('.transport [aria-disabled="false"]')]
  .some(({ textContent }) => textContent === 'Stop')`;

test('started without a key or click the browser refuses; it says so, and a key starts it', async ({
  browser,
  baseURL,
}) => {
  const tab = await openTab(browser);
  await tab.send('Page.navigate', { url: `${baseURL}#${new URLSearchParams(SONG)}` });
  await expect
    .poll(() => tab.evaluate(`document.querySelector('.play') !== null`), { timeout: 15_000 })
    .toBe(true);
  await tab.evaluate(`document.querySelector('.play').click()`);
  await expect
    .poll(() => tab.evaluate(SAID))
    .toBe('The browser holds the sound back. Press Play once more.');
  expect(await tab.evaluate('navigator.userActivation.hasBeenActive')).toBe(false);
  expect(await tab.evaluate(PLAYING)).toBe(false);
  await tab.send('Input.dispatchKeyEvent', { type: 'keyDown', ...SPACE });
  await tab.send('Input.dispatchKeyEvent', { type: 'keyUp', ...SPACE });
  await expect.poll(() => tab.evaluate(PLAYING)).toBe(true);
  expect(await tab.evaluate(SAID)).toBe('');
  await tab.close();
});

for (const width of [390, 1440])
  test(`what to do stands in sight beside Play, at ${width} in light and dark`, async ({
    page,
  }) => {
    await page.setViewportSize({ width, height: 900 });
    await open(page);
    await page.evaluate(() => {
      window.hand.away = true;
    });
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      await button(page, 'Play').click();
      await expect(trouble(page)).toContainText('then press Play');
      await expect(trouble(page)).toBeInViewport();
      const said = await trouble(page).boundingBox();
      const chord = await current(page).boundingBox();
      expect((said?.y ?? 9999) + (said?.height ?? 0), 'it covers no chord').toBeLessThanOrEqual(
        chord?.y ?? 0,
      );
      await axe(page, ['.transport']);
      const sideways = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      );
      expect(sideways).toBe(0);
    }
  });

test('the reading is not spoken while music plays, and is spoken again at rest', async ({
  page,
}) => {
  await open(page);
  const reading = page.getByRole('status', { name: 'Reading' });
  await expect(reading).toHaveAttribute('aria-live', 'polite');
  await playOn(page);
  await expect(reading).toHaveAttribute('aria-live', 'off');
  await expect(reading).toContainText('G7');
  await button(page, 'Stop').click();
  await expect(reading).toHaveAttribute('aria-live', 'polite');
  await page.keyboard.press('ArrowRight');
  await expect(reading).toContainText('Cmaj7');
});
