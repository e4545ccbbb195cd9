import type { Locator, Page } from '@playwright/test';
import { settled } from './stepwellPage.ts';

/** A place or a size in a picture, in its pixels. */
type Pair = readonly [number, number];

/** Drops a file on the field of an input, as from a folder beside the window. */
export async function dropOnField(page: Page, id: string, bytes: Buffer, file: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([text, file]) => {
      const transfer = new DataTransfer();
      const bytes = Uint8Array.from(atob(text!), (sign) => sign.charCodeAt(0));
      transfer.items.add(new File([bytes], file!));
      return transfer;
    },
    [bytes.toString('base64'), file],
  );
  await page.locator(`.field[data-input="${id}"] .field-drop`).dispatchEvent('drop', { dataTransfer: data });
}

/** Drags with the mouse over a drawn picture of that size, from one place of it to another. */
export async function dragOver(
  page: Page,
  stage: Locator,
  [wide, high]: Pair,
  [from, to]: readonly [Pair, Pair],
): Promise<void> {
  await stage.scrollIntoViewIfNeeded();
  // Playwright waits until the stage stands still before it hovers.
  await stage.hover();
  const box = (await stage.boundingBox())!;
  const at = ([x, y]: Pair): [number, number] => [
    box.x + (x / wide) * box.width,
    box.y + (y / high) * box.height,
  ];
  await page.mouse.move(...at(from));
  await page.mouse.down();
  await page.mouse.move(...at([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]));
  await page.mouse.move(...at(to));
  await page.mouse.up();
  await settled(page);
}
