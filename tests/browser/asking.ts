import { expect, type Page } from '@playwright/test';
import { settled } from './stepwellPage.ts';

/** The list on the page What if, and its form. */
export const askedList = (page: Page) => page.getByRole('region', { name: 'What is asked of the design' });
export const askForm = (page: Page) => page.getByRole('group', { name: 'Ask something of a number' });

/** Asks something of a number with the form on the page What if. */
export async function ask(page: Page, id: string, bounds: { least?: string; most?: string }, reason = '') {
  await askForm(page).getByRole('combobox', { name: 'Ask something of' }).fill(id);
  await askForm(page)
    .getByLabel('at least')
    .fill(bounds.least ?? '');
  await askForm(page)
    .getByLabel('at most')
    .fill(bounds.most ?? '');
  await askForm(page).getByLabel('because').fill(reason);
  await askForm(page)
    .getByRole('button', { name: /what is required of/ })
    .first()
    .click();
}

/** Goes to another document without loading the page anew. */
export async function goTo(page: Page, id: string) {
  await page.evaluate((name) => {
    location.hash = name;
  }, id);
  await expect(page.locator(`main#${id}`)).toBeVisible();
  await settled(page);
}
