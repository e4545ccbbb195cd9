import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { openDocument, settled } from './stepwellPage.ts';

for (const size of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${size.width} × ${size.height}`, () => {
    test.use({ viewport: size });

    test('alternatives are kept, compared, taken over and taken back, by keyboard', async ({ page }) => {
      await openDocument(page, 'what-if');
      const compare = page.getByRole('region', { name: 'Alternatives' });
      await page.locator('#alternative-name').fill('Half a step');
      await page.keyboard.press('Enter');
      await expect(compare.locator('.compare-row')).toContainText(['Half a step as today']);
      await page.keyboard.press('Enter');
      await expect(compare.locator('.compare-row')).toHaveCount(2);
      await page.evaluate(() => window.stepwell.set({ 'expander.magnification': 2.4 }));
      await settled(page);
      await expect(compare.locator('.compare-row').first()).toContainText('differs in 1 input');
      const rows = compare.locator('.compare-table').first().locator('tbody tr');
      await expect(rows).toHaveCount(1);
      await expect(rows.first()).toContainText('magnification');
      await expect(rows.first()).toContainText('−17');
      await expect(compare.locator('.choices-summary')).toContainText(/\d+ of the \d+ numbers of ‘Matching/);
      await page.locator('#compare-document').selectOption({ label: 'Scale-up' });
      await expect(compare.locator('.choices-summary')).toContainText('‘Scale-up’');
      await expect(compare.locator('.choices-summary')).toContainText('a longer computation.');
      await compare.getByRole('button', { name: 'Work them out' }).focus();
      await page.keyboard.press('Enter');
      await expect(compare.locator('.choices-summary')).not.toContainText('a longer computation', {
        timeout: 90_000,
      });
      const [saved] = await Promise.all([
        page.waitForEvent('download'),
        compare.getByRole('button', { name: 'Inputs that differ as CSV' }).click(),
      ]);
      expect(readFileSync(await saved.path(), 'utf8')).toMatch(
        /^quantity,id,today,Half a step,Alternative 2\r\nmagnification,/,
      );
      await compare.getByRole('button', { name: 'Take over Half a step' }).focus();
      await page.keyboard.press('Enter');
      await expect(compare.locator('.compare-row').first()).toContainText('as today');
      expect(await page.evaluate(() => window.stepwell.state().inputs['expander.magnification'])).toBe(2);
      await page.keyboard.press('Control+z');
      expect(await page.evaluate(() => window.stepwell.state().inputs['expander.magnification'])).toBe(2.4);
      await compare.getByRole('button', { name: 'Take Half a step out of the list' }).click();
      await expect(compare.locator('.compare-row')).toHaveCount(1);
    });
  });
}

test('alternatives come back after the page is loaded anew', async ({ page }) => {
  await openDocument(page, 'what-if');
  await page.locator('#alternative-name').fill('Kept over night');
  await page.getByRole('button', { name: 'Keep the design as it stands' }).click();
  await page.evaluate(() => window.stepwell.set({ 'expander.magnification': 2.4 }));
  await settled(page);
  // The history is written a moment after the hand rests.
  await page.waitForTimeout(1000);
  await page.reload();
  await expect(page.locator('.compare-row')).toContainText(['Kept over night differs in 1 input']);
});

test('a name that is taken is refused in words', async ({ page }) => {
  await openDocument(page, 'what-if');
  const name = page.locator('#alternative-name');
  await name.fill('One');
  await page.keyboard.press('Enter');
  await name.fill('One');
  await page.keyboard.press('Enter');
  await expect(page.locator('.compare-keep .problem')).toContainText('There is an alternative ‘One’ already');
  await expect(page.locator('.compare-row')).toHaveCount(1);
});

test('the last change says what moved and along which chain', async ({ page }) => {
  await openDocument(page, 'what-if');
  const change = page.getByRole('region', { name: 'The last change' });
  await expect(change).toContainText('Nothing has been changed yet.');
  await page.evaluate(() => window.stepwell.set({ 'expander.magnification': 2.4 }));
  await settled(page);
  await expect(change).toContainText('The last step changed magnification from 2 to 2.4.');
  const row = change
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: 'step ratio', exact: true }) });
  await expect(row).toContainText(
    'magnification → magnified beam diameter → beam diameter at the plate → step ratio',
  );
  await row.getByRole('button').click();
  await expect(page.getByRole('complementary')).toContainText('step ratio');
});
