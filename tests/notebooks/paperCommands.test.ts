import { strFromU8, unzipSync } from 'fflate';
import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { runLater } from './runCommand.ts';

const lecture = 'data/designs/lecture-table.json';
const text = (bytes: Uint8Array | undefined) => strFromU8(bytes!);

describe('stepwell set-up-sheet', () => {
  it('writes a page, Markdown and a DOCX, the same for the same design and day', async () => {
    const write = (to: string) => runLater(['set-up-sheet', lecture, '--to', to, '--date', '2026-03-01']);
    const page = await write('out/sheet.html');
    expect([page.code, page.err, page.out]).toEqual([0, '', 'Written: out/sheet.html\n']);
    const { document } = parseHTML(text(page.written['out/sheet.html']));
    expect(document.querySelector('h1')!.textContent).toBe('Set-up sheet: Lecture table');
    expect(document.body.textContent).toContain('stepwell set-up-sheet lecture-table.json --to FILE.html');
    expect(document.body.textContent).toContain('2026-03-01');
    const markdown = await write('sheet.md.zip');
    expect(Object.keys(unzipSync(markdown.written['sheet.md.zip']!))).toContain('sheet.md');
    const word = await write('sheet.docx');
    expect(Object.keys(unzipSync(word.written['sheet.docx']!))).toContain('word/document.xml');
    expect((await write('sheet.docx')).written['sheet.docx']).toEqual(word.written['sheet.docx']);
  });

  it('takes settings besides, and tells them in the command that makes it again', async () => {
    const { written } = await runLater([
      'set-up-sheet',
      `--to=s.html`,
      '--set',
      'workpiece.z=0.1 mm',
      lecture,
    ]);
    const { document } = parseHTML(text(written['s.html']));
    expect(document.body.textContent).toContain(
      "stepwell set-up-sheet --set 'workpiece.z=0.1 mm' lecture-table.json --to FILE.html",
    );
    expect(document.body.textContent).toMatch(/z = 0\.1\smm, behind the focal plane/);
    expect(document.body.textContent).toContain(new Date().toISOString().slice(0, 8));
  });
});

describe('stepwell rationale', () => {
  it('writes a page with its sources beside it, and the sources alone', async () => {
    const page = await runLater(['rationale', lecture, '--to', 'r.html', '--date', '2026-03-01']);
    expect([page.code, page.err]).toEqual([0, '']);
    expect(Object.keys(page.written)).toEqual(['r.html', 'r-references.bib']);
    const { document } = parseHTML(text(page.written['r.html']));
    expect(document.querySelector('h1')!.textContent).toBe('Design rationale: Lecture table');
    expect(document.querySelectorAll('figure').length).toBeGreaterThan(8);
    expect(document.body.textContent).toContain('The plate that goes round in the lecture');
    const sources = await runLater(['rationale', lecture, '--to', 'r.bib']);
    expect(sources.written['r.bib']).toEqual(page.written['r-references.bib']);
  });
});

describe('what cannot be written says so, and writes nothing', () => {
  const refused: readonly (readonly [argv: readonly string[], says: RegExp])[] = [
    [['rationale', lecture], /--to is missing; give for example --to rationale\.html/],
    [
      ['rationale', lecture, '--to', 'r.pdf'],
      /'r\.pdf' does not say what to write; let its name end in \.html/,
    ],
    [
      ['rationale', lecture, '--to', 'r.html', '--date', '1 March'],
      /'1 March' is no day; write it as in 2026-03-01/,
    ],
    [['rationale', lecture, '--to', 'r.html', '--date', '2026-02-30'], /'2026-02-30' is no day/],
    [['rationale', 'missing.json', '--to', 'r.html'], /'missing\.json' cannot be read/],
    [['set-up-sheet', lecture, '--to', 's.html', '--get', 'spot.width'], /no option --get/],
  ];
  for (const [argv, says] of refused) {
    it(argv.slice(2).join(' '), async () => {
      const { code, err, out, written } = await runLater(argv);
      expect(code).toBe(2);
      expect(err).toMatch(says);
      expect([out, written]).toEqual(['', {}]);
    });
  }
});
