import type { RowsBlock } from '../document.ts';
import { readValues } from '../prose.ts';
import type { CountedRow, RowsSpec } from '../rowsSpec.ts';
import type { PageContext } from './context.ts';
import { element, setAttributes, setText } from './element.ts';
import { watchProblem } from './proseView.ts';
import { markAge, watchAll } from './watchAll.ts';

/** A row on the page. */
interface ShownRow {
  readonly line: HTMLElement;
  update(row: CountedRow, spec: RowsSpec): void;
}

/** Value of the first option: the row is in. */
const isIn = 'in';

/** A list whose rows are left out one by one; rows are rewritten in place, so that the choice just made keeps the focus. */
export function renderRows(context: PageContext, block: RowsBlock, stops: (() => void)[]): HTMLElement {
  const { document } = context;
  const caption = element(document, 'caption', {});
  const head = element(document, 'tr', { role: 'row' });
  const body = element(document, 'tbody', { role: 'rowgroup' });
  const thead = element(document, 'thead', { role: 'rowgroup' }, head);
  // Roles are said outright: on a narrow page the rows are laid out as blocks, which would end them as a table.
  const looks = { class: 'table choices-table rows-table', role: 'table' };
  const table = element(document, 'table', looks, caption, thead, body);
  const summary = element(document, 'p', { class: 'choices-summary', 'aria-live': 'polite' });
  const note = element(document, 'p', { class: 'stand-in', hidden: true });
  const holder = element(document, 'div', { class: 'choices rows' }, table, summary, note);
  const shown: ShownRow[] = [];
  const show = (spec: RowsSpec) => {
    setText(caption, spec.caption);
    writeHead(document, head, spec.columns);
    while (shown.length > spec.rows.length) shown.pop()!.line.remove();
    spec.rows.forEach((row, i) => {
      if (!shown[i]) {
        shown[i] = createRow(context);
        body.append(shown[i].line);
      }
      shown[i].update(row, spec);
    });
    table.hidden = spec.rows.length === 0;
    setText(summary, spec.summary);
  };
  const quantities = Object.values(block.from);
  watchAll(context, quantities, stops, {
    ...markAge(holder),
    changed: (outcomeOf) => {
      const read = readValues(block.from, outcomeOf);
      const given = 'values' in read;
      if (given) show(block.view(read.values));
      else table.hidden = true;
      summary.hidden = !given;
    },
  });
  watchProblem(context, quantities, stops, (text) => {
    setText(note, text ?? '');
    note.hidden = text === undefined;
  });
  return holder;
}

function writeHead(document: Document, head: HTMLElement, columns: readonly string[]): void {
  const now = [...head.children].map((cell) => cell.textContent);
  if (now.join('\n') === columns.join('\n')) return;
  // A column without a name gets a plain cell: a heading without words is read out as nothing.
  const cellOf = (text: string) =>
    text === ''
      ? element(document, 'td', { role: 'cell' })
      : element(document, 'th', { scope: 'col', role: 'columnheader' }, text);
  head.replaceChildren(...columns.map(cellOf));
}

function createRow({ document, live, report }: PageContext): ShownRow {
  const name = element(document, 'th', { scope: 'row', role: 'rowheader' });
  const choice = element(document, 'select', { class: 'field-list' });
  const last = element(document, 'td', { role: 'cell', class: 'rows-choice' }, choice);
  const line = element(document, 'tr', { role: 'row' }, name, last);
  let now: CountedRow | undefined;
  choice.addEventListener('change', () => {
    try {
      if (now) live.set(now.patch(choice.value === isIn ? undefined : choice.value));
    } catch (error) {
      report((error as Error).message);
      showChosen(choice, now?.reason);
    }
  });
  const cells: HTMLElement[] = [];
  return {
    line,
    update(row, spec) {
      now = row;
      setText(name, row.name);
      setAttributes(line, { 'data-out': row.reason !== undefined, 'data-bad': row.problem !== undefined });
      const texts = row.problem === undefined ? row.cells : [row.problem];
      while (cells.length > texts.length) cells.pop()!.remove();
      texts.forEach((text, i) => {
        cells[i] ??= line.insertBefore(element(document, 'td', { role: 'cell' }), last);
        setText(cells[i], text);
        const whole = row.problem !== undefined;
        setAttributes(cells[i], {
          'data-label': whole ? undefined : spec.columns[i + 1],
          colspan: whole ? spec.columns.length - 2 : undefined,
        });
      });
      setAttributes(choice, { 'aria-label': `${spec.columns.at(-1)}, ${row.name}` });
      const words = row.problem === undefined ? spec.in.good : spec.in.bad;
      writeOptions(document, choice, [[isIn, words], ...Object.entries(spec.reasons)]);
      showChosen(choice, row.reason);
    },
  };
}

function writeOptions(
  document: Document,
  choice: HTMLElement,
  options: readonly (readonly [value: string, words: string])[],
): void {
  options.forEach(([value, words], i) => {
    if (!choice.children[i]) choice.append(element(document, 'option', {}));
    setAttributes(choice.children[i]!, { value });
    setText(choice.children[i]!, words);
  });
}

function showChosen(choice: HTMLSelectElement, reason: string | undefined): void {
  const chosen = [...choice.options].find(({ value }) => value === (reason ?? isIn));
  if (chosen) chosen.selected = true;
}
