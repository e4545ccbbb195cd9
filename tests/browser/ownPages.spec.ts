import { expect, type Page, test } from '@playwright/test';
import { findSmallTargets } from './smallTargets.ts';
import { expectNoSidewaysScrolling, findViolations, openDocument, settled } from './stepwellPage.ts';

const pagesOf = (page: Page) =>
  page.evaluate(() =>
    (window.stepwell.state().studies?.ownDocuments ?? []).map(({ title, blocks }) => ({
      title,
      kinds: blocks.map(({ kind }) => kind),
    })),
  );
const body = (page: Page) => page.locator('.own-page-body');
const form = (page: Page) => page.locator('.own-editing form');
const kind = (page: Page, name: string) =>
  page.locator('.own-kinds').getByRole('button', { name, exact: true });

/** Chooses a number in a search field of the form that is open. */
async function choose(page: Page, label: string, words: string): Promise<void> {
  await form(page).getByRole('combobox', { name: label }).fill(words);
  await expect(form(page).getByRole('option').first()).toBeVisible();
  await page.keyboard.press('Enter');
}

async function newPage(page: Page, title: string): Promise<void> {
  await page.getByLabel('Title of a new page').fill(title);
  await page.getByRole('button', { name: 'New page' }).click();
  await expect(page.locator('.own-page-title')).toHaveText(title);
}

/** Adds pieces of every kind, by mouse. */
async function fill(page: Page): Promise<void> {
  await kind(page, 'Text').click();
  await form(page)
    .getByLabel('Text', { exact: true })
    .fill(
      '# Why this spot\n\nThe lens has {lens.focalLength}, and $w_0$ is small; {no.such} is not.\n\n| a | b |\n|---|---|\n| 1 | 2 |',
    );
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await kind(page, 'Part of another page').click();
  await form(page).getByLabel('Part of it').selectOption('profile');
  await form(page).getByLabel('Axis across, from').fill('-12');
  await form(page).getByLabel('Axis across, to').fill('12');
  await form(page).getByLabel('Title').fill('Near the axis');
  await form(page).getByLabel('Caption').fill('Only the middle.');
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await kind(page, 'Numbers').click();
  await choose(page, 'Search', 'spot.width');
  await choose(page, 'Search', 'lens.focalLength');
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await kind(page, 'Inputs').click();
  await choose(page, 'Search', 'lens.focalLength');
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await kind(page, 'Formula').click();
  await choose(page, 'Search', 'spot.width');
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await kind(page, 'Chart over an input').click();
  await choose(page, 'number to draw', 'spot.width');
  await choose(page, 'input that', 'lens.focalLength');
  await form(page).getByLabel('Values').fill('9');
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await expect(body(page).locator('.own-piece')).toHaveCount(6);
  await expect(body(page).locator('.study-varied .figure-svg')).toBeVisible();
}

