import { expect, type Page, test } from '@playwright/test';
import { findViolations, openDocument, settled } from './stepwellPage.ts';

const body = (page: Page) => page.locator('.own-page-body');
const form = (page: Page) => page.locator('.own-editing form');
const text = (page: Page) => form(page).getByLabel('Text', { exact: true });
const said = (page: Page) => page.locator('.own-pages > .own-said');
const kind = (page: Page, name: string) =>
  page.locator('.own-kinds').getByRole('button', { name, exact: true });
const undo = (page: Page) => page.getByRole('button', { name: 'Undo', exact: true });
const redo = (page: Page) => page.getByRole('button', { name: 'Redo', exact: true });
const textsOf = (page: Page) =>
  page.evaluate(() =>
    (window.stepwell.state().studies?.ownDocuments[0]?.blocks ?? []).map((block) =>
      block.kind === 'text' ? block.text : block.kind,
    ),
  );

async function newPage(page: Page, title: string): Promise<void> {
  await page.getByLabel('Title of a new page').fill(title);
  await page.getByRole('button', { name: 'New page' }).click();
  await expect(page.locator('.own-page-title')).toHaveText(title);
}

async function addText(page: Page, words: string): Promise<void> {
  await kind(page, 'Text').click();
  await text(page).fill(words);
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await expect(form(page)).toHaveCount(0);
}

/** Goes to another document and back by the line of documents, without loading the page again. */
async function awayAndBack(page: Page, id: string): Promise<void> {
  await page.evaluate(() => {
    window.location.hash = 'matching';
  });
  await expect(page.locator('main#matching')).toBeVisible();
  await page.evaluate((back) => {
    window.location.hash = back;
  }, id);
  await expect(page.locator(`main#${id}`)).toBeVisible();
  await settled(page);
}

test('a text that is written stays through undo, changes of the design and a walk to another page', async ({
  page,
}) => {
  await openDocument(page, 'own-pages');
  await newPage(page, 'One');
  await addText(page, 'First words.');
  await kind(page, 'Text').click();
  await page.keyboard.type('Half a sen');
  await page.evaluate(() => window.stepwell.set({ 'lens.focalLength': 0.15 }));
  await expect(text(page)).toBeFocused();
  await undo(page).click();
  await expect(text(page)).toHaveValue('Half a sen');
  await undo(page).click();
  await expect(body(page).locator('.own-piece')).toHaveCount(0);
  await expect(text(page)).toHaveValue('Half a sen');
  await redo(page).click();
  await awayAndBack(page, 'own-pages');
  await expect(text(page)).toHaveValue('Half a sen');
  expect(await findViolations(page)).toEqual([]);
  // The page itself goes, and comes back with what was written on it.
  await undo(page).click();
  await undo(page).click();
  await expect(page.locator('.own-page')).toBeHidden();
  await expect(said(page)).toContainText('What you were writing on ‘One’ is kept');
  await redo(page).click();
  await redo(page).click();
  await expect(text(page)).toHaveValue('Half a sen');
  await text(page).press('Control+End');
  await page.keyboard.type('tence.');
  await form(page).getByRole('button', { name: 'Add it' }).click();
  expect(await textsOf(page)).toEqual(['First words.', 'Half a sentence.']);
});

test('undo by keyboard in a text takes back what was typed there, also after the page was drawn anew', async ({
  page,
}) => {
  await openDocument(page, 'own-pages');
  await newPage(page, 'One');
  await addText(page, 'First words.');
  await kind(page, 'Text').click();
  await page.keyboard.type('Kept.');
  await page.evaluate(() => window.stepwell.set({ 'lens.focalLength': 0.15 }));
  await body(page)
    .getByRole('button', { name: /^Take out: Text: First/ })
    .dispatchEvent('click');
  await expect(body(page).locator('.own-piece')).toHaveCount(0);
  await text(page).focus();
  await page.keyboard.press('Control+End');
  // The hand rests: what follows is a step of its own for the field.
  await page.keyboard.press('Enter');
  await page.keyboard.type('x');
  await page.keyboard.press('Control+z');
  const value = await text(page).inputValue();
  expect(value).not.toContain('x');
  // Nothing of the design was undone, and the form is still there.
  expect(await textsOf(page)).toEqual([]);
  await expect(form(page)).toHaveCount(1);
});

