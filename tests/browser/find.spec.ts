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
