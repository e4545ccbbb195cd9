import { expect, type Page, test } from '@playwright/test';
import { waitingText } from '../../notebooks/prose.ts';
import { findViolations, layOutAll, openMatching, settled } from './stepwellPage.ts';

const set = (page: Page, patch: Record<string, unknown>) =>
  page.evaluate((change) => window.stepwell.set(change), patch);

/** Text that a reader sees in the sheet. */
async function visibleText(page: Page): Promise<string> {
  await layOutAll(page);
  // What is folded away does not count, which textContent would hold.
  // biome-ignore lint/performance/useDomNodeTextContent: the text as a reader sees it
  return page.locator('main#matching').innerText();
}
const count = (text: string, part: string) => text.split(part).length - 1;

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${viewport.width} × ${viewport.height}, a design without a spot`, () => {
    test.use({ viewport });

    test('says why once, near the top, and leads to the field', async ({ page }) => {
      await openMatching(page);
      await set(page, { 'plate.apertureDiameter': 5e-3 });
      await settled(page);
      const text = await visibleText(page);
      expect(count(text, 'lies outside the stop')).toBe(1);
      expect(text).toContain(
        'This design has no spot. The step (10\u202fmm) lies outside the stop (5\u202fmm)',
      );
      expect(text).toContain('Before the plate comes out.');
      expect(text).toMatch(/lower the energy first/);
      expect(text).toMatch(/X-rays\. .*no all-clear: speak with radiation protection/);
      expect(text).not.toContain('Take that lens');
      for (const paragraph of await page.locator('main p:visible').allInnerTexts())
        expect(paragraph).not.toContain('—');
      expect(count(text, waitingText)).toBeGreaterThan(2);
      expect(await findViolations(page)).toEqual([]);

      await page.getByRole('button', { name: 'Go to: step diameter' }).click();
      const field = page.locator('.field[data-input="plate.stepDiameter"]');
      await expect(field.locator('input[type="text"]')).toBeFocused();
      await expect(field).toHaveAttribute('data-problem', '');
      await expect(field.locator('.problem')).toContainText('lies outside the stop');

      await set(page, { 'plate.apertureDiameter': 14e-3 });
      await settled(page);
      await expect(field.locator('.problem')).toHaveText('');
      const mended = await visibleText(page);
      expect(mended).not.toContain(waitingText);
      expect(mended).not.toContain('This design has no spot');
      expect(mended).toContain('Take that lens');
    });

    test('far from the focus the caution stays, and the page does not jump', async ({ page }) => {
      await openMatching(page);
      const figure = page.locator('#block-profile');
      await figure.scrollIntoViewIfNeeded();
      const before = (await figure.boundingBox())!.height;
      await set(page, { 'workpiece.z': 50e-3 });
      await settled(page);
      const text = await visibleText(page);
      expect(count(text, 'Rayleigh lengths from the focus; profiles are computed up to 12.')).toBe(1);
      expect(text).not.toContain('This design has no spot.');
      expect(text).toMatch(/can raise the peak fluence several times.*lower the energy first/);
      expect((await figure.boundingBox())!.height).toBeGreaterThan(0.95 * before);
      await page.getByRole('button', { name: 'Bring the workpiece to the focus' }).click();
      await settled(page);
      expect(await page.evaluate(() => window.stepwell.state().inputs['workpiece.z'])).toBe(0);
      await expect(page.locator('.result-missing')).toBeHidden();
      await expect(page.locator('.field[data-input="workpiece.z"] input[type="text"]').first()).toBeFocused();
    });

    test('a problem of one paragraph stands in its place, with the rest as it was', async ({ page }) => {
      await openMatching(page);
      await set(page, { 'wish.spotWidth': 5e-3 });
      await settled(page);
      const text = await visibleText(page);
      expect(count(text, 'No focal length between')).toBe(1);
      expect(text).not.toContain('Take that lens');
      expect(text).not.toContain('This design has no spot');
      expect(text).not.toContain(waitingText);
    });
  });
}
