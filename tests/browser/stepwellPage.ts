import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';
import { designGraph } from '../../lib/design/design.ts';
import { createEngine } from '../../lib/graph/engine.ts';
import type { Outcome } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import type { DesignState, Patch } from '../../lib/graph/state.ts';
import type { CameraImage } from '../../lib/measured/cameraImage.ts';
import { images, markPictures } from '../design/files.ts';
import { micrographs } from '../design/micrographFiles.ts';

declare global {
  interface Window {
    /** What the page offers to checks from outside. */
    stepwell: {
      settled(): Promise<number>;
      state(): DesignState;
      set(patch: Patch): void;
    };
  }
}

/** Opens a document and waits until every number is there. */
export async function openDocument(page: Page, id: string): Promise<void> {
  await page.goto(`/#${id}`);
  await expect(page.locator(`main#${id}`)).toBeVisible();
  await settled(page);
}

/** Opens the first document and waits until every number is there. */
export async function openMatching(page: Page): Promise<void> {
  await openDocument(page, 'matching');
}

/** Waits until the page shows the design as it stands. */
export async function settled(page: Page): Promise<void> {
  await page.evaluate(async () => {
    // A page that was just loaded looks first for the design that was open.
    while (!window.stepwell) await new Promise((resolve) => setTimeout(resolve, 10));
    await window.stepwell.settled();
  });
}

/** Small pictures by the id of the input that takes them. */
const pictures: Readonly<Record<string, readonly CameraImage[]>> = {
  'laser.beamImage': images,
  'markPicture.picture': markPictures,
  'micrograph.picture': micrographs,
  'otherMicrograph.picture': micrographs,
};

/** Inputs of the page's design; a picture does not pass through JSON: the small one of that name, or null. */
export async function readInputs(page: Page): Promise<Patch> {
  const inputs = await page.evaluate((ids) => {
    const { inputs } = window.stepwell.state();
    const nameOf = (id: string) => (inputs[id] as { name: string } | null)?.name ?? null;
    const names = ids.map((id) => [id, nameOf(id)] as const);
    return { ...inputs, ...Object.fromEntries(names) } as Record<string, unknown>;
  }, Object.keys(pictures));
  const found = Object.entries(pictures).map(([id, known]) => [
    id,
    known.find(({ name }) => name === inputs[id]) ?? null,
  ]);
  return { ...inputs, ...Object.fromEntries(found) };
}

/** A patch that passes through JSON: the samples of a picture as a plain array, which `revived` undoes in the page. */
export function plainPatch(patch: Patch): Patch {
  const plain = (value: unknown) => {
    const samples = (value as CameraImage | null)?.samples;
    return samples ? { ...(value as CameraImage), samples: [...samples] } : value;
  };
  return Object.fromEntries(Object.entries(patch).map(([id, value]) => [id, plain(value)]));
}

/** Outcomes of the whole graph for the same inputs, computed without a page. */
export function createHeadless(): (inputs: Patch) => (quantity: Quantity) => Outcome {
  const engine = createEngine(designGraph);
  return (inputs) => {
    engine.setInputs(inputs);
    // One by one as they are asked for: a document shows a part of what can be computed.
    return ({ id }) => engine.evaluate([id])[id]!;
  };
}

/** Brings the inputs of an element of the beam path. */
export async function chooseElement(page: Page, name: string): Promise<void> {
  await page.locator(`.beam-place[data-element="${name}"]`).click();
}

/** Types into the field of an input as a person does, and ends with Enter. */
export async function typeInto(page: Page, id: string, text: string): Promise<void> {
  const field = page.locator(`.field[data-input="${id}"] input[type="text"]`).first();
  await field.click();
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** Lays out blocks far from view at once, also while the hand still moves, for what reads the page as drawn. */
export async function layOutAll(page: Page): Promise<void> {
  await page.addStyleTag({ content: 'main * { content-visibility: visible !important; }' });
}

/** What axe finds on the page as it stands, or in a part of it: a line a rule with its places. */
export async function findViolations(page: Page, within?: string): Promise<string[]> {
  await layOutAll(page);
  // There are no frames: it need not open a page of its own to put together what it found, which takes seconds.
  // Only violations are put together: for what passes, that takes axe longer than the look itself.
  const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode(true);
  const { violations } = await (within === undefined ? axe : axe.include(within)).analyze();
  return violations.map(({ id, help, nodes }) => {
    const places = nodes.slice(0, 4).map(({ target, any }) => `${target.join(' ')} ${any[0]?.message ?? ''}`);
    return `${id}: ${help} (${nodes.length}): ${places.join('; ')}`;
  });
}

/** No page may be wider than the window. */
export async function expectNoSidewaysScrolling(page: Page): Promise<void> {
  const widths = await page.evaluate(() => [document.documentElement.scrollWidth, window.innerWidth]);
  expect(widths[0]).toBeLessThanOrEqual(widths[1]!);
}
