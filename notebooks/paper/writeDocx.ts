import {
  AlignmentType,
  Document,
  Footer,
  Header,
  HeadingLevel,
  Packer,
  PageNumber,
  Paragraph,
  TextRun,
} from 'docx';
import { cleanText } from './cleanText.ts';
import { docxBlock, docxReferences } from './docxBlocks.ts';
import { compact, stylesIn, usual } from './docxMeasure.ts';
import { docxLists } from './docxStyle.ts';
import { numberBlocks } from './numbered.ts';
import type { Paper } from './paper.ts';
import type { PaperPictures } from './pictures.ts';
import { numberReferences } from './references.ts';
import { settleDocx } from './settleDocx.ts';

/**
 * A paper as DOCX: Word's own headings, tables, equations, lists and captions; figures as PNG. The same paper makes the
 * same bytes.
 */
export async function writeDocx(paper: Paper, pictures: PaperPictures): Promise<Uint8Array> {
  const title = cleanText(paper.title);
  const measure = paper.compact ? compact : usual;
  const context = { pictures, references: numberReferences(paper), measure };
  const document = new Document({
    title,
    creator: 'Stepwell',
    lastModifiedBy: 'Stepwell',
    description: paper.facts.map(([name, value]) => cleanText(`${name}: ${value}`)).join('; '),
    styles: stylesIn(measure),
    numbering: docxLists,
    sections: [
      {
        properties: { page: measure.page },
        headers: { default: new Header({ children: [marginLine(cleanText(paper.design ?? paper.title))] }) },
        footers: { default: new Footer({ children: [pageLine()] }) },
        children: [
          new Paragraph({ heading: HeadingLevel.TITLE, children: [new TextRun(title)] }),
          ...(paper.compact ? [factsLine(paper.facts)] : paper.facts.map(factLine)),
          ...numberBlocks(paper.blocks).flatMap((block, place) => docxBlock(block, context, place)),
          ...docxReferences(context.references),
        ],
      },
    ],
  });
  const packed = await Packer.toArrayBuffer(document);
  return settleDocx(new Uint8Array(packed), paper.date);
}

function factLine([name, value]: readonly [string, string]): Paragraph {
  const children = [
    new TextRun({ text: cleanText(name), color: '5C6168' }),
    new TextRun({ children: ['\t', cleanText(value)] }),
  ];
  return new Paragraph({ style: 'Fact', children });
}

/** All facts in one line, where room is dear. */
function factsLine(facts: Paper['facts']): Paragraph {
  const children = facts.flatMap(([name, value], i) => [
    new TextRun({ text: `${i === 0 ? '' : '   '}${cleanText(name)} `, color: '5C6168' }),
    new TextRun(cleanText(value)),
  ]);
  return new Paragraph({ style: 'Fact', indent: { left: 0, hanging: 0 }, children });
}

function marginLine(text: string): Paragraph {
  return new Paragraph({ style: 'Margin', children: [new TextRun(text)] });
}

function pageLine(): Paragraph {
  const children = ['page ', PageNumber.CURRENT, ' of ', PageNumber.TOTAL_PAGES];
  return new Paragraph({
    style: 'Margin',
    alignment: AlignmentType.RIGHT,
    children: [new TextRun({ children })],
  });
}
