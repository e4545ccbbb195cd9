import type { Paper } from '../../paper/paper.ts';
import type { PaperPictures } from '../../paper/pictures.ts';
import { download, fileName } from '../figures/exportFigure.ts';

/** What a paper can be handed over as; what packs it is loaded when it is asked for. */
export interface PaperKind {
  readonly words: string;
  readonly ending: string;
  make(paper: Paper, name: string, document: Document): Promise<Blob>;
}

/** Pictures of the last papers: each kind of file has the same. */
const drawn = new WeakMap<Paper, Promise<PaperPictures>>();

function picturesOf(paper: Paper, document: Document): Promise<PaperPictures> {
  const known = drawn.get(paper);
  if (known) return known;
  const made = import('../paperPictures.ts').then(({ drawPaperPictures }) =>
    drawPaperPictures(paper, document),
  );
  drawn.set(paper, made);
  made.catch(() => drawn.delete(paper));
  return made;
}

export const paperKinds: readonly PaperKind[] = [
  {
    words: 'HTML page',
    ending: 'html',
    async make(paper, _, document) {
      const { writeHtml } = await import('../../paper/writeHtml.ts');
      const html = writeHtml(paper, await picturesOf(paper, document));
      return new Blob([html], { type: 'text/html' });
    },
  },
  {
    words: 'Markdown with figures (zip)',
    ending: 'md.zip',
    async make(paper, name, document) {
      const { writeMarkdown } = await import('../../paper/writeMarkdown.ts');
      const bytes = writeMarkdown(paper, await picturesOf(paper, document), name);
      return new Blob([bytes as Uint8Array<ArrayBuffer>], { type: 'application/zip' });
    },
  },
  {
    words: 'Word document (DOCX)',
    ending: 'docx',
    async make(paper, _, document) {
      const { writeDocx } = await import('../../paper/writeDocx.ts');
      const bytes = await writeDocx(paper, await picturesOf(paper, document));
      return new Blob([bytes as Uint8Array<ArrayBuffer>], { type: docx });
    },
  },
  {
    words: 'References (BibTeX)',
    ending: 'bib',
    async make(paper) {
      const { writeBibtex } = await import('../../paper/bibtex.ts');
      const { numberReferences } = await import('../../paper/references.ts');
      return new Blob([writeBibtex([...numberReferences(paper).keys()])], { type: 'text/plain' });
    },
  },
];

const docx = 'application/vnd.openxmlformats-officedocument.wordprocessingml.document';

/** Hands a paper over as a file named after the design; resolves with the name of the file. */
export async function handOver(
  paper: Paper,
  kind: PaperKind,
  name: string,
  document: Document,
): Promise<string> {
  const stem = fileName(name, '').replace(/\.$/, '');
  const blob = await kind.make(paper, stem, document);
  const file = `${stem}.${kind.ending}`;
  download(file, blob);
  return file;
}
