import { hasValue } from '../../lib/graph/outcome.ts';
import type { Quantity } from '../../lib/graph/quantity.ts';
import type { PathElementName } from '../beamPathInputs.ts';
import { conditionHolds } from '../condition.ts';
import type { Block, QuestionBlock, StepwellDocument, TableSpec } from '../document.ts';
import { renderChoices } from './choicesView.ts';
import type { PageContext } from './context.ts';
import { renderFigure, renderFigures } from './figuresView.ts';
import { renderBeamPath, renderPanel } from './pathView.ts';
import { renderPicture } from './pictureView.ts';
import { renderProse, valueElement, watchProblem } from './proseView.ts';
import { restWhileMoving } from './restWhileMoving.ts';
import { renderMissing } from './resultMissing.ts';
import { renderRows } from './rowsView.ts';
import { tools } from './studies/tools.ts';
import { watchAll } from './watchAll.ts';
import { renderWork, type WorkPlace, workPlace } from './workLines.ts';

/** A document on the page; `close` stops everything it watches. */
export interface DocumentView {
  readonly element: HTMLElement;
  close(): void;
}

/** Renders a document and keeps it live until it is closed; `first` is the element whose inputs it opens with. */
export function renderDocument(
  page: PageContext,
  content: StepwellDocument,
  first: PathElementName = content.element ?? 'laser',
): DocumentView {
  const context = content.result ? { ...page, result: content.result.quantity } : page;
  const { document } = context;
  const stops: (() => void)[] = [];
  const main = document.createElement('main');
  main.className = 'sheet';
  main.id = content.id;
  const title = document.createElement('h1');
  title.textContent = content.title;
  const lead = document.createElement('div');
  lead.className = 'lead';
  lead.append(renderProse(context, content.lead, stops));
  main.append(title, lead);
  const missing = content.learning ? [] : renderHead(context, content, main, first, stops);
  const blocks = content.blocks.map((block) => renderBlock(context, block, stops));
  main.append(...missing, ...blocks);
  const places = [
    ...missing.map((place) => missingPlace(place, content)),
    ...blocks.map((shown, i) => workPlace(context, shown, content.blocks[i]!)),
  ];
  main.append(renderWork(context, places, stops));
  restWhileMoving(context, main, stops);
  return {
    element: main,
    close: () => {
      for (const stop of stops.reverse()) stop();
      main.remove();
    },
  };
}

/** The beam path of the open design with its inputs; returns what stands below it where the result is missing. */
function renderHead(
  context: PageContext,
  content: StepwellDocument,
  main: HTMLElement,
  first: PathElementName,
  stops: (() => void)[],
): HTMLElement[] {
  const path = renderBeamPath(context, stops, first);
  main.append(path.drawing, path.inputs);
  return renderMissing(context, content, path, stops);
}

/** The top of a document tells of work on its result only while it says that there is none. */
function missingPlace(element: HTMLElement, { result }: StepwellDocument): WorkPlace {
  return { element, shows: [result!.quantity], needs: [], applies: () => !element.hidden };
}

/** Renders a block and keeps it live; hidden while the design leaves it out. */
export function renderBlock(context: PageContext, block: Block, stops: (() => void)[]): HTMLElement {
  const element = blockElement(context, block, stops);
  element.id = `block-${block.id}`;
  showWhile(context, element, block, stops);
  return element;
}

/** Hides the element while the block's condition does not hold or what it needs has no value. */
function showWhile(
  context: PageContext,
  element: HTMLElement,
  { when, needs = [] }: Block,
  stops: (() => void)[],
): void {
  const { live } = context;
  let given = needs.length === 0;
  const show = () => {
    element.hidden = !given || (when !== undefined && !conditionHolds(when, live.state().inputs));
  };
  if (when) stops.push(live.onState(show));
  if (needs.length > 0) {
    watchAll(context, needs, stops, {
      pending: () => {},
      settled: () => {},
      changed: (outcomeOf) => {
        given = needs.every((quantity) => hasValue(outcomeOf(quantity)));
        show();
      },
    });
  }
  show();
}

function blockElement(context: PageContext, block: Block, stops: (() => void)[]): HTMLElement {
  const { document } = context;
  switch (block.kind) {
    case 'prose':
    case 'caution': {
      const element = document.createElement('div');
      element.className = block.kind;
      // A note, not an <aside>: several landmarks of one kind and no name cannot be told apart.
      if (block.kind === 'caution') element.setAttribute('role', 'note');
      element.append(renderProse(context, block.prose, stops));
      return element;
    }
    case 'figure':
      return renderFigure(context, block, stops);
    case 'figures':
      return renderFigures(context, block, stops);
    case 'table':
      return renderTable(context, block.table, stops);
    case 'choices':
      return renderChoices(context, block, stops);
    case 'rows':
      return renderRows(context, block, stops);
    case 'controls':
      return renderPanel(context, block.heading, block.inputs, stops).element;
    case 'picture':
      return renderPicture(context, block, stops);
    case 'tool':
      return tools[block.tool](context, stops, renderBlock);
    case 'question':
      return renderQuestion(context, block, stops);
  }
}

function renderTable(context: PageContext, table: TableSpec, stops: (() => void)[]): HTMLElement {
  const { document } = context;
  const element = document.createElement('table');
  element.className = 'table';
  const caption = document.createElement('caption');
  caption.textContent = table.caption;
  const head = document.createElement('tr');
  for (const column of table.columns) {
    // A column without a name gets a plain cell: a heading without words is read out as nothing.
    const cell = document.createElement(column === '' ? 'td' : 'th');
    if (column !== '') cell.setAttribute('scope', 'col');
    cell.textContent = column;
    head.append(cell);
  }
  const thead = document.createElement('thead');
  thead.append(head);
  const body = document.createElement('tbody');
  for (const row of table.rows) {
    const line = document.createElement('tr');
    row.forEach((cell, i) => {
      const box = document.createElement(i === 0 ? 'th' : 'td');
      if (i === 0) box.setAttribute('scope', 'row');
      box.append(typeof cell === 'string' ? cell : valueElement(context, cell as Quantity, stops));
      line.append(box);
    });
    body.append(line);
  }
  element.append(caption, thead, body);
  return element;
}

function renderQuestion(context: PageContext, block: QuestionBlock, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const element = document.createElement('section');
  element.className = 'question';
  element.append(renderProse(context, block.question, stops));
  const options = document.createElement('div');
  options.className = 'question-options';
  const reply = document.createElement('p');
  reply.className = 'question-reply';
  reply.setAttribute('role', 'status');
  const explanation = document.createElement('div');
  explanation.hidden = true;
  explanation.append(renderProse(context, block.explanation, stops));
  let guessed: number | undefined;
  let missing: string | undefined;
  const judge = () => {
    if (guessed === undefined) return;
    if (missing !== undefined) {
      reply.textContent = missing;
      explanation.hidden = true;
      return;
    }
    try {
      const right = block.answer(live.read(block.from));
      reply.textContent =
        guessed === right
          ? `Yes: ${block.options[right]!.toLowerCase()}.`
          : `Not for this design: ${block.options[right]!.toLowerCase()}.`;
      explanation.hidden = false;
    } catch (error) {
      reply.textContent = (error as Error).message;
    }
  };
  block.options.forEach((text, i) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = text;
    button.addEventListener('click', () => {
      guessed = i;
      for (const other of options.children) other.setAttribute('aria-pressed', String(other === button));
      judge();
    });
    options.append(button);
  });
  watchProblem(context, Object.values(block.from), stops, (text) => {
    missing = text;
    judge();
  });
  element.append(options, reply, explanation);
  return element;
}
