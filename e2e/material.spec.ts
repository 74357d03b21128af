import type { Locator, Page } from '@playwright/test';
import { expect, test } from './fixtures.ts';

const current = (page: Page) => page.locator('[data-chord-cell][aria-current="true"]');
const neck = (page: Page) => page.locator('[data-neck]');
const lens = (page: Page, name: string) =>
  page.getByRole('group', { name: 'Study' }).getByRole('button', { name, exact: true });
const fingering = (page: Page) => page.getByRole('textbox', { name: 'Fingering' });
const overlay = (page: Page) => page.locator('.lens-layer');

const attributes = (list: Locator, name: string): Promise<(string | null)[]> =>
  list.evaluateAll((all, attribute) => all.map((one) => one.getAttribute(attribute)), name);

async function open(page: Page, state: Record<string, string>): Promise<void> {
  await page.goto(`./#${new URLSearchParams(state)}`);
  await expect(lens(page, 'Bends')).toBeVisible();
}

const CHANGE = { progression: '| Bm7 | E7 | Amaj7 |', at: '1.1', position: '7' };

test('bends and connections can be found in the page without opening anything', async ({
  page,
}) => {
  await open(page, { progression: '| D | G7 | C |', at: '1.1', position: '14' });
  const bends = page.locator('[data-bend]');
  await expect(bends.first()).toBeAttached();
  // D at XIV: the B string's 9 at fret 17 (E) bent a whole step to the 3 (F sharp).
  const third = page.locator(
    '[data-bend][data-string="2"][data-fret="17"][data-steps="2"][data-of="now"]',
  );
  await expect(third).toHaveAttribute('data-pitch', 'F#5');
  await expect(third).toHaveAttribute('data-degree', '3');
  await expect(third).toHaveAttribute('data-ease', 'comfortable');
  expect(Number(await third.getAttribute('data-mm'))).toBeGreaterThan(5);
  expect(Number(await third.getAttribute('data-newton'))).toBeGreaterThan(1);
  await expect(page.locator('[data-connection]').first()).toBeAttached();
  await expect(page.locator('.lens-panel:not(.closed)')).toHaveCount(0);
});

test('the lists follow the cursor when it rests', async ({ page }) => {
  await open(page, { progression: '| G7 | C | F |', at: '1.1', position: '8' });
  const best = page.locator('[data-connection]').first();
  await expect(best).toHaveAttribute('data-degrees', '3>R');
  await expect(best).toHaveAttribute('data-semitones', '1');
  await page.keyboard.press('ArrowRight');
  await expect(best).not.toHaveAttribute('data-degrees', '3>7');
  await expect(best).toHaveAttribute('data-degrees', '3>R');
  await page.keyboard.press('ArrowRight');
  await expect(page.locator('[data-connection]')).toHaveCount(0);
});

test('the list of bends says from, how far, to, finger, travel, force and ease, and points at the neck', async ({
  page,
}) => {
  await open(page, CHANGE);
  await lens(page, 'Bends').click();
  const row = page.getByRole('list', { name: 'Bends', exact: true }).getByRole('button').first();
  await expect(row).toHaveText(
    /^string \d fret \d+ (½|1|1½) to \S+ [A-G]\S*( of E7)? finger [1-4] [\d.]+ mm [\d.]+ N comfortable$/,
  );
  await expect(overlay(page).locator('.emphasised')).toHaveCount(0);
  await row.hover();
  await expect(overlay(page).locator('.emphasised')).toHaveCount(1);
  await row.click();
  await page.mouse.move(0, 0);
  await expect(row).toHaveAttribute('aria-pressed', 'true');
  await expect(overlay(page).locator('.emphasised')).toHaveCount(1);
  await expect(page.getByText(/by the model “the whole string stretches”/)).toBeVisible();
  await expect(page.getByText(/stop at pain or numbness/)).toBeVisible();
});

test('bends that are not practical are listed when they are asked for and never drawn', async ({
  page,
}) => {
  await open(page, { ...CHANGE, position: '1' });
  await lens(page, 'Bends').click();
  const none = page.locator('[data-bend][data-ease="no"]');
  const count = await none.count();
  expect(count).toBeGreaterThan(0);
  await expect(none.first()).toBeHidden();
  await page.getByText(`${count} more that are not practical`).click();
  await expect(none.first()).toBeVisible();
});