for (const size of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${size.width} × ${size.height}`, () => {
    test.use({ viewport: size });

    test('a page is composed of every kind of piece by mouse, and follows the design', async ({ page }) => {
      await openDocument(page, 'own-pages');
      await newPage(page, 'For the talk');
      await fill(page);
      expect(await pagesOf(page)).toEqual([
        { title: 'For the talk', kinds: ['text', 'block', 'values', 'controls', 'equation', 'chart'] },
      ]);
      await page.getByRole('button', { name: 'Done arranging' }).click();
      await expect(body(page).locator('.own-bar')).toHaveCount(0);
      await expect(body(page).locator('.prose').first()).toContainText('The lens has 100\u202fmm');
      await expect(body(page).locator('.prose').first()).toContainText('no number ‘no.such’');
      await expect(body(page).locator('.figure-block')).toContainText('Near the axis');
      await expect(body(page).locator('.own-caption')).toHaveText('Only the middle.');
      await expectNoSidewaysScrolling(page);
      const field = body(page).locator('.field[data-input="lens.focalLength"] input[type="text"]');
      await field.fill('150 mm');
      await page.keyboard.press('Enter');
      await settled(page);
      await expect(body(page).locator('.prose').first()).toContainText('The lens has 150\u202fmm');
      await expect(body(page).locator('.own-chart')).toContainText('Today focal length is 150\u202fmm');
      await expect(body(page).locator('.table', { hasText: 'Values' })).toContainText('150\u202fmm');
    });

    test('a page is begun, written, put in order and taken out by keyboard alone, each a step back', async ({
      page,
    }) => {
      await openDocument(page, 'own-pages');
      await page.getByLabel('Title of a new page').focus();
      await page.keyboard.type('By hand');
      await page.keyboard.press('Enter');
      await expect(kind(page, 'Text')).toBeFocused();
      for (const words of ['First words.', 'Second words.']) {
        await kind(page, 'Text').focus();
        await page.keyboard.press('Enter');
        await page.keyboard.type(words);
        await page.keyboard.press('Tab');
        await form(page).getByRole('button', { name: 'Add it' }).focus();
        await page.keyboard.press('Enter');
        await expect(form(page)).toHaveCount(0);
      }
      const texts = () => body(page).locator('.own-shown').allTextContents();
      const order = async () => (await texts()).map((text) => text.slice(0, 5));
      expect(await order()).toEqual(['First', 'Secon']);
      await body(page).getByRole('button', { name: 'Up: Text: Second' }).focus();
      await page.keyboard.press('Enter');
      expect(await order()).toEqual(['Secon', 'First']);
      // The focus goes with the piece, to what can still be done.
      await expect(body(page).getByRole('button', { name: 'Down: Text: Second' })).toBeFocused();
      await page.keyboard.press('Enter');
      expect(await order()).toEqual(['First', 'Secon']);
      await expect(body(page).getByRole('button', { name: 'Up: Text: Second' })).toBeFocused();
      await body(page).getByRole('button', { name: 'Change: Text: First' }).focus();
      await page.keyboard.press('Enter');
      await expect(form(page).getByLabel('Text', { exact: true })).toBeFocused();
      await page.keyboard.press('Control+End');
      await page.keyboard.type(' More.');
      await page.keyboard.press('Escape');
      expect(await order()).toEqual(['First', 'Secon']);
      expect((await texts())[0]).not.toContain('More.');
      await body(page).getByRole('button', { name: 'Take out: Text: First' }).focus();
      await page.keyboard.press('Enter');
      expect(await order()).toEqual(['Secon']);
      for (const expected of [2, 2, 2, 1, 0]) {
        await page.locator('.own-page-title').focus();
        await page.keyboard.press('Control+z');
        await expect(body(page).locator('.own-piece')).toHaveCount(expected);
      }
      await page.keyboard.press('Control+z');
      expect(await pagesOf(page)).toEqual([]);
      await expect(page.locator('.own-page')).toBeHidden();
    });
  });
}

test('pages are renamed, duplicated, chosen and taken out, and come back with the design', async ({
  page,
}) => {
  await openDocument(page, 'own-pages');
  await newPage(page, 'One');
  await kind(page, 'Numbers').click();
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await expect(form(page).locator('.problem')).toContainText('Nothing is chosen yet');
  await choose(page, 'Search', 'spot.width');
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await page.getByRole('button', { name: 'Duplicate' }).click();
  await expect(page.locator('.own-page-title')).toHaveText('One (2)');
  await page.getByRole('button', { name: 'Rename', exact: true }).first().click();
  await page.getByLabel('Title of this page').fill('Two');
  await page.keyboard.press('Enter');
  await expect(page.locator('.own-page-title')).toHaveText('Two');
  await page.locator('.own-pages-list').getByRole('button', { name: 'One' }).click();
  await expect(page.locator('.own-page-title')).toHaveText('One');
  await page.getByRole('button', { name: 'Take the page out' }).click();
  expect((await pagesOf(page)).map(({ title }) => title)).toEqual(['Two']);
  // The history is written a moment after the hand rests.
  await page.waitForTimeout(1000);
  await page.reload();
  await settled(page);
  await expect(page.locator('.own-page-title')).toHaveText('Two');
  await expect(body(page).locator('.table')).toContainText('spot width');
});

test('a piece is taken by its bar and let go elsewhere', async ({ page }) => {
  await openDocument(page, 'own-pages');
  await newPage(page, 'One');
  for (const words of ['First', 'Second', 'Third']) {
    await kind(page, 'Text').click();
    await form(page).getByLabel('Text', { exact: true }).fill(words);
    await form(page).getByRole('button', { name: 'Add it' }).click();
  }
  await expect(body(page).locator('.own-piece')).toHaveCount(3);
  await body(page)
    .locator('.own-bar-words')
    .nth(2)
    .dragTo(body(page).locator('.own-bar').nth(0), { targetPosition: { x: 20, y: 2 } });
  const texts = await body(page).locator('.own-shown .prose').allTextContents();
  expect(texts).toEqual(['Third', 'First', 'Second']);
});

test('hostile words stay words, and a number of one’s own follows its line on the page', async ({ page }) => {
  await openDocument(page, 'what-if');
  const numbers = page.getByRole('form', { name: 'An own number' });
  await numbers.getByLabel('Name').fill('mine');
  await numbers.getByLabel('Formula', { exact: true }).fill('2 * lens.focalLength');
  await numbers.getByRole('button', { name: 'Keep' }).click();
  await openDocument(page, 'own-pages');
  await newPage(page, '<b>Bold</b>');
  await kind(page, 'Text').click();
  const text = form(page).getByLabel('Text', { exact: true });
  await text.fill(
    'It is {own.mine}. <img src=x onerror="alert(1)"> [x](javascript:alert(1)) $\\href{javascript:1}{y}$',
  );
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await expect(body(page).locator('.prose')).toContainText('It is 200\u202fmm. <img src=x');
  expect(await page.locator('.own-page img, .own-page a[href], .own-page b').count()).toBe(0);
  await page.evaluate(() => window.stepwell.set({ 'lens.focalLength': 0.2 }));
  await settled(page);
  await expect(body(page).locator('.prose')).toContainText('It is 400\u202fmm.');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  expect(await page.evaluate(() => window.stepwell.state().studies?.ownLines.length ?? 0)).toBe(0);
});

for (const colorScheme of ['light', 'dark'] as const)
  test.describe(`${colorScheme} page`, () => {
    test.use({ colorScheme });

    test('axe finds nothing on a filled page, while it is arranged and while a piece is written', async ({
      page,
    }) => {
      await openDocument(page, 'own-pages');
      await newPage(page, 'For the talk');
      await fill(page);
      expect(await findViolations(page)).toEqual([]);
      await body(page).getByRole('button', { name: 'Change: Near the axis' }).click();
      expect(await findViolations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Leave it' }).click();
      await page.getByRole('button', { name: 'Done arranging' }).click();
      expect(await findViolations(page)).toEqual([]);
    });
  });

test.describe('under a finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('every target of an own page is large enough', async ({ page }) => {
    await openDocument(page, 'own-pages');
    await newPage(page, 'For the talk');
    await kind(page, 'Numbers').click();
    await choose(page, 'Search', 'spot.width');
    expect(await findSmallTargets(page), 'form').toEqual([]);
    await form(page).getByRole('button', { name: 'Add it' }).click();
    expect(await findSmallTargets(page), 'arranged').toEqual([]);
  });
});
