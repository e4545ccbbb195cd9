import { expect, type Page } from '@playwright/test';

export const lecturesOf = (page: Page) =>
  page.evaluate(() => window.stepwell.state().studies?.lectures ?? []);
export const titlesOf = async (page: Page) => (await lecturesOf(page))[0]!.steps.map(({ title }) => title);
export const steps = (page: Page) => page.locator('.lecture-steps > li');
export const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
export const undo = (page: Page) => button(page, 'Undo');
export const card = (page: Page, title: string) => page.getByRole('article', { name: title, exact: true });
/** Parts of three pages, by their label among what the page offers. */
export const chosen: readonly (readonly [page: string, labels: readonly string[]])[] = [
  [
    'Matching beam and plate',
    [
      'Text: Today’s beam on today’s plate',
      'Chart: Fluence across the spot',
      'Chart: Two amplitudes on the axis',
      'Chart: Profile in the focus against step ratio',
    ],
  ],
  ['Through the focus', ['Chart: Fluence through the focus', 'Chart: Fluence on the axis through the focus']],
  [
    'Fluence and threshold',
    [
      'Chart: Fluence across the spot, and the threshold',
      'Text: The threshold',
      'Charts: The mark from above, to scale',
      'Chart: Growth of the mark',
    ],
  ],
];
export const tenTitles = chosen.flatMap(([, labels]) => labels.map((label) => label.replace(/^\w+: /, '')));

export async function newLecture(page: Page, title: string): Promise<void> {
  await page.getByLabel('Title of a new lecture').fill(title);
  await button(page, 'New lecture').click();
  await expect(page.getByRole('heading', { name: title, exact: true })).toBeVisible();
}

/** Ticks parts of three pages, and makes a step of each. */
export async function addTen(page: Page): Promise<void> {
  for (const [source, labels] of chosen) {
    await page.getByLabel('Page they come from').selectOption({ label: source });
    for (const label of labels) await page.getByRole('checkbox', { name: label, exact: true }).check();
  }
  await button(page, 'Add 10 steps, one for each').click();
  await expect(steps(page)).toHaveCount(10);
}