test('what is comfortable is a setting; a wrong limit is refused at its field', async ({
  page,
}) => {
  await open(page, CHANGE);
  await lens(page, 'Bends').click();
  const comfortable = page.locator('[data-bend][data-ease="comfortable"]');
  const before = await comfortable.count();
  await page.getByText('What is comfortable, what is hard').click();
  const push = page.getByRole('textbox', { name: 'Comfortable up to a push of' });
  await push.fill('5');
  await push.press('Enter');
  await expect.poll(() => comfortable.count()).toBeLessThan(before);
  await push.fill('900');
  await push.press('Enter');
  await expect(push).toHaveAccessibleDescription(/900.*expected a number from 1 to 200/);
});

test('turning a form moves what has to move and says so', async ({ page }) => {
  await open(page, { progression: '| A | D |', at: '1.1', position: '7' });
  await page.keyboard.press('2');
  await expect(lens(page, 'Turn')).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText('3 drops from fret 9 to 8: ♭3')).toBeVisible();
  await expect(overlay(page).locator('.turn-mark')).toHaveCount(1);
  await expect(page.locator('[data-tone][data-string="1"][data-fret="8"]')).toHaveAttribute(
    'data-degree',
    'b3',
  );
  const minor = page.getByRole('button', { name: 'minor', exact: true });
  await expect(minor).toHaveAttribute('aria-pressed', 'true');
  await minor.click();
  await expect(overlay(page).locator('.turn-mark')).toHaveCount(0);
});

test('colour tones are offered with a word on why, and switched on', async ({ page }) => {
  await open(page, { progression: '| A7 | D |', at: '1.1', position: '5' });
  await lens(page, 'Turn').click();
  const row = page.locator('.colour-list li').first();
  await expect(row).toContainText('never wrong over a plain seventh');
  await row.getByRole('button').click();
  await expect(page.locator('[data-tone][data-kind="colour"]').first()).toBeAttached();
});

test('connections are listed best first and six of them drawn', async ({ page }) => {
  await open(page, { progression: '| G7 | C |', at: '1.1', position: '8' });
  await lens(page, 'Into the next chord').click();
  const list = page.getByRole('list', { name: 'Connections to the next chord' });
  await expect(list.getByRole('button').first()).toHaveText(/^3 → R, half step up, string/);
  await expect(overlay(page).locator('.move-mark')).toHaveCount(6);
  await list.getByRole('button').first().hover();
  await expect(overlay(page).locator('.move-mark')).toHaveCount(1);
  await expect(overlay(page).locator('.move-mark text')).toHaveText(/^→?R$/);
  await page.keyboard.press('l');
  await expect(overlay(page).locator('.move-mark text')).toHaveText(/^→?C$/);
});

test('with a route every chord has its position, the hand goes there, and pins hold', async ({
  page,
}) => {
  await open(page, { progression: '| Bm7 | E7 | Amaj7 | D |', at: '1.1', position: '7' });
  await lens(page, 'Route').click();
  await page.getByRole('button', { name: 'travel', exact: true }).click();
  await expect(page.locator('[data-chord-cell][data-position]')).toHaveCount(4);
  await page.keyboard.press('End');
  const last = await current(page).getAttribute('data-position');
  await expect(neck(page)).toHaveAttribute('data-position', last ?? '');
  await expect(page.locator('.route-ladder')).toBeVisible();
  await expect(
    page.getByRole('list', { name: 'Ways, best first' }).getByRole('button'),
  ).toHaveCount(4);
  await page.getByRole('button', { name: /^Pin/ }).click();
  await expect(page.locator('.cell-form.pinned')).toHaveCount(1);
  await expect(current(page)).toHaveAccessibleName(/, pinned$/);
  await page.getByRole('button', { name: 'Let go of the form pinned at 4.1' }).click();
  await expect(page.locator('.cell-form.pinned')).toHaveCount(0);
  // It stays on when its lens is closed, and is left beside where it begins.
  await page.keyboard.press('Shift+R');
  await page.getByRole('button', { name: 'Leave the route' }).focus();
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.locator('[data-chord-cell][data-position]')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Leave the route' })).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Hand down a fret' })).toBeFocused();
});

test('the way can be scrubbed by keys and along the ladder', async ({ page }) => {
  await open(page, {
    progression: '| Bm7 | E7 | Amaj7 | D |',
    at: '1.1',
    position: '7',
    route: 'stay',
  });
  await lens(page, 'Route').click();
  const slider = page.getByRole('slider', { name: 'Along the way' });
  await slider.focus();
  await page.keyboard.press('ArrowRight');
  await expect(current(page)).toHaveAttribute('data-symbol', 'E7');
  const ladder = page.locator('.route-ladder');
  const box = await ladder.boundingBox();
  if (box === null) throw new Error('no ladder');
  await page.mouse.move(box.x + 50, box.y + 2);
  await page.mouse.down();
  await page.mouse.move(box.x + 50, box.y + box.height - 2, { steps: 4 });
  await page.mouse.up();
  await expect(current(page)).toHaveAttribute('data-symbol', 'D');
});

