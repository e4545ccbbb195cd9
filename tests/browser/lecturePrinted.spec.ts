import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { strFromU8, unzipSync } from 'fflate';
import { main } from '../../notebooks/command/main.ts';
import { shippedLectures } from '../../notebooks/lectures/shipped.ts';
import { card } from './makingLectures.ts';
import { openDocument } from './stepwellPage.ts';

/** A printed copy as the page saves it. */
async function savedCopy(page: Page, title: string, words: string): Promise<Uint8Array> {
  const button = card(page, title).getByRole('button', { name: `Printed copy: ${words}` });
  const [download] = await Promise.all([page.waitForEvent('download', { timeout: 90_000 }), button.click()]);
  return readFileSync(await download.path());
}

/** The only Markdown file of a zip. */
function markdownOf(bytes: Uint8Array): string {
  const [text] = Object.entries(unzipSync(bytes)).flatMap(([name, one]) =>
    name.endsWith('.md') ? [one] : [],
  );
  return strFromU8(text!);
}

/** A printed copy as the command writes it. */
async function writtenCopy(args: readonly string[]): Promise<Uint8Array> {
  let [bytes, said]: [Uint8Array | undefined, string] = [undefined, ''];
  const code = await main([...args, '--to', 'l.md.zip'], {
    readFile: (path) => readFileSync(path),
    writeFile: (_, file) => {
      bytes = file;
    },
    out: () => {},
    err: (text) => {
      said += text;
    },
  });
  expect([code, said]).toEqual([0, '']);
  return bytes!;
}

/** Names of pictures are made of the file's. */
const withoutNames = (text: string) => text.replace(/\]\([^)]*\.(png|svg)\)/g, '](picture.$1)');

for (const { id, title } of shippedLectures)
  test(`${title}: the copy that the page saves is the one that the command writes, with notes and without`, async ({
    page,
  }) => {
    test.setTimeout(300_000);
    await openDocument(page, 'lectures');
    await card(page, title).getByText('Printed copy', { exact: true }).click();
    for (const notes of [false, true]) {
      await card(page, title).getByLabel('with the lecturer’s notes').setChecked(notes);
      const saved = markdownOf(await savedCopy(page, title, 'Markdown with figures (zip)'));
      const today = /\d{4}-\d\d-\d\d/.exec(saved)![0];
      const args = ['lecture', id, ...(notes ? ['--notes'] : []), '--date', today];
      const said = withoutNames(markdownOf(await writtenCopy(args)));
      expect(withoutNames(saved).length).toBeGreaterThan(5000);
      expect(withoutNames(saved)).toBe(said);
    }
  });
