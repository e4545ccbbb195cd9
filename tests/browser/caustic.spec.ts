import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, type Page, test } from '@playwright/test';
import { readCausticFile } from '../../lib/design/causticFile.ts';
import { causticRatio } from '../../lib/design/measuredCaustic.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import {
  createHeadless,
  expectNoSidewaysScrolling,
  openMatching,
  readInputs,
  settled,
} from './stepwellPage.ts';

const causticPath = fileURLToPath(new URL('../../data/measured/rain-gauge-caustic.csv', import.meta.url));

/** Drops a file on the field of an input, as a person does from a folder. */
async function dropFile(page: Page, input: string, name: string, content: string): Promise<void> {
  const dataTransfer = await page.evaluateHandle(
    ([name, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content!], name!));
      return transfer;
    },
    [name, content],
  );
  await page.dispatchEvent(`.field[data-input="${input}"] .field-drop`, 'drop', { dataTransfer });
}

for (const viewport of [
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
]) {
  test.describe(`at ${viewport.width} × ${viewport.height}`, () => {
    test.use({ viewport });

    test('a researcher drops the table of a caustic', async ({ page }) => {
      await openMatching(page);
      await expect(page.locator('#block-caustic')).toBeHidden();
      const text = readFileSync(causticPath, 'utf8');
      await dropFile(page, 'laser.causticTable', 'rain-gauge-caustic.csv', text);
      const ratio = page.locator('#block-caustic [data-quantity="laser.causticRatio"]');
      await expect(ratio).toBeVisible();
      await settled(page);
      const inputs = await readInputs(page);
      expect(inputs['laser.ratioSource']).toBe('measured');
      const outcomeOf = createHeadless()({
        ...inputs,
        'laser.causticTable': readCausticFile(text, 'rain-gauge-caustic.csv'),
      });
      // Drawn with M² = 1.15 (data/measured/README.md) and 0.8 % scatter of thirteen diameters.
      expect(Number(await ratio.textContent())).toBeCloseTo(1.15, 1);
      await expect(ratio).toHaveText(shownValue(causticRatio, outcomeOf(causticRatio)));
      await expect(page.locator('.field[data-input="laser.causticTable"]')).toContainText(
        'rain-gauge-caustic.csv',
      );
      await expect(page.locator('.field[data-input="laser.beamPropagationRatio"]')).toBeHidden();
      await expect(page.locator('#block-caustic-figure .figure-summary:not(.figure-hint)')).toContainText(
        'narrowest at z = 152.4',
      );
      await expectNoSidewaysScrolling(page);

      await ratio.click();
      await expect(page.locator('.trace').getByRole('heading')).toHaveText('M² of the caustic');
      await page.keyboard.press('Escape');

      // File and choice came as one step.
      await page.getByRole('button', { name: 'Undo' }).click();
      await settled(page);
      expect((await readInputs(page))['laser.ratioSource']).toBe('typed');
      await expect(page.locator('#block-caustic')).toBeHidden();
      await page.getByRole('button', { name: 'Redo' }).click();
      await expect(ratio).toBeVisible();

      await dropFile(page, 'laser.causticTable', 'notes.txt', 'Measured on Monday.\n');
      const field = page.locator('.field[data-input="laser.causticTable"]');
      await expect(field.locator('.problem')).toContainText('"notes.txt" is no table of a caustic');
      await expect(ratio).toBeVisible();

      await field.getByRole('button', { name: 'Take out' }).click();
      await settled(page);
      await expect(page.locator('.result-missing')).toContainText('No table of a caustic has been given yet');
      await expect(page.locator('#block-caustic-figure')).toBeHidden();
      await expectNoSidewaysScrolling(page);
    });

    test('the door for a measured beam takes the table of a caustic as well', async ({ page }) => {
      await page.goto('/');
      const choosing = page.waitForEvent('filechooser');
      await page.getByText('I have a beam image').click();
      await (await choosing).setFiles(causticPath);
      await expect(page.locator('main#matching')).toBeVisible();
      await settled(page);
      expect((await readInputs(page))['laser.ratioSource']).toBe('measured');
      await expect(page.locator('#block-caustic')).toBeVisible();
    });
  });
}
