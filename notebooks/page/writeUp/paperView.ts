import { citation } from '../../../lib/materials/bibliography.ts';
import type { FigureSpec } from '../../document.ts';
import type { Paper, PaperBlock, Run } from '../../paper/paper.ts';
import { numberReferences } from '../../paper/references.ts';
import { element } from '../element.ts';
import { createFigure, type FigureView } from '../figures/drawFigure.ts';
import { mathElement } from '../proseView.ts';

/** A paper shown on the page; `close` stops its figures. */
export interface PaperView {
  readonly element: HTMLElement;
  close(): void;
}

/** Figures in the preview are as wide as its column, to this many pixels. */
const widest = 620;

/** Shows a paper as it will be written, with its figures drawn. */
export function renderPaper(document: Document, paper: Paper, width: number): PaperView {
  const numbers = numberReferences(paper);
  const figures: FigureView[] = [];
  const line = (runs: readonly Run[]) => runs.map((run) => runElement(document, run, numbers));
  const drawn = (spec: FigureSpec, shape: 'wide' | 'tall') => {
    const view = createFigure(document, Math.min(widest, width), shape);
    const { moves: _, ...still } = spec;
    view.update(still);
    figures.push(view);
    return view.element;
  };
  const title = element(document, 'p', { class: 'paper-title' }, paper.title);
  const facts = element(
    document,
    'dl',
    { class: 'paper-facts' },
    ...paper.facts.map(([name, value]) =>
      element(document, 'div', {}, element(document, 'dt', {}, name), element(document, 'dd', {}, value)),
    ),
  );
  const blocks = paper.blocks.map((block) =>
    block.kind === 'figure' ? drawn(block.spec, block.shape) : blockElement(document, block, line),
  );
  const sources = [...numbers.keys()].map((key) => element(document, 'li', {}, citation(key)));
  const references =
    sources.length === 0
      ? []
      : [
          element(document, 'h3', {}, 'References'),
          element(document, 'ol', { class: 'paper-references' }, ...sources),
        ];
  return {
    element: element(document, 'div', { class: 'paper' }, title, facts, ...blocks, ...references),
    close: () => {
      for (const view of figures) view.close();
    },
  };
}

type Line = (runs: readonly Run[]) => (Node | string)[];

function blockElement(
  document: Document,
  block: Exclude<PaperBlock, { kind: 'figure' }>,
  line: Line,
): HTMLElement {
  switch (block.kind) {
    case 'heading':
      return element(document, (['h3', 'h4', 'h5'] as const)[block.level - 1]!, {}, block.text);
    case 'paragraph':
      return element(document, 'p', { class: block.role && `paper-${block.role}` }, ...line(block.runs));
    case 'list':
      return element(
        document,
        block.ordered ? 'ol' : 'ul',
        {},
        ...block.items.map((item) => element(document, 'li', {}, ...line(item))),
      );
    case 'equation':
      return element(document, 'p', {}, mathElement(document, block.tex, true), block.note ?? '');
    case 'table':
      return tableElement(document, block, line);
  }
}

/** A wide table scrolls with the frame of the preview, by keyboard too. */
function tableElement(
  document: Document,
  { caption, columns, rows }: Extract<PaperBlock, { kind: 'table' }>,
  line: Line,
): HTMLElement {
  const head = columns.map((text) =>
    text === '' ? element(document, 'td') : element(document, 'th', { scope: 'col' }, text),
  );
  const body = rows.map((row) =>
    element(
      document,
      'tr',
      {},
      ...row.map((cell, i) =>
        i === 0
          ? element(document, 'th', { scope: 'row' }, ...line(cell))
          : element(document, 'td', {}, ...line(cell)),
      ),
    ),
  );
  const table = element(
    document,
    'table',
    { class: 'table' },
    element(document, 'caption', {}, caption),
    element(document, 'thead', {}, element(document, 'tr', {}, ...head)),
    element(document, 'tbody', {}, ...body),
  );
  return element(document, 'div', { class: 'paper-table' }, table);
}

function runElement(
  document: Document,
  run: Run,
  numbers: ReturnType<typeof numberReferences>,
): Node | string {
  if ('tex' in run) return mathElement(document, run.tex);
  if ('cite' in run) return `[${numbers.get(run.cite)?.number ?? run.cite}]`;
  if (run.strong) return element(document, 'strong', {}, run.text);
  return run.emphasis ? element(document, 'em', {}, run.text) : run.text;
}
