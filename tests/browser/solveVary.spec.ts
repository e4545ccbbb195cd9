import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { expectNoSidewaysScrolling, findViolations } from './stepwellPage.ts';
import { choose, find, input, openFunnel, proposal, searched, tabTo, varyTool } from './whatIfTools.ts';

for (const size of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${size.width} × ${size.height}`, () => {
    test.use({ viewport: size });

    test('step ratio and width with a lens out of three, by mouse: proposed, taken over, taken back', async ({
      page,
    }) => {
      await openFunnel(page);
      const tool = find(page);
      await choose(tool.getByLabel('result', { exact: true }), 'step ratio');
      await expect(tool.locator('.study-row').first()).toContainText('Today it is 1.067.');
      await tool.getByLabel('value', { exact: true }).fill('1.05');
      await tool.getByRole('button', { name: 'Let magnification change' }).click();
      await tool.getByRole('button', { name: 'Want something else too' }).click();
      await choose(tool.getByLabel('result', { exact: true }).nth(1), 'spot width');
      await tool
        .getByRole('group', { name: 'Something wanted' })
        .nth(1)
        .locator('select')
        .selectOption('lies between');
      await tool.getByLabel('value', { exact: true }).nth(1).fill('49');
      await tool.getByLabel('and', { exact: true }).nth(1).fill('49.5 µm');
      await tool.getByRole('button', { name: 'Let another input change' }).click();
      await choose(tool.getByLabel('input', { exact: true }).nth(1), 'focal length');
      await tool.getByLabel('may be').nth(1).selectOption('only these values');
      await tool.getByLabel('values, with semicolons between').nth(1).fill('160 mm; 200 mm; 250 mm');
      await tool.getByRole('button', { name: 'Look for it' }).click();
      const answer = proposal(page);
      await expect(answer).toContainText('Found, after', searched);
      await expect(answer.getByRole('row').filter({ hasText: 'focal length' }).first()).toContainText('200');
      await expect(answer.getByRole('row').filter({ hasText: 'step ratio' }).first()).toContainText('1.05');
      await expect(answer.locator('.choices-summary')).toContainText('would change.');
      expect(await findViolations(page, '#block-solve-form')).toEqual([]);
      await expectNoSidewaysScrolling(page);
      expect(await input(page, 'lens.focalLength')).toBe(0.16);
      await answer.getByRole('button', { name: 'Take this over' }).click();
      await expect(tool).toContainText('Taken over. Undo takes it back.');
      await expect(answer).toBeHidden();
      expect(await input(page, 'lens.focalLength')).toBe(0.2);
      // A step of 8 mm over a beam of 2.5 mm: 8 / (2.5 × 1.05).
      expect(await input(page, 'expander.magnification')).toBeCloseTo(8 / 2.5 / 1.05, 5);
      await page.keyboard.press('Control+z');
      expect(await input(page, 'lens.focalLength')).toBe(0.16);
      expect(await input(page, 'expander.magnification')).toBe(3);
    });

    test('the same by keyboard alone, and a changed design marks the proposal', async ({ page }) => {
      await openFunnel(page);
      const tool = find(page);
      await tool.getByLabel('result', { exact: true }).focus();
      await page.keyboard.type('step ratio');
      await page.keyboard.press('Enter');
      await tabTo(page, tool.getByLabel('value', { exact: true }));
      await page.keyboard.type('1.05');
      await tabTo(page, tool.getByLabel('input', { exact: true }));
      await page.keyboard.type('magnification');
      await page.keyboard.press('Enter');
      await tabTo(page, tool.getByRole('button', { name: 'Let another input change' }));
      await page.keyboard.press('Enter');
      await page.keyboard.type('focal length');
      await page.keyboard.press('Enter');
      await tabTo(page, tool.getByLabel('may be').nth(1));
      await page.keyboard.type('only');
      await tabTo(page, tool.getByLabel('values, with semicolons between').nth(1));
      await page.keyboard.type('160 mm; 200 mm; 250 mm');
      await page.keyboard.press('Enter');
      const answer = proposal(page);
      await expect(answer).toContainText('There are 2 other solutions', searched);
      await tabTo(page, answer.getByRole('radio').first());
      await page.keyboard.press('ArrowDown');
      await expect(answer.getByRole('radio').nth(1)).toBeChecked();
      await page.evaluate(() => window.stepwell.set({ 'plate.stepDiameter': 7e-3 }));
      await expect(answer).toHaveAttribute('data-older', '');
      await expect(answer).toContainText('The design has changed since this was found.');
      await expect(answer.getByRole('button', { name: 'Take this over' })).toHaveCount(0);
      await tabTo(page, answer.getByRole('button', { name: 'Look again' }));
      await page.keyboard.press('Enter');
      await expect(answer).not.toHaveAttribute('data-older', '');
      await tabTo(page, answer.getByRole('button', { name: 'Take this over' }));
      await page.keyboard.press('Enter');
      expect(await input(page, 'expander.magnification')).toBeCloseTo(7 / 2.5 / 1.05, 5);
      await expect(tool.getByRole('button', { name: 'Look for it' })).toBeFocused();
    });

    test('one input and two are varied, follow the design and are marked until then', async ({ page }) => {
      await openFunnel(page);
      const tool = varyTool(page);
      await tool.getByLabel('result', { exact: true }).focus();
      await page.keyboard.type('spot width');
      await page.keyboard.press('Enter');
      await tabTo(page, tool.getByRole('button', { name: 'Vary focal length' }));
      await page.keyboard.press('Enter');
      await expect(tool.getByLabel('input', { exact: true })).toHaveValue('focal length');
      await page.keyboard.press('Enter');
      const figure = tool.locator('figure');
      await expect(figure).toContainText('Spot width over focal length');
      await expect(figure).toContainText(
        /Spot width rises from .* Today focal length is 160\smm, with spot width 38\.95\sµm\./,
      );
      await expect(figure).toContainText('today, 160');
      await page.evaluate(() => window.stepwell.set({ 'lens.focalLength': 0.2 }));
      await expect(tool.locator('.study-varied')).toHaveAttribute('data-older', '');
      await expect(figure).toContainText(/Today focal length is 200\smm, with spot width 48\.69\sµm\./);
      await expect(tool.locator('.study-varied')).not.toHaveAttribute('data-older', '');
      await tool.getByText('The numbers as a table').click();
      await expect(tool.locator('tbody tr')).toHaveCount(41);
      await tool.getByRole('button', { name: 'Vary a second input too' }).click();
      await choose(tool.getByLabel('input', { exact: true }).nth(1), 'magnification');
      for (const place of [0, 1]) await tool.getByLabel('values', { exact: true }).nth(place).fill('60');
      await tool.getByRole('button', { name: 'Draw it' }).click();
      await expect(figure).toContainText('Spot width over focal length and magnification');
      await expect(figure).toContainText('Of the 3600 places worked out', searched);
      expect(await findViolations(page, '#block-vary-form')).toEqual([]);
      await expectNoSidewaysScrolling(page);
      const [saved] = await Promise.all([
        page.waitForEvent('download'),
        figure.getByRole('button', { name: 'CSV' }).click(),
      ]);
      const lines = readFileSync(await saved.path(), 'utf8')
        .trim()
        .split('\r\n');
      expect(lines[0]).toBe('focal length (mm),magnification,spot width (µm)');
      expect(lines).toHaveLength(3601);
    });
  });
}
