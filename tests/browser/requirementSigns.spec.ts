import { expect, test } from '@playwright/test';
import { ask, goTo } from './asking.ts';
import { findSmallTargets } from './smallTargets.ts';
import { findViolations, openDocument } from './stepwellPage.ts';

for (const colorScheme of ['light', 'dark'] as const) {
  test.describe(`${colorScheme} page with every kind of sign`, () => {
    test.use({ colorScheme });

    test('axe finds nothing, and paper shows the signs', async ({ page }) => {
      await openDocument(page, 'what-if');
      await ask(page, 'match.stepRatio', { least: '1.05' }, 'near the flat-top');
      await ask(page, 'spot.width', { most: '20 µm' });
      await ask(page, 'spot.measuredWidth', { most: '20 µm' });
      await page.getByRole('button', { name: 'Keep the design as it stands' }).click();
      await expect(page.getByRole('table', { name: 'What is asked, design by design' })).toBeVisible();
      expect(await findViolations(page)).toEqual([]);
      await goTo(page, 'matching');
      const value = page.locator('.value:has([data-verdict="not met"])').first();
      await value.click();
      await page.getByText('Change what is required of it').click();
      expect(await findViolations(page)).toEqual([]);
      await page.keyboard.press('Escape');
      await page.emulateMedia({ media: 'print' });
      await expect(value.locator('svg')).toBeVisible();
      await expect(page.locator('.value [data-verdict="met"] svg').first()).toBeVisible();
    });
  });
}

test.describe('with a finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('everything is large enough to hit', async ({ page }) => {
    await openDocument(page, 'what-if');
    await ask(page, 'match.stepRatio', { least: '1.05' }, 'near the flat-top');
    await page.getByRole('button', { name: 'Keep the design as it stands' }).click();
    await expect(page.getByRole('table', { name: 'What is asked, design by design' })).toBeVisible();
    expect(await findSmallTargets(page)).toEqual([]);
    await goTo(page, 'matching');
    await page.locator('.value:has(.requirement-mark)').first().click();
    await page.getByText('Change what is required of it').click();
    expect(await findSmallTargets(page)).toEqual([]);
  });
});
