import { BorderStyle, Paragraph, Table, TableCell, TableRow, TextRun, WidthType } from 'docx';
import { cleanText } from './cleanText.ts';
import { type DocxMeasure, textWidthOf } from './docxMeasure.ts';
import { childrenOf } from './docxText.ts';
import type { PaperBlock, Run } from './paper.ts';
import type { Reference } from './references.ts';

type TableBlock = Extract<PaperBlock, { kind: 'table' }>;

const none = { style: BorderStyle.NONE, size: 0, color: 'auto' } as const;
/** Thickness in eighths of a point. */
const line = (size: number, color: string) => ({ style: BorderStyle.SINGLE, size, color });
const [strong, fine] = [line(10, '22262B'), line(4, 'DCD8CE')];

/** A table with rules above, below and under its head, which comes again on every page. */
export function tableOf(
  block: TableBlock,
  references: ReadonlyMap<string, Reference>,
  measure: DocxMeasure,
): Table {
  const textWidth = textWidthOf(measure);
  const widths = columnWidths(block, measure);
  const head = block.columns.map((name, index) =>
    cell([new TextRun({ text: cleanText(name), bold: true })], widths[index]!, line(6, '22262B')),
  );
  const body = block.rows.map((cells, row) => {
    const made = widths.map((width, index) =>
      cell(childrenOf(cells[index] ?? [], references), width, row === block.rows.length - 1 ? strong : fine),
    );
    return new TableRow({ cantSplit: true, children: made });
  });
  return new Table({
    width: { size: textWidth, type: WidthType.DXA },
    columnWidths: widths,
    margins: { left: 0, right: 140 },
    borders: {
      top: strong,
      bottom: none,
      left: none,
      right: none,
      insideHorizontal: none,
      insideVertical: none,
    },
    rows: [new TableRow({ tableHeader: true, cantSplit: true, children: head }), ...body],
  });
}

function cell(
  children: ReturnType<typeof childrenOf>,
  width: number,
  bottom: ReturnType<typeof line>,
): TableCell {
  return new TableCell({
    width: { size: width, type: WidthType.DXA },
    borders: { bottom },
    children: [new Paragraph({ style: 'TableText', children })],
  });
}

/** Room beside the words of a cell, and for a letter of a table in the usual type, bold ones too; twips. */
const [beside, letter] = [140, 106];

/**
 * Columns share the room by the letters in them; none falls below half of an equal share, nor grows beyond four times as
 * many as the shortest. Each is as wide as its longest word, so that no value is parted from its unit.
 */
function columnWidths({ columns, rows }: TableBlock, measure: DocxMeasure): number[] {
  const room = textWidthOf(measure);
  const lines = columns.map((name, index) => [name, ...rows.map((cells) => textOf(cells[index] ?? []))]);
  const shares = lines.map((texts) => Math.min(48, Math.max(8, ...texts.map(({ length }) => length))));
  const least = lines.map((texts) => beside + letter * measure.type * Math.max(0, ...texts.map(longestWord)));
  const [shared, needed] = [sumOf(shares), sumOf(least)];
  // Words that have no room beside each other must break somewhere.
  if (needed >= room) return least.map((width) => Math.floor((width / needed) * room));
  const wanted = shares.map((share, i) => Math.max(least[i]!, (share / shared) * room));
  // What the wide columns have beyond their longest word pays for the narrow ones.
  const spare = sumOf(wanted) - needed;
  const part = spare === 0 ? 0 : (room - needed) / spare;
  return wanted.map((width, i) => Math.floor(least[i]! + (width - least[i]!) * part));
}

const sumOf = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);

/** Letters of the longest piece that is not to be broken; a value and its unit are one, as no-break spaces hold them. */
const longestWord = (text: string) => Math.max(...text.split(/[ \u2009]/).map(({ length }) => length));

/** Words of a cell; an equation takes about half as many letters as its TeX. */
function textOf(runs: readonly Run[]): string {
  return runs
    .map((run) =>
      'text' in run ? run.text : 'tex' in run ? 'x'.repeat(Math.ceil(run.tex.length / 2)) : '[1]',
    )
    .join('');
}
