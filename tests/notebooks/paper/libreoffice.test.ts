import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { designGraph } from '../../../lib/design/design.ts';
import { drawPaperPictures } from '../../../notebooks/command/paperPictures.ts';
import type { Paper } from '../../../notebooks/paper/paper.ts';
import { runsIn } from '../../../notebooks/paper/readPaper.ts';
import { writeDocx } from '../../../notebooks/paper/writeDocx.ts';
import { composeSetUpSheet } from '../../../notebooks/setUpSheet/composeSetUpSheet.ts';
import { workOutSheet } from '../../../notebooks/setUpSheet/workOutSheet.ts';
import { demoDesign, made } from '../rationale/workedPapers.ts';
import { designEquations as equations } from './designEquations.ts';
import { samplePaper } from './samplePaper.ts';

const missing = ['soffice', 'pdfimages', 'pdfinfo', 'pdftotext'].filter(
  (name) => spawnSync(name, ['--version']).error,
);
const required = process.env.STEPWELL_LIBREOFFICE === 'required';
const skipped = missing.length > 0;
it.runIf(required)('LibreOffice is here, as STEPWELL_LIBREOFFICE=required asks', () => {
  expect(missing).toEqual([]);
});
if (skipped)
  console.log(
    `No ${missing.join(', ')} here, so no DOCX is opened; install libreoffice-writer, libreoffice-math and poppler-utils.`,
  );

const folder = mkdtempSync(join(tmpdir(), 'stepwell-paper-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** What LibreOffice makes of a paper: its words, its pages, and the sizes of its pictures in px. */
async function convert(paper: Paper) {
  const docx = join(folder, 'paper.docx');
  const pdf = join(folder, 'paper.pdf');
  writeFileSync(docx, await writeDocx(paper, drawPaperPictures(paper)));
  // A profile of its own: beside another LibreOffice that is open nothing would be converted.
  const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
  execFileSync('soffice', [profile, '--headless', '--convert-to', 'pdf', '--outdir', folder, docx], {
    stdio: 'pipe',
  });
  expect(readFileSync(pdf).subarray(0, 5).toString()).toBe('%PDF-');
  const words = execFileSync('pdftotext', ['-layout', pdf, '-']).toString();
  const pages = Number(/^Pages:\s*(\d+)$/m.exec(execFileSync('pdfinfo', [pdf]).toString())![1]);
  const lines = execFileSync('pdfimages', ['-list', pdf]).toString().trim().split('\n').slice(2);
  const images = lines.map((line) => line.trim().split(/\s+/)).filter(([, , type]) => type === 'image');
  return { words, pages, sizes: images.map(([, , , width, height]) => [Number(width), Number(height)]) };
}

describe.skipIf(skipped)('a DOCX in LibreOffice', () => {
  let sample: Awaited<ReturnType<typeof convert>>;
  beforeAll(async () => {
    sample = await convert(samplePaper);
    // The first start of LibreOffice makes its profile, which takes long on a busy machine.
  }, 60_000);

  it('holds every figure with all its px, in order', () => {
    const drawn = [...drawPaperPictures(samplePaper).values()];
    expect(sample.sizes).toEqual(drawn.map(({ width, height }) => [2 * width, 2 * height]));
  });

  it('counts the captions itself and shows headings, table, lists and page numbers', () => {
    for (const words of [
      'Figure 1. Fluence across the spot',
      'Figure 2. Fluence through the focus.',
      'Figure 3. <script>alert(1)</script>',
      'Table 1. Requirements',
      'Not met: the flat top is 27.4 µm wide',
      '1. A second list begins at one.',
      'DOI 10.1364/AO.5.001550',
      'page 1 of ',
    ])
      expect(sample.words).toContain(words);
    expect(sample.words.match(/Rain-gauge funnel$/gm)!.length).toBeGreaterThan(2);
  });

  it('reads every equation of the design', async () => {
    const blocks = equations.map((tex) => ({ kind: 'paragraph', runs: [{ tex }] }) as const);
    const { words } = await convert({ title: 'Equations', facts: [], blocks, references: [] });
    // What LibreOffice writes where it expects more of an equation.
    expect(words.split('\n').filter((line) => line.includes('¿'))).toEqual([]);
    expect(words).toContain('κ');
    console.log(`equations: ${equations.length}`);
    // LibreOffice takes 40 s for them on a free core, and shares it with whatever else runs.
  }, 400_000);

  for (const name of ['rain-gauge-funnel', 'lecture-table', 'cold-plate-channels']) {
    it(`the set-up sheet of ${name} is one page, its values whole`, async () => {
      const paper = composeSetUpSheet(workOutSheet(designGraph, demoDesign(name)), made);
      const { words, pages } = await convert(paper);
      expect(pages).toBe(1);
      // A PDF has one kind of space; a value that was broken is in two lines.
      const spaced = (text: string) => text.replace(/[^\S\n]/g, ' ');
      for (const run of runsIn(paper.blocks.filter(({ kind }) => kind === 'table')))
        if ('text' in run && run.quantity !== undefined && /^\S+[\u202f\u00a0]\S+$/.test(run.text))
          expect(spaced(words)).toContain(spaced(run.text));
      expect(words).toContain('page 1 of 1');
    }, 60_000);
  }
});
