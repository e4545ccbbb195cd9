import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { ask, askedList, askForm, goTo } from './asking.ts';
import { openDocument, settled } from './stepwellPage.ts';

for (const size of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${size.width} × ${size.height}`, () => {
    test.use({ viewport: size });

    test('a number is asked something where it stands, and the sign beside it follows the design', async ({
      page,
    }) => {
      await openDocument(page, 'matching');
      const ratio = page.locator('.value[data-quantity="match.stepRatio"]:visible').first();
      await ratio.click();
      const panel = page.getByRole('complementary');
      await panel.getByText('Require something of this number').click();
      await panel.getByLabel('at least').fill('1.05');
      await panel.getByLabel('at most').fill('1');
      await panel.getByLabel('because').fill('near the flat-top');
      await panel.getByRole('button', { name: 'Set what is required of step ratio' }).click();
      await expect(panel.locator('.problem').last()).toContainText('at least 1.05 and at most 1 at once');
      await expect(ratio.locator('.requirement-mark')).toHaveCount(0);
      await panel.getByLabel('at most').fill('1.2');
      await panel.getByRole('button', { name: 'Set what is required of step ratio' }).click();
      await expect(panel.locator('.requirement-said')).toHaveText(
        'Required: from 1.05 to 1.2, because: near the flat-top. Not met: 0.05 too little.',
      );
      const sign = ratio.locator('.requirement-mark');
      await expect(sign).toHaveAttribute('data-verdict', 'not met');
      await expect(ratio).toHaveAccessibleName('1 (required: from 1.05 to 1.2, not met, 0.05 too little)');
      await page.evaluate(() => window.stepwell.set({ 'expander.magnification': 1.8 }));
      await settled(page);
      await expect(sign).toHaveAttribute('data-verdict', 'met');
      await expect(panel.locator('.requirement-said')).toContainText('Met: 0.0611 to spare.');
      // One step back is the magnification, the next the requirement.
      await page.keyboard.press('Escape');
      await page.keyboard.press('Control+z');
      await expect(sign).toHaveAttribute('data-verdict', 'not met');
      await page.keyboard.press('Control+z');
      await expect(sign).toHaveCount(0);
    });

    test('the list is worked by keyboard alone: asked, changed, taken out, the failed ones first', async ({
      page,
    }) => {
      await openDocument(page, 'what-if');
      await expect(askedList(page)).toContainText('Nothing is asked of the design yet.');
      const search = askForm(page).getByRole('combobox', { name: 'Ask something of' });
      await search.focus();
      await page.keyboard.type('spot.width');
      await expect(askForm(page)).toContainText(/Today: 19\.52\sµm/);
      await page.keyboard.press('Tab');
      await page.keyboard.press('Tab');
      await page.keyboard.type('20 um');
      await page.keyboard.press('Tab');
      await page.keyboard.type('the tool path');
      await page.keyboard.press('Enter');
      await expect(askedList(page)).toContainText('The one requirement is met.');
      await expect(search).toBeFocused();
      await page.keyboard.type('match.stepRatio');
      await page.keyboard.press('Tab');
      await page.keyboard.type('1.05');
      await page.keyboard.press('Enter');
      const rows = askedList(page).locator('tbody tr');
      await expect(rows.first()).toContainText('step ratio');
      await expect(rows.first()).toContainText('Not met: 0.05 too little.');
      await expect(rows.nth(1)).toContainText(/Met: 0\.4\d+\sµm to spare\./);
      await expect(askedList(page)).toContainText('Of 2 requirements 1 is not met and 1 is met.');
      await rows.first().getByRole('button', { name: 'Change what is required of step ratio' }).focus();
      await page.keyboard.press('Enter');
      await expect(askForm(page).getByLabel('at least')).toBeFocused();
      await page.keyboard.type('0.9');
      await page.keyboard.press('Enter');
      await expect(askedList(page)).toContainText('All 2 requirements are met.');
      await rows.filter({ hasText: 'spot width' }).getByRole('button', { name: 'Take out' }).focus();
      await page.keyboard.press('Enter');
      await expect(rows).toHaveCount(1);
      await expect(search).toBeFocused();
      await search.fill('');
      await page.locator('h1').focus();
      await page.keyboard.press('Control+z');
      await expect(rows).toHaveCount(2);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide).toBeLessThanOrEqual(size.width);
    });

    test('kept designs are judged, and charts show them', async ({ page }) => {
      await openDocument(page, 'what-if');
      await ask(page, 'spot.width', { most: '20 µm' });
      await ask(page, 'groove.depth', { least: '2 µm' });
      await page.locator('#alternative-name').fill('Equal diameters');
      await page.keyboard.press('Enter');
      await page.evaluate(() => window.stepwell.set({ 'expander.magnification': 2.4 }));
      await settled(page);
      const judged = page.getByRole('table', { name: 'What is asked, design by design' });
      const width = judged
        .getByRole('row')
        .filter({ has: page.getByRole('rowheader', { name: /^spot width/ }) });
      await expect(width.getByRole('cell').nth(0)).toContainText('not met');
      await expect(width.getByRole('cell').nth(1)).toContainText(/19\.52\sµm.*\(met\).*to spare/);
      await page.getByRole('button', { name: 'Work it out' }).click();
      const depth = judged
        .getByRole('row')
        .filter({ has: page.getByRole('rowheader', { name: /^depth of the groove/ }) });
      await expect(depth.getByRole('cell').nth(1)).toContainText(/27\.\d\sµm.*\(met\)/, { timeout: 60_000 });
      await page.getByRole('checkbox', { name: 'Show Equal diameters in charts' }).focus();
      await page.keyboard.press('Space');
      await goTo(page, 'matching');
      const chart = page.locator('.figure-block:visible').filter({ hasText: 'Fluence across the spot' });
      await chart.scrollIntoViewIfNeeded();
      await expect(chart.locator('.figure-summary').first()).toContainText(
        'In thin dashes also drawn: ‘Equal diameters’.',
      );
      await expect(chart.locator('svg.figure-svg')).toContainText('Equal diameters');
      const [saved] = await Promise.all([
        page.waitForEvent('download'),
        chart.getByRole('button', { name: 'CSV' }).click(),
      ]);
      expect(readFileSync(await saved.path(), 'utf8').split('\r\n')[0]).toContain('Equal diameters (J/cm²)');
      await goTo(page, 'grooves');
      const groove = page.locator('#block-groove-section');
      await groove.scrollIntoViewIfNeeded();
      await expect(groove.locator('.figure-summary').first()).toContainText('‘Equal diameters’', {
        timeout: 60_000,
      });
      await goTo(page, 'what-if');
      await page.getByRole('checkbox', { name: 'Show Equal diameters in charts' }).uncheck();
      await goTo(page, 'matching');
      await expect(chart.locator('.figure-summary').first()).not.toContainText('Equal diameters');
    });
  });
}

test('an input that something is asked of carries the sign at its field', async ({ page }) => {
  await openDocument(page, 'what-if');
  await ask(page, 'laser.beamDiameter', { most: '4 mm' });
  const sign = page.locator('.field[data-input="laser.beamDiameter"] .field-label .requirement-mark');
  await expect(sign).toHaveAttribute('data-verdict', 'not met');
  await page.evaluate(() => window.stepwell.set({ 'laser.beamDiameter': 3e-3 }));
  await expect(sign).toHaveAttribute('data-verdict', 'met');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(sign).toHaveCount(0);
});

test('a fifth design in charts is refused in words', async ({ page }) => {
  await openDocument(page, 'what-if');
  const boxes = page.getByRole('checkbox', { name: /in charts$/ });
  for (let i = 0; i < 5; i++) {
    await page.getByRole('button', { name: 'Keep the design as it stands' }).click();
    await boxes.nth(i).click();
  }
  await expect(page.locator('.masthead-message')).toContainText('4 designs beside today’s at most');
  await expect(boxes.nth(4)).not.toBeChecked();
});

test('a quantity that is gone is not known, and can be taken out', async ({ page }) => {
  await openDocument(page, 'what-if');
  await ask(page, 'spot.width', { most: '20' });
  await askForm(page).getByRole('combobox').fill('no such number');
  await askForm(page).getByRole('combobox').blur();
  await expect(askForm(page)).toContainText('There is no number ‘no such number’');
  await ask(page, 'spot.measuredWidth', { most: '20' });
  await expect(askedList(page).locator('tbody tr').first()).toContainText('Not known: No measured profile');
  await expect(askedList(page).locator('tbody tr').first()).toHaveAttribute('data-verdict', 'not known');
});

test('a number of one’s own is judged while its line stands, and is not known without it', async ({
  page,
}) => {
  await openDocument(page, 'what-if');
  const own = page.getByRole('form', { name: 'An own number' });
  await own.getByLabel('Name').fill('twice the focal length');
  await own.getByLabel('Formula', { exact: true }).fill('2 * lens.focalLength');
  await own.getByRole('button', { name: 'Keep' }).click();
  await ask(page, 'own.twiceTheFocalLength', { most: '250 mm' });
  const row = askedList(page).locator('tbody tr');
  await expect(row).toContainText(/twice the focal length.*Met: 50\smm to spare/);
  const shown = page.locator('.own-lines .value');
  await expect(shown.locator('.requirement-mark')).toHaveAttribute('data-verdict', 'met');
  await page.evaluate(() => window.stepwell.set({ 'lens.focalLength': 0.15 }));
  await settled(page);
  await expect(row).toContainText(/Not met: 50\smm too much/);
  await expect(shown.locator('.requirement-mark')).toHaveAttribute('data-verdict', 'not met');
  await page.getByRole('button', { name: 'Take twice the focal length out' }).click();
  await expect(row).toContainText('Not known: no such number in this design');
  await row.getByRole('button', { name: 'Take out' }).click();
  await expect(row).toHaveCount(0);
});
