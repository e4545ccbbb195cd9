import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawPaperPictures } from '../../../notebooks/command/paperPictures.ts';
import type { Paper } from '../../../notebooks/paper/paper.ts';
import { writeDocx } from '../../../notebooks/paper/writeDocx.ts';
import { designEquations as equations } from './designEquations.ts';
import { samplePaper } from './samplePaper.ts';

const missing = ['soffice', 'pdfimages', 'pdftotext'].filter((name) => spawnSync(name, ['--version']).error);
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

/** What LibreOffice makes of a paper: its words, and the sizes of its pictures in px. */
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
  const lines = execFileSync('pdfimages', ['-list', pdf]).toString().trim().split('\n').slice(2);
  const images = lines.map((line) => line.trim().split(/\s+/)).filter(([, , type]) => type === 'image');
  return { words, sizes: images.map(([, , , width, height]) => [Number(width), Number(height)]) };
}

describe.skipIf(skipped)('a DOCX in LibreOffice', () => {
  let sample: Awaited<ReturnType<typeof convert>>;
  beforeAll(async () => {
    sample = await convert(samplePaper);
  });

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
  });
});
