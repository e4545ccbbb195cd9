import { expect, type Page, test } from '@playwright/test';
import { openMatching } from './stepwellPage.ts';

const finder = (page: Page) => page.getByRole('combobox', { name: /^Find a page/ });

test.use({ viewport: { width: 1440, height: 900 } });

test('who asks for goggles is led to the cautions', async ({ page }) => {
  await openMatching(page);
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await finder(page).fill('goggles');
  await expect(page.getByRole('option').first()).toContainText('Class 4 laser');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Before any setting' })).toBeFocused();
  await expect(page.getByRole('heading', { name: 'Before any setting' })).toBeInViewport();
});

test('the search leads to a chart, and a number opens where one is', async ({ page }) => {
  await openMatching(page);
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await finder(page).fill('map through focus fluence');
  await page.getByRole('option', { name: /^Fluence through the focus/ }).click();
  await expect(page).toHaveURL(/#through-focus\/map$/);
  await expect(page.locator('#block-map')).toBeInViewport();
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await finder(page).fill('unshaped rayleigh length');
  await page.getByRole('option', { name: /^Rayleigh length of the unshaped beam/ }).click();
  await expect(page.getByRole('complementary')).toContainText('focus.rayleighLength');
  await expect(page).toHaveURL(/#through-focus\/map$/);
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await expect(finder(page)).toBeFocused();
  await page.locator('h1').click();
  await expect(finder(page)).toBeHidden();
});

test('a material leads to its input, and who is new to the ways in', async ({ page }) => {
  await openMatching(page);
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await finder(page).fill('copper');
  await page.keyboard.press('Enter');
  const trace = page.getByRole('complementary');
  await expect(trace.getByLabel('material of the workpiece', { exact: true })).toBeVisible();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Find', exact: true }).click();
  await finder(page).fill('where do i start');
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/#reading\/newcomer$/);
  await expect(page.getByRole('heading', { name: 'I am new in the lab' })).toBeFocused();
});

test('a word in a lesson opens its meaning, without values that might pass for those of the case', async ({
  page,
}) => {
  await page.goto('/#lessons/stop');
  await page.getByRole('button', { name: 'stop', exact: true }).first().click();
  const panel = page.getByRole('dialog', { name: /^What ‘.*’ means$/ });
  await expect(panel).toBeVisible();
  await expect(panel.locator('[data-quantity]')).toHaveCount(0);
  await page.keyboard.press('Escape');
  await expect(panel).toBeHidden();
});
