import { expect, test } from '@playwright/test';
import { dipShown, openLecture, upToDate } from './givenLecture.ts';

test('words keep their size and place when the answer is shown, and news lies over the step', async ({
  page,
}) => {
  await openLecture(page, 2);
  const words = page.locator('.giving-words');
  const question = page.locator('.giving-question');
  await expect(dipShown(page)).toBeHidden();
  const measured = async () => [
    await words.evaluate((one) => getComputedStyle(one).zoom),
    await question.boundingBox(),
  ];
  const before = await measured();
  await page.keyboard.press('ArrowRight');
  await upToDate(page);
  await expect(dipShown(page)).toBeVisible();
  expect(await measured()).toEqual(before);
  await page.keyboard.press('t');
  await expect(page.locator('.giving-news')).toHaveText('The time begins anew.');
  expect(await page.evaluate(() => document.documentElement.scrollHeight - innerHeight)).toBe(0);
  const tick = await page.locator('.figure-svg').evaluate((svg) => {
    const { viewBox } = svg as SVGSVGElement;
    return 11.5 * (svg.getBoundingClientRect().width / viewBox.baseVal.width);
  });
  expect(tick).toBeGreaterThanOrEqual(20);
});

test('a chart to come has its title and its frame at once', async ({ page }) => {
  await page.addInitScript(() => {
    const seen: string[] = [];
    Object.assign(window, { seen });
    new MutationObserver(() => {
      const coming = document.querySelector<HTMLElement>('.own-chart-coming:not([hidden])');
      if (coming) seen.push(coming.querySelector('.figure-title')!.textContent);
    }).observe(document, { subtree: true, childList: true, attributes: true });
  });
  await openLecture(page, 4);
  await expect(page.locator('.own-chart .figure-svg')).toBeVisible();
  await expect(page.locator('.own-chart-coming')).toBeHidden();
  const seen = await page.evaluate(() => (window as unknown as { seen: string[] }).seen);
  expect([...new Set(seen)]).toEqual(['Spot width over focal length']);
});
