import {
  Bookmark,
  ExternalHyperlink,
  HeadingLevel,
  ImageRun,
  LineRuleType,
  Paragraph,
  type Table,
  TextRun,
} from 'docx';
import { cleanText } from './cleanText.ts';
import type { DocxMeasure } from './docxMeasure.ts';
import { listNames } from './docxStyle.ts';
import { tableOf } from './docxTable.ts';
import { bookmarkOf, CaptionNumber, childrenOf, equationLine } from './docxText.ts';
import type { NumberedBlock } from './numbered.ts';
import { type PaperFigure, type PaperPictures, pictureOf } from './pictures.ts';
import type { Reference } from './references.ts';

export interface DocxContext {
  readonly pictures: PaperPictures;
  readonly references: ReadonlyMap<string, Reference>;
  readonly measure: DocxMeasure;
}

const levels = [HeadingLevel.HEADING_1, HeadingLevel.HEADING_2, HeadingLevel.HEADING_3] as const;
const styles = { caution: 'Caution', failed: 'Failed', note: 'Note' } as const;

/** What a block is in Word; `place` tells lists apart, which each begin at 1. */
export function docxBlock(
  { block, number }: NumberedBlock,
  context: DocxContext,
  place: number,
): (Paragraph | Table)[] {
  const { references, measure } = context;
  const apart = (twips: number) => Math.round(twips * measure.space);
  switch (block.kind) {
    case 'heading':
      return [new Paragraph({ heading: levels[block.level - 1]!, children: [words(block.text)] })];
    case 'paragraph': {
      const children = childrenOf(block.runs, references);
      return [new Paragraph({ children, ...(block.role ? { style: styles[block.role] } : {}) })];
    }
    case 'list': {
      const reference = block.ordered ? listNames.ordered : listNames.unordered;
      const numbering = { reference, level: 0, instance: place };
      return block.items.map((runs, index) => {
        const spacing = { after: apart(index < block.items.length - 1 ? 40 : 160) };
        return new Paragraph({ numbering, spacing, children: childrenOf(runs, references) });
      });
    }
    case 'table': {
      const above = caption('Table', number, block.caption, {
        keepNext: true,
        spacing: { before: apart(200), after: apart(80) },
      });
      return [above, tableOf(block, references, measure), space(apart(200))];
    }
    case 'figure':
      return figureOf(block, number, context);
    case 'equation': {
      const equation = equationLine(block.tex, block.note !== undefined);
      return block.note === undefined
        ? [equation]
        : [equation, new Paragraph({ style: 'Note', children: [words(block.note)] })];
    }
  }
}

const words = (text: string) => new TextRun(cleanText(text));

/** A caption that Word counts: its number is a field. */
function caption(
  kind: 'Figure' | 'Table',
  number: number,
  text: string,
  more: { keepNext?: boolean; spacing?: { before: number; after: number } } = {},
): Paragraph {
  const label = new TextRun({ text: `${kind} `, bold: true });
  const rest = [new TextRun({ text: '.', bold: true }), words(` ${text}`)];
  const children = [label, new CaptionNumber(kind, number), ...rest];
  return new Paragraph({ style: 'Caption', ...more, children });
}

/** A little room below a table, which Word has no measure for. */
function space(height: number): Paragraph {
  return new Paragraph({ spacing: { after: 0, line: height, lineRule: LineRuleType.EXACT } });
}

/** Width of the widest picture, px at 96 an inch: a tall and a wide figure then share a page. */
const widestPicture = 520;

function figureOf({ id, spec, caption: text }: PaperFigure, number: number, { pictures }: DocxContext) {
  const { png, width, height } = pictureOf(pictures, id);
  const scale = Math.min(1, widestPicture / width);
  const image = new ImageRun({
    type: 'png',
    data: png,
    transformation: { width: Math.round(width * scale), height: Math.round(height * scale) },
    altText: {
      id: String(number),
      name: `Figure ${number}`,
      title: cleanText(spec.title),
      description: cleanText(spec.summary),
    },
  });
  const picture = new Paragraph({
    keepNext: true,
    spacing: { before: 200, after: 60, line: 240, lineRule: LineRuleType.AUTO },
    children: [image],
  });
  return [picture, caption('Figure', number, text)];
}

/** The list of references; each line is where its citations lead. */
export function docxReferences(references: ReadonlyMap<string, Reference>): Paragraph[] {
  if (references.size === 0) return [];
  const lines = [...references.values()].map(({ number, text, doi, link }) => {
    const address = new ExternalHyperlink({
      link: link ?? '',
      children: [new TextRun({ text: `DOI ${doi}`, style: 'Hyperlink' })],
    });
    return new Paragraph({
      style: 'Reference',
      children: [
        new Bookmark({ id: bookmarkOf(number), children: [new TextRun(`[${number}]`)] }),
        new TextRun({ children: ['\t', cleanText(text)] }),
        ...(link === undefined ? [] : [new TextRun(', '), address]),
      ],
    });
  });
  return [new Paragraph({ heading: HeadingLevel.HEADING_1, children: [words('References')] }), ...lines];
}
