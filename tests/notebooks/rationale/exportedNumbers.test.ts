import fc from 'fast-check';
import { strFromU8, unzipSync } from 'fflate';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { writeDesignFile } from '../../../lib/design/designFile.ts';
import { createEngine } from '../../../lib/graph/engine.ts';
import { hasValue } from '../../../lib/graph/outcome.ts';
import { shownValue } from '../../../lib/graph/shown.ts';
import { parseQuantity } from '../../../lib/graph/units.ts';
import type { Paper } from '../../../notebooks/paper/paper.ts';
import { runsIn } from '../../../notebooks/paper/readPaper.ts';
import { uncertaintyOf } from '../../../notebooks/paper/uncertainties.ts';
import { writeDocx } from '../../../notebooks/paper/writeDocx.ts';
import { writeHtml } from '../../../notebooks/paper/writeHtml.ts';
import { writeMarkdown } from '../../../notebooks/paper/writeMarkdown.ts';
import { cases } from '../../cases.ts';
import { allowedDesigns, usualDesigns } from '../../design/inputs.ts';
import { run } from '../runCommand.ts';
import { blankPictures, demoDesign, rationaleOf, wordsOf } from './workedPapers.ts';

/** Ids and texts of all values in a paper, in order. */
function valuesIn(paper: Paper): [id: string, text: string][] {
  return runsIn(paper.blocks).flatMap((one): [string, string][] =>
    'text' in one && one.quantity !== undefined ? [[one.quantity, one.text]] : [],
  );
}

/** Ids and texts of all values that a written page marks as such. */
function valuesInHtml(html: string): [string, string][] {
  const { document } = parseHTML(html);
  return [...document.querySelectorAll('[data-quantity]')].map((one) => [
    one.getAttribute('data-quantity')!,
    one.textContent!,
  ]);
}

const markdownWords = (zip: Uint8Array) => {
  const files = unzipSync(zip);
  const name = Object.keys(files).find((one) => one.endsWith('.md'))!;
  return strFromU8(files[name]!).replace(/\\([^a-zA-Z0-9\s])/g, '$1');
};

const docxWords = (zip: Uint8Array) => {
  const xml = strFromU8(unzipSync(zip)['word/document.xml']!);
  const texts = [...xml.matchAll(/<w:t(?: [^>]*)?>([^<]*)<\/w:t>/g)].map(([, text]) => text!);
  return texts
    .join('')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&quot;/g, '"')
    .replace(/&apos;/g, "'")
    .replace(/&amp;/g, '&');
};

/** Every text stands in `words`, each behind the one before. */
function expectInOrder(words: string, texts: readonly string[]): void {
  let place = 0;
  for (const text of texts) {
    const found = words.indexOf(text, place);
    expect(found, `‘${text}’ behind ‘${words.slice(Math.max(0, place - 60), place)}’`).toBeGreaterThanOrEqual(
      0,
    );
    place = found + text.length;
  }
}

/** What a value should read: as a fresh engine shows it, or rounded within half the last place of its uncertainty. */
function expectShown(
  id: string,
  text: string,
  engine: ReturnType<typeof createEngine>,
  inputs: object,
): void {
  const quantity = designGraph.quantities.get(id)!;
  const outcome = engine.evaluate([id])[id]!;
  const shown = shownValue(quantity, outcome);
  if (text === shown) return;
  const uncertainty = uncertaintyOf(quantity, { inputs: inputs as Record<string, unknown> });
  expect(uncertainty, `${id}: ${text} instead of ${shown}`).toBeDefined();
  const known = engine.evaluate([uncertainty!.id])[uncertainty!.id]!;
  if (!hasValue(outcome) || !hasValue(known)) throw new Error(`${id} is rounded to what is not known.`);
  // Two digits of the uncertainty: what rounding takes away is at most a twentieth of it.
  const off = Math.abs(parseQuantity(text, String(quantity.unit)) - (outcome.value as number));
  expect(off, `${id}: ${text} for ${shown}`).toBeLessThanOrEqual(0.0505 * (known.value as number));
}

const count = cases(50, 3);
const designs = fc.sample(
  fc.oneof({ weight: 3, arbitrary: usualDesigns }, { weight: 1, arbitrary: allowedDesigns }),
  {
    seed: 8,
    numRuns: count,
  },
);

describe(`numbers in the three kinds of file equal those of page and command line, ${count} random designs`, () => {
  designs.forEach((inputs, i) => {
    it(`design ${i + 1}, seed 8`, async () => {
      const { paper } = rationaleOf({ name: 'Random', inputs });
      const values = valuesIn(paper);
      const engine = createEngine(designGraph, inputs);
      for (const [id, text] of values) expectShown(id, text, engine, inputs);
      expect(values.length).toBeGreaterThan(100);
      expect(wordsOf(paper.blocks)).not.toMatch(/NaN|undefined|\[object|Infinity/);

      const pictures = blankPictures(paper);
      const html = writeHtml(paper, pictures);
      expect(valuesInHtml(html)).toEqual(values);
      expect(html).not.toMatch(/NaN|undefined|\[object |Infinity/);
      const texts = values.map(([, text]) => text);
      expectInOrder(markdownWords(writeMarkdown(paper, pictures, 'random')), texts);
      expectInOrder(docxWords(await writeDocx(paper, pictures)), texts);
    });
  });

  it('the command evaluate shows the same', () => {
    const design = demoDesign('lecture-table');
    const values = valuesIn(rationaleOf(design).paper);
    const file = { 'd.json': writeDesignFile(designGraph, design) };
    const ids = [...new Set(values.map(([id]) => id))].filter(
      (id) => designGraph.quantities.get(id)!.kind !== 'constant',
    );
    const { out } = run(['evaluate', 'd.json', '--get', ids.join(',')], file);
    const told = JSON.parse(out) as Record<string, { readonly shown: string }>;
    const engine = createEngine(designGraph, design.inputs);
    for (const [id, text] of values) {
      if (told[id]?.shown !== text) expectShown(id, text, engine, design.inputs);
    }
    const same = values.filter(([id, text]) => told[id]?.shown === text).length;
    console.log(
      `${same} of ${values.length} values read as the command shows them; the others are rounded to their uncertainty`,
    );
    expect(same / values.length).toBeGreaterThan(0.95);
  });
});
