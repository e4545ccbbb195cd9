import { fileURLToPath } from 'node:url';
import { expect, type Locator, type Page } from '@playwright/test';
import { openDocument, settled } from './stepwellPage.ts';

const funnel = fileURLToPath(new URL('../../data/designs/rain-gauge-funnel.json', import.meta.url));
export const find = (page: Page) => page.getByRole('region', { name: 'Find inputs' });
export const proposal = (page: Page) => page.getByRole('region', { name: 'Proposal' });
export const varyTool = (page: Page) => page.getByRole('region', { name: 'Vary', exact: true });
export const input = (page: Page, id: string) =>
  page.evaluate((one) => window.stepwell.state().inputs[one], id);

export async function openFunnel(page: Page): Promise<void> {
  await openDocument(page, 'what-if');
  await page.setInputFiles('#design-file', funnel);
  await expect(page.locator('.notice[data-topic="opened"]')).toContainText('is open');
  await settled(page);
}

/** Hundreds of designs take seconds where several suites share a processor. */
export const searched = { timeout: 40_000 };

/** Types the name of a quantity and takes the first that is offered. */
export async function choose(field: Locator, name: string): Promise<void> {
  await field.fill(name);
  await field.press('Enter');
  await expect(field).toHaveValue(name);
  await expect(field).toHaveAttribute('aria-expanded', 'false');
}

/** Goes on with Tab until that element has the focus. */
export async function tabTo(page: Page, target: Locator): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    if (await target.evaluate((one) => one === document.activeElement).catch(() => false)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error('Tab does not come there');
}
