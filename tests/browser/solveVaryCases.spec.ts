import { expect, test } from '@playwright/test';
import { createPart } from '../../lib/design/ownParts.ts';
import { writePartsFile } from '../../lib/design/ownPartsFile.ts';
import { findViolations, openDocument } from './stepwellPage.ts';
import { choose, find, input, openFunnel, proposal, searched, varyTool } from './whatIfTools.ts';

test('what cannot be had says why, and further limits that would do', async ({ page }) => {
  await openFunnel(page);
  const tool = find(page);
  await tool.getByRole('button', { name: 'Look for it' }).click();
  await expect(tool).toContainText('Nothing is wanted yet');
  await choose(tool.getByLabel('result', { exact: true }), 'step ratio');
  await tool.getByLabel('value', { exact: true }).fill('1.05 mm');
  await choose(tool.getByLabel('input', { exact: true }), 'focal length');
  await tool.getByRole('button', { name: 'Look for it' }).click();
  await expect(tool.locator('.study-row .problem').first()).toContainText('1.05 mm');
  await tool.getByLabel('value', { exact: true }).fill('1.05');
  await page.keyboard.press('Enter');
  const answer = proposal(page);
  await expect(answer).toContainText('nothing that may change enters step ratio');
  await choose(tool.getByLabel('input', { exact: true }), 'magnification');
  await tool.getByLabel('from', { exact: true }).fill('1');
  await tool.getByLabel('to', { exact: true }).fill('2');
  await page.keyboard.press('Enter');
  await expect(answer).toContainText(
    'magnification stands at the upper limit, 2. With further limits it is met: magnification 3.048.',
  );
  await expect(answer).toContainText('step ratio 1.6 instead of 1.05, 52');
  await answer.getByRole('button', { name: 'Discard' }).click();
  await expect(answer).toBeHidden();
  expect(await input(page, 'expander.magnification')).toBe(3);
});

test('one of the lenses that the person keeps', async ({ page }) => {
  const parts = [0.2, 0.25].map((f) => createPart('lens', `Lens of ${f * 1e3}`, { 'lens.focalLength': f }));
  await page.addInitScript((text) => localStorage.setItem('stepwell.parts', text), writePartsFile(parts));
  await openFunnel(page);
  const tool = find(page);
  await choose(tool.getByLabel('result', { exact: true }), 'spot width');
  await tool.getByRole('group', { name: 'Something wanted' }).locator('select').selectOption('is at least');
  await tool.getByLabel('value', { exact: true }).fill('55');
  await tool.getByLabel('one of my lenses').check();
  await tool.getByRole('button', { name: 'Look for it' }).click();
  await expect(proposal(page)).toContainText('Inputs that would change (Lens of 250)', searched);
});

test('long work shows how far it is and is stopped', async ({ page }) => {
  await openFunnel(page);
  const tool = varyTool(page);
  await choose(tool.getByLabel('result', { exact: true }), 'rise under the moving spot, by its own profile');
  await choose(tool.getByLabel('input', { exact: true }), 'magnification');
  await tool.getByLabel('values', { exact: true }).fill('500');
  await tool.getByRole('button', { name: 'Draw it' }).click();
  await expect(tool.locator('.study-progress')).toContainText(/Working it out: \d+\s% done/);
  await tool.getByRole('button', { name: 'Stop' }).click();
  await expect(tool).toContainText('Stopped. Nothing is drawn.');
  await expect(tool.getByRole('button', { name: 'Draw it' })).toBeFocused();
  await expect(tool.locator('figure')).toHaveCount(0);
  await tool.getByLabel('values', { exact: true }).fill('2');
  await page.keyboard.press('Enter');
  await expect(tool.locator('figure')).toContainText('by its own profile over magnification', searched);
});

test('a number on any page is brought here, and what was typed stays while the person is away', async ({
  page,
}) => {
  await openDocument(page, 'matching');
  await page.locator('[data-quantity="spot.width"]').first().click();
  await page.getByRole('button', { name: 'Find inputs that give another value' }).click();
  await expect(find(page).getByLabel('value', { exact: true })).toBeFocused();
  await page.keyboard.type('25');
  await page.evaluate(() => {
    location.hash = 'matching';
  });
  await expect(page.locator('main#matching')).toBeVisible();
  await page.locator('[data-quantity="spot.width"]').first().click();
  await page.getByRole('button', { name: 'Vary what it depends on' }).click();
  await expect(find(page).getByLabel('value', { exact: true })).toHaveValue('25');
  await expect(varyTool(page).getByLabel('result', { exact: true })).toHaveValue('spot width');
  await expect(varyTool(page).locator('.study-influences')).toBeFocused();
  await expect(varyTool(page).locator('.study-influences li').first()).toContainText(
    /1\s% more → [\d.]+\s% (more|less)/,
  );
  for (const scheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme: scheme });
    expect(await findViolations(page, '#block-vary-form')).toEqual([]);
    expect(await findViolations(page, '#block-solve-form')).toEqual([]);
  }
});

test('a number of one’s own is looked for and varied like any other', async ({ page }) => {
  await openFunnel(page);
  const form = page.getByRole('form', { name: 'An own number' });
  await form.getByLabel('Name').fill('width to lens');
  await form.getByLabel('Formula', { exact: true }).fill('spot.width / lens.focalLength');
  await form.getByRole('button', { name: 'Keep' }).click();
  const tool = varyTool(page);
  await choose(tool.getByLabel('result', { exact: true }), 'width to lens');
  await tool.getByRole('button', { name: 'Vary magnification' }).click();
  await tool.getByRole('button', { name: 'Draw it' }).click();
  await expect(tool.locator('figure')).toContainText('Width to lens over magnification');
  await choose(find(page).getByLabel('result', { exact: true }), 'width to lens');
  await find(page).getByLabel('value', { exact: true }).fill('0.00025');
  await find(page).getByRole('button', { name: 'Let magnification change' }).click();
  await page.keyboard.press('Enter');
  await expect(proposal(page)).toContainText('Found, after', searched);
});
