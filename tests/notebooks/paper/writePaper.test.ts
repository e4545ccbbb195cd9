import { strFromU8, unzipSync } from 'fflate';
import { expect, it } from 'vitest';
import { Problem } from '../../../lib/problem.ts';
import { checkPaperName, writePaper } from '../../../notebooks/command/writePaper.ts';
import { numberReferences } from '../../../notebooks/paper/references.ts';
import { samplePaper } from './samplePaper.ts';

function shelf() {
  const files = new Map<string, Uint8Array>();
  const io = {
    readFile: () => new Uint8Array(),
    writeFile: (path: string, bytes: Uint8Array) => {
      if (path.startsWith('nowhere/')) throw new Error('ENOENT');
      files.set(path, bytes);
    },
    out: () => {},
    err: () => {},
  };
  return { files, io };
}

it.each([
  ['out/why.html', ['out/why.html', 'out/why-references.bib'], '<!doctype html>'],
  ['WHY.HTML', ['WHY.html', 'WHY-references.bib'], '<!doctype html>'],
  ['why.docx', ['why.docx', 'why-references.bib'], 'PK'],
  ['why.md.zip', ['why.md.zip'], 'PK'],
  ['why.bib', ['why.bib'], '@article'],
])('%s says what to write', async (to, paths, begins) => {
  const { files, io } = shelf();
  expect(await writePaper(samplePaper, to, io)).toEqual(paths);
  expect([...files.keys()]).toEqual(paths);
  expect(strFromU8(files.get(paths[0]!)!.subarray(0, begins.length))).toBe(begins);
});

it('names the text in a zip after it', async () => {
  const { files, io } = shelf();
  await writePaper(samplePaper, 'out/why not.md.zip', io);
  expect(Object.keys(unzipSync(files.get('out/why not.md.zip')!))).toContain('why not.md');
});

it('has nothing beside a paper that cites nothing', async () => {
  const { files, io } = shelf();
  await writePaper({ title: 't', facts: [], blocks: [], references: [] }, 'why.html', io);
  expect([...files.keys()]).toEqual(['why.html']);
});

it.each(['why', 'why.pdf', 'why.md', 'why.zip', '.docx', 'out/.html', ''])(
  "refuses '%s' and lists the endings",
  async (to) => {
    const { files, io } = shelf();
    await expect(writePaper(samplePaper, to, io)).rejects.toThrow(/\.html, \.md\.zip, \.docx or \.bib\.$/);
    expect(() => checkPaperName(to)).toThrow(Problem);
    expect(files.size).toBe(0);
  },
);

it('names a file that cannot be written', async () => {
  await expect(writePaper(samplePaper, 'nowhere/why.bib', shelf().io)).rejects.toThrow(/'nowhere\/why\.bib'/);
});

it('counts what is cited without standing in the list, and refuses what no list has', () => {
  const cites = (cite: string) => [{ kind: 'paragraph', runs: [{ cite }] }] as const;
  const numbered = numberReferences({ ...samplePaper, blocks: cites('milam1998') });
  expect(numbered.get('milam1998')!.number).toBe(samplePaper.references.length + 1);
  expect(() => numberReferences({ ...samplePaper, blocks: cites('nobody1900') })).toThrow(/'nobody1900'/);
});