test('a goal beyond the neck is refused at its field and nothing is lost', async ({ page }) => {
  await open(page, { progression: '| Bm7 | E7 |', at: '1.1', position: '7', route: 'travel' });
  await lens(page, 'Route').click();
  const goal = page.getByRole('textbox', { name: 'To the position at fret' });
  await goal.fill('90');
  await goal.press('Enter');
  await expect(goal).toHaveAccessibleDescription(/90.*expected a fret from 1 to 22/);
  await expect(page.locator('[data-chord-cell][data-position]')).toHaveCount(2);
});

test('a typed fingering is named, best first, and its degrees stand on the neck', async ({
  page,
}) => {
  await open(page, CHANGE);
  await fingering(page).fill('x7678x');
  const names = page.locator('[data-name-reading]');
  await expect(names.first()).toHaveAttribute('data-symbol', 'E7#9');
  await expect(page.getByText(/Degrees from the lowest string: R 3 ♭7 ♯9/)).toBeVisible();
  await expect(overlay(page).locator('.finger-mark')).toHaveCount(4);
  await fingering(page).fill('xx0211');
  await expect(names.first()).toHaveAttribute('data-symbol', 'Dm7');
  expect(await attributes(names, 'data-symbol')).toContain('F/D');
  await expect(page.locator('[data-name-reading][data-rootless="true"]').first()).toContainText(
    'without its root',
  );
});

test('a fingering becomes a form of one’s own, is asked for, renamed and deleted', async ({
  page,
}) => {
  await open(page, CHANGE);
  await fingering(page).fill('x7678x');
  await page.getByRole('textbox', { name: 'Name of the form' }).fill('Thorn');
  await page.getByRole('button', { name: 'Keep as my form' }).click();
  const forms = page.getByRole('group', { name: 'Form', exact: true });
  await expect(forms.getByRole('button', { name: 'Thorn' })).toBeVisible();
  await page.getByRole('textbox', { name: 'Name of the form' }).fill('Thorn');
  await page.getByRole('button', { name: 'Keep as my form' }).click();
  await expect(page.getByText('“Thorn”: another form has that name')).toBeVisible();
  await page.getByRole('button', { name: 'Rename Thorn' }).click();
  await page.getByRole('textbox', { name: 'New name of Thorn' }).fill('Briar');
  await page.getByRole('button', { name: 'Rename', exact: true }).click();
  await expect(forms.getByRole('button', { name: 'Briar' })).toBeVisible();
  await page.getByRole('button', { name: 'Delete Briar' }).click();
  await expect(forms.getByRole('button', { name: 'Briar' })).toHaveCount(0);
});

