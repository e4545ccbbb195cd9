import { expect, test } from '@playwright/test';
import { designGraph } from '../../lib/design/design.ts';
import { writeDesignFile } from '../../lib/design/designFile.ts';
import { initialState } from '../../lib/graph/state.ts';
import { noStudies } from '../../lib/graph/studies.ts';
import { hasAxes } from '../../notebooks/blockChoices.ts';
import { documents } from '../../notebooks/contents.ts';
import { isShowable } from '../../notebooks/ownBlocks.ts';
import { openDocument, settled } from './stepwellPage.ts';

test('every part of every page stands on an own page without a fault, its charts with ends of their own', async ({
  page,
}) => {
  test.setTimeout(300_000);
  const thrown: string[] = [];
  page.on('pageerror', ({ message }) => thrown.push(message));
  const ends = { x: [1, 3], y: [0.5, 2] } as const;
  const ownDocuments = documents
    .filter(({ id }) => id !== 'own-pages')
    .map(({ id, title, blocks }, i) => ({
      id: `page${i + 1}`,
      title,
      blocks: blocks.filter(isShowable).map((block) => ({
        kind: 'block' as const,
        document: id,
        block: block.id,
        ...(hasAxes(block) && ends),
      })),
    }));
  const design = { ...initialState(designGraph), studies: { ...noStudies, ownDocuments } };
  await openDocument(page, 'own-pages');
  await page.setInputFiles('#design-file', {
    name: 'all.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeDesignFile(designGraph, design)),
  });
  for (const { title, blocks } of ownDocuments) {
    await page.locator('.own-pages-list').getByRole('button', { name: title, exact: true }).click();
    await expect(page.locator('.own-page-body').locator('.own-shown'), title).toHaveCount(blocks.length);
    await settled(page);
    const ids = await page.locator('[id]').evaluateAll((all) => all.map(({ id }) => id));
    expect(ids.filter((id, i) => ids.indexOf(id) < i)).toEqual([]);
    await expect(page.locator('.own-page-body'), title).not.toContainText('a fault of the program');
  }
  expect(thrown).toEqual([]);
});
