import type { Paper } from '../paper/paper.ts';
import { numberReferences } from '../paper/references.ts';
import { fileName } from './figures/exportFigure.ts';
import { drawPaperPictures } from './paperPictures.ts';

/** What a paper can be handed out as. */
export type PaperKind = 'html' | 'md.zip' | 'docx' | 'bib';

const types: Readonly<Record<PaperKind, string>> = {
  html: 'text/html',
  'md.zip': 'application/zip',
  docx: 'application/vnd.openxmlformats-officedocument.wordprocessingml.document',
  bib: 'application/x-bibtex',
};

/** A paper as a file to hand to the person, named after its title. What writes each kind is loaded when it is asked for. */
export async function makePaperFile(
  paper: Paper,
  kind: PaperKind,
  document: Document,
): Promise<{ readonly name: string; readonly blob: Blob }> {
  const content = await write(paper, kind, document);
  return { name: fileName(paper.title, kind), blob: new Blob([content as BlobPart], { type: types[kind] }) };
}

async function write(paper: Paper, kind: PaperKind, document: Document): Promise<string | Uint8Array> {
  if (kind === 'bib') {
    const { writeBibtex } = await import('../paper/bibtex.ts');
    return writeBibtex([...numberReferences(paper).keys()]);
  }
  const pictures = await drawPaperPictures(paper, document);
  if (kind === 'html') {
    const { writeHtml } = await import('../paper/writeHtml.ts');
    return writeHtml(paper, pictures);
  }
  if (kind === 'docx') {
    const { writeDocx } = await import('../paper/writeDocx.ts');
    return writeDocx(paper, pictures);
  }
  const { writeMarkdown } = await import('../paper/writeMarkdown.ts');
  return writeMarkdown(paper, pictures, fileName(paper.title, 'md').replace(/\.md$/, ''));
}
