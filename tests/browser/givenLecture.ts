import { expect, type Page } from '@playwright/test';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import { shownValue } from '../../lib/graph/shown.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { writeLink } from '../../notebooks/keeping/designLink.ts';
import { trialLecture } from '../trialLecture.ts';

const { steps } = trialLecture;
export const curves = 'main.giving .figure-curve:not([d=""])';
export const title = (page: Page) => page.locator('main.giving h1');

/** Opens the trial lecture at a step, counted from 1, out of a link. */
export async function openLecture(page: Page, step = 1): Promise<void> {
  const studies = { ...noStudies, lectures: [trialLecture] };
  const { text } = await writeLink({ inputs: designGraph.initial, name: 'Trial', studies });
  await page.goto(`/#lectures/${trialLecture.id}/${step}?design=${text}`);
  await expect(title(page)).toHaveText(steps[step - 1]!.title);
  await upToDate(page);
}

/** Waits until nothing on the page is older than its design. */
export async function upToDate(page: Page): Promise<void> {
  await expect(page.locator('main.giving [data-pending], main.giving [data-older]')).toHaveCount(0);
}

/** The value of a quantity as it is shown, worked out without a page. */
export function shownOf(id: string, inputs: Readonly<Record<string, unknown>>): string {
  const engine = createEngine(designGraph, { ...designGraph.initial, ...inputs });
  return shownValue(designGraph.quantities.get(id)!, engine.evaluate([id])[id]!);
}

export const dipShown = (page: Page) => page.locator('main.giving .value[data-quantity="spot.dip"]').first();
