import { expect, test } from '@playwright/test';
import { documents } from '../../notebooks/contents.ts';
import { expectNoSidewaysScrolling, findViolations, settled } from './stepwellPage.ts';

const looks = [390, 1440].flatMap((width) =>
  (['light', 'dark'] as const).map((colorScheme) => ({ width, colorScheme })),
);

/** The start page first; what is read marks the ways through the pages, so that they are looked at with marks. */
for (const half of [0, 1])
  test(`axe finds nothing in any document, light and dark, 390 and 1440, part ${half + 1} of 2`, async ({
    page,
  }) => {
    test.setTimeout(600_000);
    const all = ['', ...documents.map(({ id }) => id)];
    const middle = all.indexOf('throughput');
    for (const id of half === 0 ? all.slice(0, middle) : all.slice(middle)) {
      await page.goto(`/#${id}`);
      await expect(page.locator(id === '' ? 'main.start' : `main#${id}`)).toBeVisible();
      for (const { width, colorScheme } of looks) {
        await page.setViewportSize({ width, height: 900 });
        await page.emulateMedia({ colorScheme });
        await settled(page);
        const where = `${id || 'start page'}, ${width}, ${colorScheme}`;
        expect.soft(await findViolations(page), where).toEqual([]);
        await expectNoSidewaysScrolling(page);
      }
    }
  });
