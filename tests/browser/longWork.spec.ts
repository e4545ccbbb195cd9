import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { expectNoSidewaysScrolling, findViolations, openDocument, settled } from './stepwellPage.ts';

/** Eighty places: their fit takes several seconds. */
const long = readFileSync(new URL('../../data/measured/rain-gauge-ladder.csv', import.meta.url), 'utf8');

async function pasteLadder(page: Page): Promise<void> {
  const field = page.locator('.field[data-input="ladder.table"]');
  await field.locator('summary', { hasText: 'Paste a table' }).click();
  await field.locator('textarea').fill(long);
  await page.keyboard.press('Control+Enter');
  await expect(field).toContainText('pasted table');
}

/** Presses the button that has the focus, by the keyboard. */
async function press(page: Page): Promise<void> {
  await page.keyboard.press('Enter');
}

for (const { width, height, colorScheme } of [
  { width: 1440, height: 900, colorScheme: 'light' },
  { width: 390, height: 844, colorScheme: 'dark' },
] as const) {
  test.describe(`at ${width} × ${height}, ${colorScheme}`, () => {
    test.use({ viewport: { width, height }, colorScheme });

    test('a long fit shows how far it is, is stopped by a key, and worked out after all', async ({
      page,
    }) => {
      await openDocument(page, 'threshold');
      const line = page.locator('.work-line');
      await expect(line).toHaveCount(0);
      await pasteLadder(page);
      const said = page.locator('#block-ladder-said');
      const own = page.locator('.work-line:has(+ #block-ladder-said)');
      await expect(own).toContainText(/^Being worked out: \d{1,2}\s%Stop$/);
      const status = page.locator('main > [role="status"].off-screen');
      await expect(status).toHaveText('Being worked out: fit of the ladder.');
      await expect(
        said.locator('.stand-in').filter({ visible: true }),
        'what stood there is of another design',
      ).toHaveCount(0);
      expect(await findViolations(page, '.work-line')).toEqual([]);
      await expectNoSidewaysScrolling(page);

      await own.getByRole('button', { name: 'Stop: fit of the ladder' }).focus();
      await press(page);
      await expect(own).toContainText('Stopped before it was worked out');
      await expect(status).toHaveText('Stopped: fit of the ladder.');
      // Nothing is waited for.
      await settled(page);
      await expect(said).toContainText('Fit of the ladder: stopped by you before it was worked out.');
      await expect(own.getByRole('button', { name: 'Work it out: fit of the ladder' })).toBeFocused();
      expect(await findViolations(page)).toEqual([]);
      await expectNoSidewaysScrolling(page);

      await press(page);
      await expect(own, 'shown at once').toContainText(/^Being worked out/);
      // Once is enough: it takes 15 seconds.
      if (width < 1440) return;
      await settled(page);
      await expect(line).toHaveCount(0);
      await expect(status).toHaveText('Worked out: fit of the ladder.');
      await expect(said).toBeFocused();
      await expect(said).not.toContainText('stopped by you');
      await expect(page.locator('#block-ladder-fit')).toBeVisible();
    });
  });
}

test('after a stop another input begins anew, and undo brings back the stop', async ({ page }) => {
  await openDocument(page, 'threshold');
  await pasteLadder(page);
  const own = page.locator('.work-line:has(+ #block-ladder-said)');
  await own.getByRole('button', { name: /^Stop/ }).click();
  await settled(page);
  await page.evaluate(() => window.stepwell.set({ 'plate.stop': 'open' }));
  await expect(own).toContainText(/^Being worked out/);
  await page.keyboard.press('Control+z');
  await expect(own).toContainText('Stopped before it was worked out');
  await settled(page);
});