test('fingers are put on the neck and lifted by click and by keys', async ({ page }) => {
  await open(page, CHANGE);
  await lens(page, 'Fingering').click();
  const place = (name: string) => page.getByRole('button', { name, exact: true });
  await place('String 5, fret 7').click();
  await place('String 4, fret 6').click();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowUp');
  await expect(place('String 3, fret 7')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(fingering(page)).toHaveValue('x767xx');
  await expect(neck(page)).toHaveAttribute('data-position', '7');
  await place('String 4, fret 6').click();
  await expect(fingering(page)).toHaveValue('x7x7xx');
});

test('what is wrong with a fingering is told at its field', async ({ page }) => {
  await open(page, CHANGE);
  for (const [typed, why] of [
    ['x76', 'expected 6 signs'],
    ['x7678q', 'expected x or a fret number'],
    ['1-x-x-x-x-19', 'expected frets no more than'],
    ['x-7-6-7-8-90', 'expected a fret from 0 to 22'],
  ] as const) {
    await fingering(page).fill(typed);
    await expect(fingering(page)).toHaveAccessibleDescription(new RegExp(why));
    await expect(neck(page)).toHaveAttribute('data-symbol', 'Bm7');
  }
});

test('C and D forms of D share the three high strings', async ({ page }) => {
  await open(page, { progression: '| D |', at: '1.1', position: '14', form: 'C' });
  await lens(page, 'Compare').click();
  await page
    .getByRole('group', { name: 'With another form of this chord' })
    .getByRole('button', { name: 'D', exact: true })
    .click();
  await expect(page.locator('.shared')).toContainText(
    'share three places: string 1 fret 14, string 2 fret 15, string 3 fret 14',
  );
  await expect(overlay(page).locator('[data-share="both"]')).toHaveCount(3);
});

test('two chords lie on one neck; what is no chord is refused at the field', async ({ page }) => {
  await open(page, { progression: '| Am7 | D9 |', at: '1.1', position: '5' });
  await lens(page, 'Compare').click();
  const field = page.getByRole('textbox', { name: 'With another chord' });
  await field.fill('D9');
  await field.press('Enter');
  await expect(page.locator('.shared')).toContainText('♭3 becomes ♭7');
  await field.fill('Hx9');
  await field.press('Enter');
  await expect(field).toHaveAccessibleDescription(/expected/);
  await expect(page.locator('.shared')).toContainText('D9');
});

test('every lens opens and closes by its key, and the arrow keys go on moving the cursor', async ({
  page,
}) => {
  await open(page, CHANGE);
  for (const [key, name] of [
    ['Shift+T', 'Turn'],
    ['Shift+B', 'Bends'],
    ['Shift+C', 'Into the next chord'],
    ['Shift+R', 'Route'],
    ['Shift+F', 'Fingering'],
    ['Shift+M', 'Compare'],
  ] as const) {
    await page.keyboard.press(key);
    await expect(lens(page, name)).toHaveAttribute('aria-pressed', 'true');
    await lens(page, name).focus();
    await page.keyboard.press('ArrowRight');
    await expect(current(page)).toHaveAttribute('data-symbol', 'E7');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press(key);
    await expect(lens(page, name)).toHaveAttribute('aria-pressed', 'false');
  }
});

test('rows are walked by arrow keys, each shown on the neck, and Tab leaves the list', async ({
  page,
}) => {
  await open(page, CHANGE);
  await lens(page, 'Into the next chord').click();
  const rows = page
    .getByRole('list', { name: 'Connections to the next chord' })
    .getByRole('button');
  await rows.first().focus();
  await page.keyboard.press('ArrowDown');
  await expect(rows.nth(1)).toBeFocused();
  await expect(overlay(page).locator('.emphasised')).toHaveCount(1);
  await page.keyboard.press('Tab');
  await expect(overlay(page).locator('.emphasised')).toHaveCount(0);
});

test('the open lens is on paper, without its settings', async ({ page }) => {
  await open(page, CHANGE);
  await lens(page, 'Bends').click();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('[data-bend]').first()).toBeVisible();
  await expect(overlay(page)).toBeVisible();
  await expect(page.getByText('What is comfortable, what is hard')).toBeHidden();
  await expect(lens(page, 'Bends')).toBeHidden();
});

test('what is wrong with a fingering moves neither its box nor what is below', async ({ page }) => {
  await page.goto(
    `./#${new URLSearchParams({ progression: '| C | Am |', at: '1.1', position: '5' })}`,
  );
  await page.getByRole('button', { name: 'Fingering', exact: true }).click();
  const box = page.getByRole('textbox', { name: 'Fingering' });
  const panel = page.locator('#lens-fingering');
  const places = async () => [await box.boundingBox(), (await panel.boundingBox())?.y];
  const before = await places();
  await box.fill('x32');
  await expect(box).toHaveAccessibleDescription(/expected 6 signs/);
  expect(await places()).toEqual(before);
});

test('comparing shows the reading until something lies beside it, and explains no marks that are not there', async ({
  page,
}) => {
  await page.goto(
    `./#${new URLSearchParams({ progression: '| C | Am7 |', at: '1.1', position: '3' })}`,
  );
  await page.getByRole('button', { name: 'Compare', exact: true }).click();
  const panel = page.locator('#lens-compare');
  const legend = page.getByRole('list', { name: 'What the marks mean' });
  await expect(page.locator('.tones')).toBeVisible();
  await expect(legend).toContainText('in the form’s grip');
  await panel.getByRole('button', { name: 'G', exact: true }).click();
  await expect(page.locator('.compare-mark').first()).toBeVisible();
  await expect(page.locator('.tones')).toBeHidden();
  await expect(legend).not.toContainText('in the form’s grip');
});

test('choosing a route moves none of the buttons that it is chosen by', async ({ page }) => {
  await page.goto(
    `./#${new URLSearchParams({ progression: '| C | Am7 | F |', at: '1.1', position: '3' })}`,
  );
  await page.getByRole('button', { name: 'Route', exact: true }).click();
  const kinds = page.locator('#lens-route').getByRole('group', { name: 'Route', exact: true });
  await expect(kinds).toBeVisible();
  const before = await kinds.boundingBox();
  for (const kind of ['travel', 'stay in one place', 'carry one form', 'none']) {
    await kinds.getByRole('button', { name: kind }).click();
    await expect(kinds.getByRole('button', { name: kind })).toHaveAttribute('aria-pressed', 'true');
    expect((await kinds.boundingBox())?.y).toBe(before?.y);
  }
});
