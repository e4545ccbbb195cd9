import { expect, type Page, test } from '@playwright/test';
import { shippedLectures } from '../../notebooks/lectures/shipped.ts';
import { openLecture, title, upToDate } from './givenLecture.ts';
import { expectNoSidewaysScrolling, findViolations } from './stepwellPage.ts';

/** A step as it stands: axe finds nothing, nothing is cut off, and a wide screen holds all of it. */
async function expectSound(page: Page, isWide: boolean): Promise<void> {
  await upToDate(page);
  // What was withheld fades in for a third of a second: colours are judged when it is there.
  await page.evaluate(() =>
    Promise.all(document.getAnimations().map(({ finished }) => finished.catch(() => undefined))),
  );
  const where = `${await page.locator('.giving-place').textContent()}: ${await title(page).textContent()}`;
  expect(await findViolations(page), where).toEqual([]);
  await expectNoSidewaysScrolling(page);
  if (!isWide) return;
  const beyond = () => page.evaluate(() => document.documentElement.scrollHeight - window.innerHeight);
  await expect.poll(beyond, { message: where }).toBe(0);
}

for (const colorScheme of ['light', 'dark'] as const)
  for (const viewport of [
    { width: 1440, height: 900 },
    { width: 390, height: 844 },
  ])
    test.describe(`${colorScheme}, ${viewport.width} px`, () => {
      test.use({ colorScheme, viewport });

      test('axe finds nothing on any step, and nothing is cut off', async ({ page }) => {
        await openLecture(page);
        for (let i = 0; i < 10; i++) {
          await expectSound(page, viewport.width === 1440);
          await page.keyboard.press('PageDown');
        }
      });

      for (const { id, steps, title: name } of shippedLectures)
        test(`${name}: axe finds nothing on any step, and nothing is cut off`, async ({ page }) => {
          test.setTimeout(600_000);
          await page.goto(`/#lectures/${id}/1`);
          for (const [i, step] of steps.entries()) {
            await expect(title(page)).toHaveText(step.title);
            // What the step withholds is asked first, then shown, then the next one comes.
            const isAsked = await page.getByRole('button', { name: 'Show it' }).isVisible();
            if (isAsked) {
              await expectSound(page, viewport.width === 1440);
              await page.keyboard.press('PageDown');
            }
            await expectSound(page, viewport.width === 1440);
            if (i < steps.length - 1) await page.keyboard.press('PageDown');
          }
        });
    });

test('the lecturer’s page: axe finds nothing, light and dark', async ({ page }) => {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await openLecture(page, 2);
    const [beside] = await Promise.all([page.waitForEvent('popup'), page.keyboard.press('n')]);
    await beside.emulateMedia({ colorScheme });
    await expect(beside.locator('.lecturer-notes')).toContainText('Wait');
    expect(await findViolations(beside)).toEqual([]);
    await page.keyboard.press('n');
    await expect.poll(() => beside.isClosed()).toBe(true);
    await page.goto('/#matching');
  }
});
