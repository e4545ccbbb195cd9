import { figureCsv } from '../page/figures/figureCsv.ts';
import { writeBibtex } from './bibtex.ts';
import { escapeMarkdown, lineOfText, mathMarkdown, runsMarkdown } from './markdownText.ts';
import { type NumberedBlock, numberBlocks } from './numbered.ts';
import type { Paper, PaperBlock } from './paper.ts';
import { type PaperFigure, type PaperPictures, pictureOf } from './pictures.ts';
import { numberReferences, type Reference } from './references.ts';
import { zipFiles } from './zipFiles.ts';

/**
 * A paper as a zip: `NAME.md`, `references.bib` where it cites publications, and for each figure an SVG, a PNG and the
 * numbers as CSV in `figures/`.
 */
export function writeMarkdown(paper: Paper, pictures: PaperPictures, name: string): Uint8Array {
  const files: Record<string, Uint8Array> = {};
  const add = (path: string, text: string) => {
    files[path] = new TextEncoder().encode(text);
  };
  const references = numberReferences(paper);
  add(`${name}.md`, markdownText(paper, references));
  const bibtex = writeBibtex([...references.keys()]);
  if (bibtex !== '') add('references.bib', bibtex);
  for (const { block, number } of numberBlocks(paper.blocks)) {
    if (block.kind !== 'figure') continue;
    const path = figurePath(block, number);
    const { svg, png } = pictureOf(pictures, block.id);
    add(`${path}.svg`, svg);
    files[`${path}.png`] = png;
    add(`${path}.csv`, figureCsv(block.spec));
  }
  return zipFiles(files, paper.date);
}

/** Path of a figure's files, without their ending. */
function figurePath({ id }: Pick<PaperFigure, 'id'>, number: number): string {
  const words = id.toLowerCase().match(/[a-z0-9]+/g) ?? [];
  return ['figures/figure', String(number), ...words].join('-');
}

/** The text of a paper: headings, tables with bars, equations between dollars, numbered citations. */
function markdownText(paper: Paper, references = numberReferences(paper)): string {
  const facts = paper.facts.map(
    ([name, value]) => `- ${lineOfText(escapeMarkdown(name))}: ${escapeMarkdown(value)}`,
  );
  const parts = [
    `# ${escapeMarkdown(paper.title).trim()}`,
    facts.join('\n'),
    ...numberBlocks(paper.blocks).map((numbered) => blockMarkdown(numbered, references)),
    referencesMarkdown(references),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

function blockMarkdown({ block, number }: NumberedBlock, references: ReadonlyMap<string, Reference>): string {
  switch (block.kind) {
    case 'heading':
      return `${'#'.repeat(block.level + 1)} ${escapeMarkdown(block.text).trim()}`;
    case 'paragraph':
      return `${block.role === undefined ? '' : '> '}${runsMarkdown(block.runs, references)}`;
    case 'list':
      return block.items
        .map((runs, index) => `${block.ordered ? `${index + 1}.` : '-'} ${runsMarkdown(runs, references)}`)
        .join('\n');
    case 'table':
      return tableMarkdown(block, number, references);
    case 'figure': {
      const alt = escapeMarkdown(block.spec.summary).trim();
      return `![${alt}](${figurePath(block, number)}.svg)\n\n**Figure ${number}.** ${escapeMarkdown(block.caption).trim()}`;
    }
    case 'equation': {
      const note = block.note === undefined ? '' : `\n\n${lineOfText(escapeMarkdown(block.note))}`;
      return `$$\n${mathMarkdown(block.tex)}\n$$${note}`;
    }
  }
}

function tableMarkdown(
  { caption, columns, rows }: Extract<PaperBlock, { kind: 'table' }>,
  number: number,
  references: ReadonlyMap<string, Reference>,
): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  const head = columns.map((name) => escapeMarkdown(name).trim());
  const body = rows.map((cells) => cells.map((runs) => runsMarkdown(runs, references, true)));
  const table = [line(head), line(columns.map(() => '---')), ...body.map(line)].join('\n');
  return `**Table ${number}.** ${escapeMarkdown(caption).trim()}\n\n${table}`;
}

/** Each line says the key that `references.bib` has it under. */
function referencesMarkdown(references: ReadonlyMap<string, Reference>): string {
  if (references.size === 0) return '';
  const lines = [...references.values()].map(({ number, text, doi, link }) => {
    const address = link === undefined ? '' : `, [DOI ${escapeMarkdown(doi!)}](<${link}>)`;
    return `\\[${number}\\] ${escapeMarkdown(text)}${address}`;
  });
  return ['## References', ...lines].join('\n\n');
}
