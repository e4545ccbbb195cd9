import { BorderStyle, Paragraph, Table, TableCell, TableRow, TextRun, WidthType } from 'docx';
import { cleanText } from './cleanText.ts';
import { textWidth } from './docxStyle.ts';
import { childrenOf } from './docxText.ts';
import type { PaperBlock, Run } from './paper.ts';
import type { Reference } from './references.ts';

type TableBlock = Extract<PaperBlock, { kind: 'table' }>;

const none = { style: BorderStyle.NONE, size: 0, color: 'auto' } as const;
/** Thickness in eighths of a point. */
const line = (size: number, color: string) => ({ style: BorderStyle.SINGLE, size, color });
const [strong, fine] = [line(10, '22262B'), line(4, 'DCD8CE')];

/** A table with rules above, below and under its head, which comes again on every page. */
export function tableOf(block: TableBlock, references: ReadonlyMap<string, Reference>): Table {
  const widths = columnWidths(block);
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

/** Columns share the room by the letters in them; none falls below half of an equal share, nor grows beyond four times as many as the shortest. */
function columnWidths({ columns, rows }: TableBlock): number[] {
  const most = columns.map((name, index) =>
    Math.max(name.length, ...rows.map((cells) => lettersOf(cells[index] ?? []))),
  );
  const shares = most.map((letters) => Math.min(48, Math.max(8, letters)));
  const sum = shares.reduce((all, share) => all + share, 0);
  return shares.map((share) => Math.floor((share / sum) * textWidth));
}

function lettersOf(runs: readonly Run[]): number {
  return runs.reduce(
    (sum, run) => sum + ('text' in run ? run.text.length : 'tex' in run ? run.tex.length / 2 : 3),
    0,
  );
}
