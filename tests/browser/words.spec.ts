import { expect, type Page, test } from '@playwright/test';
import { findSmallTargets } from './smallTargets.ts';
import {
  expectNoSidewaysScrolling,
  findViolations,
  openDocument,
  openMatching,
  settled,
} from './stepwellPage.ts';
import { input } from './whatIfTools.ts';

const entry = (page: Page, id: string) => page.locator(`article[data-within="${id}"]`);
const widths = (page: Page) => page.getByRole('region', { name: 'Widths of a Gaussian beam' });
const pulse = (page: Page) => page.getByRole('region', { name: 'Fluence of a Gaussian pulse' });
const finder = (page: Page) => page.getByRole('combobox', { name: /^Find a page/ });

test.describe('with the mouse', () => {
  test.use({ viewport: { width: 1440, height: 900 } });

  test('a word is looked up, and its number opens', async ({ page }) => {
    await openDocument(page, 'words');
    await page.getByLabel('Look up a word or a symbol').fill('rayl');
    await expect(page.getByText(/^1 of \d+ words$/)).toBeVisible();
    await expect(page.locator('article.word:visible')).toHaveCount(1);
    const value = entry(page, 'rayleigh-length').locator('[data-quantity="focus.rayleighLength"]');
    await expect(value).toHaveText('131.1\u202fµm');
    await value.click();
    await expect(page.getByRole('complementary')).toContainText('Rayleigh length of the unshaped beam');
    await page.getByRole('complementary').getByRole('button', { name: 'Close' }).click();
    await page.evaluate(() => window.stepwell.set({ 'lens.focalLength': 0.2 }));
    await settled(page);
    await expect(value).toHaveText('524.6\u202fµm');
    await page.getByLabel('Look up a word or a symbol').fill('M2');
    await expect(page.locator('article.word:visible').first()).toHaveAttribute(
      'data-within',
      'propagation-ratio',
    );
    await page.getByLabel('Look up a word or a symbol').fill('');
    await expect(page.locator('article.word').nth(1)).not.toHaveAttribute('data-within', 'propagation-ratio');
    await page.getByLabel('Look up a word or a symbol').fill('zzqqxx');
    await expect(page.getByText(/^No word like that/)).toBeVisible();
  });

  test('an address opens at its word, and words lead to each other', async ({ page }) => {
    await openDocument(page, 'words');
    await page.goto('/#words/effective-area');
    await expect(entry(page, 'effective-area')).toBeInViewport();
    await expect(entry(page, 'effective-area').getByRole('heading')).toBeFocused();
    await entry(page, 'effective-area').getByRole('link', { name: 'Peak fluence' }).click();
    await expect(page).toHaveURL(/#words\/peak-fluence$/);
    await expect(entry(page, 'peak-fluence')).toBeInViewport();
  });

  test('what takes a long search waits until it is asked for', async ({ page }) => {
    await page.goto('/#words/gain');
    await expect(entry(page, 'gain')).toBeInViewport();
    const asked = entry(page, 'gain').getByRole('button', { name: 'work it out' }).first();
    await asked.click();
    await expect(page.getByRole('complementary')).toContainText('gain in time with the plate');
  });

  test('a word in the text opens its meaning in place', async ({ page }) => {
    await openMatching(page);
    const term = page.getByRole('button', { name: 'step ratio', exact: true }).first();
    await term.click();
    const panel = page.getByRole('dialog', { name: 'What ‘Step ratio’ means' });
    await expect(panel).toContainText('Step diameter over beam diameter at the plate');
    await expect(panel.locator('[data-quantity="match.stepRatio"]')).toHaveText('1');
    const [opened, word] = [await panel.boundingBox(), await term.boundingBox()];
    const apart = Math.max(opened!.y - (word!.y + word!.height), word!.y - (opened!.y + opened!.height));
    expect(apart).toBeGreaterThan(0);
    expect(apart).toBeLessThan(20);
    await page.getByRole('heading', { level: 1 }).click();
    await expect(panel).toBeHidden();
    await term.click();
    await panel.getByRole('link', { name: 'In the list of words' }).click();
    await expect(entry(page, 'step-ratio')).toBeInViewport();
    await expect(panel).toBeHidden();
  });

  test('one width gives all others, and becomes the raw beam in one step', async ({ page }) => {
    await openDocument(page, 'words');
    const field = (name: string) => widths(page).getByLabel(name, { exact: false });
    await field('Full width at half maximum').fill('2 mm');
    // 2w = 1.699 FWHM, w = 2σ, 1/e smaller by √2
    await expect(field('1/e² diameter')).toHaveValue('3.3973\u202fmm');
    await expect(field('1/e² radius')).toHaveValue('1.6986\u202fmm');
    await expect(field('1/e diameter')).toHaveValue('2.4022\u202fmm');
    await expect(field('Standard deviation')).toHaveValue('849.32\u202fµm');
    await field('1/e² diameter').fill('4');
    await page.keyboard.press('Enter');
    await expect(field('Full width at half maximum')).toHaveValue('2.3548\u202fmm');
    await widths(page).getByRole('button', { name: 'Use as raw beam diameter' }).click();
    await expect(widths(page)).toContainText('The raw beam of the design is now 4\u202fmm wide');
    expect(await input(page, 'laser.beamDiameter')).toBeCloseTo(4e-3, 12);
    await page.keyboard.press('Control+z');
    expect(await input(page, 'laser.beamDiameter')).toBe(5e-3);
    await field('1/e² diameter').fill('90 mm');
    await page.keyboard.press('Enter');
    await widths(page).getByRole('button', { name: 'Use as raw beam diameter' }).click();
    await expect(widths(page)).toContainText('50\u202fmm');
    expect(await input(page, 'laser.beamDiameter')).toBe(5e-3);
    await field('1/e² diameter').fill('5 kg');
    await page.keyboard.press('Enter');
    await expect(widths(page).locator('.problem:not(:empty)')).toHaveCount(1);
    await expect(field('1/e² radius')).toHaveValue('45\u202fmm');
  });

  test('energy gives peak and mean, and either gives the energy', async ({ page }) => {
    await openDocument(page, 'words');
    const field = (name: string) => pulse(page).getByLabel(name, { exact: false });
    await field('The width is given as').selectOption({ label: '1/e² radius' });
    await pulse(page).getByLabel('Width', { exact: true }).fill('20 µm');
    await field('Pulse energy').fill('10 µJ');
    await expect(field('Peak fluence')).toHaveValue('1.5915\u202fJ/cm²');
    await expect(field('Mean fluence')).toHaveValue('0.79577\u202fJ/cm²');
    await field('Mean fluence').fill('1.5915494');
    await page.keyboard.press('Enter');
    await expect(field('Pulse energy')).toHaveValue('20\u202fµJ');
    await field('Pulse energy').fill('5e-6');
    await expect(pulse(page)).toContainText('Read in µJ: 5\u202fpJ.');
    await page.keyboard.press('Enter');
    await expect(field('Pulse energy')).toHaveValue('5\u202fpJ');
    await field('Pulse energy').fill('20');
    await page.keyboard.press('Enter');
    await expect(field('Pulse energy')).toHaveValue('20\u202fµJ');
    await field('The width is given as').selectOption({ label: '1/e² diameter, D4σ' });
    await expect(pulse(page).getByLabel('Width', { exact: true })).toHaveValue('40\u202fµm');
  });

  test('ways through the pages mark what was opened, and forget it', async ({ page }) => {
    await page.goto('/');
    await page.getByRole('link', { name: 'Three ways through all pages' }).click();
    const path = page.getByRole('region', { name: 'I am new in the lab' });
    await expect(path.getByRole('listitem').first()).toContainText('Matching beam and plate');
    await expect(path).not.toContainText('opened');
    await path.getByRole('link', { name: 'Matching beam and plate' }).click();
    await expect(page.locator('main#matching')).toBeVisible();
    await page.reload();
    await page.getByRole('link', { name: 'Paths' }).click();
    await expect(path.getByRole('listitem').first()).toContainText('opened');
    await expect(path.locator('li[data-next]')).toContainText('go on here');
    await page.getByRole('button', { name: 'Forget what I have read' }).click();
    await expect(path).not.toContainText('opened');
  });
});

test.describe('with the keyboard on a small page', () => {
  test.use({ viewport: { width: 390, height: 844 } });

  test('the search opens with its key, is walked by arrows, and gives the focus back', async ({ page }) => {
    await openMatching(page);
    await page.keyboard.press('/');
    await expect(finder(page)).toBeFocused();
    await page.keyboard.type('raleigh lenght');
    await expect(page.getByRole('option').first()).toHaveAttribute('aria-selected', 'true');
    await expectNoSidewaysScrolling(page);
    await page.keyboard.press('ArrowDown');
    await expect(page.getByRole('option').nth(1)).toHaveAttribute('aria-selected', 'true');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await expect(page).toHaveURL(/#words\/rayleigh-length$/);
    await expect(entry(page, 'rayleigh-length')).toBeInViewport();
    await page.keyboard.press('/');
    await page.keyboard.type('zzqqxx');
    await expect(page.getByText('Nothing like that here.')).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(finder(page)).toBeHidden();
    await expect(page.getByRole('button', { name: 'Find', exact: true })).toBeFocused();
  });

  test('the key types a stroke where one types', async ({ page }) => {
    await openDocument(page, 'words');
    await page.getByLabel('Look up a word or a symbol').focus();
    await page.keyboard.type('1/e');
    await expect(page.getByLabel('Look up a word or a symbol')).toHaveValue('1/e');
    await expect(finder(page)).toBeHidden();
  });

  test('a word opens by Enter, is left by Tab, and closes with Escape', async ({ page }) => {
    await openMatching(page);
    const term = page.getByRole('button', { name: 'flat-topped' });
    await term.focus();
    await page.keyboard.press('Enter');
    const panel = page.getByRole('dialog', { name: 'What ‘Flat-top’ means' });
    await expect(panel).toBeFocused();
    await expect(panel).toBeInViewport();
    await expectNoSidewaysScrolling(page);
    await page.keyboard.press('Escape');
    await expect(panel).toBeHidden();
    await expect(term).toBeFocused();
    await page.keyboard.press('Space');
    await expect(panel).toBeVisible();
    for (let presses = 0; presses < 8 && (await panel.isVisible()); presses++)
      await page.keyboard.press('Tab');
    await expect(page.getByRole('button', { name: 'ring-shaped' })).toBeFocused();
  });

  test('pages, panel and results are no wider than the window', async ({ page }) => {
    for (const id of ['words', 'reading']) {
      await openDocument(page, id);
      await expectNoSidewaysScrolling(page);
    }
  });
});

test.describe('under a finger', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test('every target is at least 24 px high and wide', async ({ page }) => {
    await openDocument(page, 'reading');
    expect(await findSmallTargets(page), 'ways').toEqual([]);
    await openDocument(page, 'words');
    expect(await findSmallTargets(page), 'words').toEqual([]);
    await page.getByRole('button', { name: 'Find', exact: true }).tap();
    await finder(page).fill('fluence');
    expect(await findSmallTargets(page), 'search').toEqual([]);
    await openMatching(page);
    await page.getByRole('button', { name: 'flat-topped' }).tap();
    expect(await findSmallTargets(page), 'meaning of a word').toEqual([]);
  });
});

for (const colorScheme of ['light', 'dark'] as const)
  for (const width of [1440, 390])
    test.describe(`${colorScheme}, ${width} px`, () => {
      test.use({ colorScheme, viewport: { width, height: 900 } });

      test('axe finds nothing', async ({ page }) => {
        await openDocument(page, 'reading');
        expect(await findViolations(page), 'ways').toEqual([]);
        await openDocument(page, 'words');
        // Axe takes minutes for all words; those that are shown have each kind of line.
        await page.getByLabel('Look up a word or a symbol').fill('wave');
        await expect(page.locator('article.word:visible .word-values').first()).toBeVisible();
        expect(await findViolations(page), 'words').toEqual([]);
        await page.getByRole('button', { name: 'Find', exact: true }).click();
        await finder(page).fill('fluence');
        expect(await findViolations(page), 'search').toEqual([]);
        await openMatching(page);
        await page.getByRole('button', { name: 'flat-topped' }).click();
        expect(await findViolations(page), 'meaning of a word').toEqual([]);
      });
    });
