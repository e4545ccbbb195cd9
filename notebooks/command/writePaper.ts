import { Problem } from '../../lib/problem.ts';
import type { Paper } from '../paper/paper.ts';
import { numberReferences } from '../paper/references.ts';
import type { CommandIo } from './commandIo.ts';
import { writeFile } from './writeFile.ts';

type Files = Readonly<Record<string, Uint8Array>>;
const bytes = (text: string) => new TextEncoder().encode(text);

/** What each ending stands for; `stem` is the path without it. Programs that draw and pack are loaded when they are needed. */
const writers: Readonly<Record<string, (paper: Paper, stem: string) => Promise<Files>>> = {
  '.html': async (paper, stem) => {
    const { writeHtml } = await import('../paper/writeHtml.ts');
    return {
      [`${stem}.html`]: bytes(writeHtml(paper, await pictures(paper))),
      ...(await beside(paper, stem)),
    };
  },
  '.md.zip': async (paper, stem) => {
    const { writeMarkdown } = await import('../paper/writeMarkdown.ts');
    return { [`${stem}.md.zip`]: writeMarkdown(paper, await pictures(paper), nameIn(stem)) };
  },
  '.docx': async (paper, stem) => {
    const { writeDocx } = await import('../paper/writeDocx.ts');
    return {
      [`${stem}.docx`]: await writeDocx(paper, await pictures(paper)),
      ...(await beside(paper, stem)),
    };
  },
  '.bib': async (paper, stem) => ({ [`${stem}.bib`]: bytes(await bibtex(paper)) }),
};

const endings = Object.keys(writers);

/**
 * Throws `unreadable` where the name of a file does not say which kind of paper to write. To be called before the work of
 * making one.
 */
export function checkPaperName(to: string): void {
  splitName(to);
}

/**
 * Writes a paper as what its name ends in: .html, .md.zip, .docx, or .bib for its sources alone. A page and a DOCX get
 * their sources beside them, in STEM-references.bib. Nothing is written before all of it is made. Returns the paths.
 */
export async function writePaper(paper: Paper, to: string, io: CommandIo): Promise<readonly string[]> {
  const { stem, ending } = splitName(to);
  const files = await writers[ending]!(paper, stem);
  for (const [path, content] of Object.entries(files)) writeFile(io, path, content);
  return Object.keys(files);
}

function splitName(to: string): { stem: string; ending: string } {
  const ending = endings.find((known) => to.toLowerCase().endsWith(known) && nameIn(to) !== known);
  if (ending !== undefined) return { stem: to.slice(0, -ending.length), ending };
  throw new Problem(
    'unreadable',
    `'${to}' does not say what to write; let its name end in ${endings.slice(0, -1).join(', ')} or ${endings.at(-1)}.`,
    { value: to, allowed: endings.join(', ') },
  );
}

/** The last part of a path. */
const nameIn = (path: string) => path.split(/[/\\]/).at(-1)!;

async function pictures(paper: Paper) {
  const { drawPaperPictures } = await import('./paperPictures.ts');
  return drawPaperPictures(paper);
}

async function bibtex(paper: Paper): Promise<string> {
  const { writeBibtex } = await import('../paper/bibtex.ts');
  return writeBibtex([...numberReferences(paper).keys()]);
}

/** Sources beside a paper; no file where it cites no publication. */
async function beside(paper: Paper, stem: string): Promise<Files> {
  const text = await bibtex(paper);
  return text === '' ? {} : { [`${stem}-references.bib`]: bytes(text) };
}