test('done, and what begins another piece, take what is written, or say what is wrong and stay', async ({
  page,
}) => {
  await openDocument(page, 'own-pages');
  await newPage(page, 'One');
  await addText(page, 'A');
  await addText(page, 'B');
  await body(page)
    .getByRole('button', { name: /^Change: Text: A/ })
    .click();
  await text(page).fill('A, changed');
  await body(page)
    .getByRole('button', { name: /^Change: Text: B/ })
    .click();
  await expect(text(page)).toHaveValue('B');
  expect(await textsOf(page)).toEqual(['A, changed', 'B']);
  await text(page).fill('B, changed');
  await body(page)
    .getByRole('button', { name: /^Add below: Text: A/ })
    .click();
  expect(await textsOf(page)).toEqual(['A, changed', 'B, changed']);
  await kind(page, 'Text').click();
  await text(page).fill('Between');
  // The piece below has moved on by the one that is taken.
  await body(page)
    .getByRole('button', { name: /^Change: Text: B/ })
    .click();
  await expect(text(page)).toHaveValue('B, changed');
  expect(await textsOf(page)).toEqual(['A, changed', 'Between', 'B, changed']);
  await text(page).fill('');
  await page.getByRole('button', { name: 'Done arranging' }).click();
  await expect(form(page).locator('.problem')).toContainText('The text is empty');
  await expect(text(page)).toBeFocused();
  await text(page).fill('B once more');
  await page.getByRole('button', { name: 'Done arranging' }).click();
  await expect(page.getByRole('button', { name: 'Arrange', exact: true })).toBeFocused();
  expect(await textsOf(page)).toEqual(['A, changed', 'Between', 'B once more']);
  // What nobody has touched is no piece.
  await page.getByRole('button', { name: 'Arrange', exact: true }).click();
  await kind(page, 'Part of another page').click();
  await page.getByRole('button', { name: 'Done arranging' }).click();
  expect(await textsOf(page)).toHaveLength(3);
});

test('what was written for a piece that has gone is kept as a new one', async ({ page }) => {
  await openDocument(page, 'own-pages');
  await newPage(page, 'One');
  await addText(page, 'A');
  await body(page)
    .getByRole('button', { name: /^Change: Text: A/ })
    .click();
  await text(page).fill('A, and much more');
  await undo(page).click();
  await expect(form(page)).toContainText('The piece that you were changing is gone');
  await expect(text(page)).toHaveValue('A, and much more');
  await redo(page).click();
  await expect(form(page)).not.toContainText('is gone');
  await undo(page).click();
  await form(page).getByRole('button', { name: 'Add it' }).click();
  expect(await textsOf(page)).toEqual(['A, and much more']);
});

test('each page keeps what is written on it, and what was said goes with the next change', async ({
  page,
}) => {
  await openDocument(page, 'own-pages');
  await newPage(page, 'One');
  await expect(said(page)).toContainText('add its first piece');
  await page.evaluate(() => window.stepwell.set({ 'lens.focalLength': 0.15 }));
  await expect(said(page)).toHaveText('');
  await addText(page, 'A');
  await kind(page, 'Numbers').click();
  await form(page).getByRole('combobox', { name: 'Search' }).fill('spot.width');
  await expect(form(page).getByRole('option').first()).toBeVisible();
  await page.keyboard.press('Enter');
  await form(page).getByLabel('Title').fill('Sizes');
  await newPage(page, 'Two');
  await expect(form(page)).toHaveCount(0);
  await page.getByRole('button', { name: 'Done arranging' }).click();
  await page.getByLabel('Title of a new page').fill('Thr');
  await awayAndBack(page, 'own-pages');
  await expect(page.getByLabel('Title of a new page')).toHaveValue('Thr');
  await page.locator('.own-pages-list').getByRole('button', { name: 'One' }).click();
  await expect(form(page).getByLabel('Title')).toHaveValue('Sizes');
  await expect(form(page).locator('.own-chosen')).toContainText('spot.width');
  await form(page).getByRole('button', { name: 'Add it' }).click();
  await body(page)
    .getByRole('button', { name: /^Take out: Text: A/ })
    .click();
  await expect(said(page)).toHaveText('Taken out. Undo brings it back.');
  await undo(page).click();
  await expect(said(page)).toHaveText('');
  expect(await textsOf(page)).toEqual(['A', 'values']);
});
