import type { ChoiceRow, ChoicesSpec } from '../choicesSpec.ts';
import type { ChoicesBlock } from '../document.ts';
import { readValues } from '../prose.ts';
import { createRowActs } from './choicesActs.ts';
import type { PageContext } from './context.ts';
import { element, setAttributes, setText } from './element.ts';
import { watchProblem } from './proseView.ts';
import { markAge, watchAll } from './watchAll.ts';

/** A row on the page: its place in the table, and the row below it that holds the rest. */
interface ShownRow {
  readonly line: HTMLElement;
  readonly rest: HTMLElement;
  update(row: ChoiceRow, columns: readonly string[]): void;
}

/** A list to choose from; rows are rewritten in place, so that the button that was pressed keeps the focus, and go with what they are about. */
export function renderChoices(context: PageContext, block: ChoicesBlock, stops: (() => void)[]): HTMLElement {
  const { document } = context;
  const caption = element(document, 'caption', {});
  const head = element(document, 'tr', { role: 'row' });
  const body = element(document, 'tbody', { role: 'rowgroup' });
  const thead = element(document, 'thead', { role: 'rowgroup' }, head);
  // Roles are said outright: on a narrow page the rows are laid out as blocks, which would end them as a table.
  const table = element(
    document,
    'table',
    { class: 'table choices-table', role: 'table' },
    caption,
    thead,
    body,
  );
  const summary = element(document, 'p', { class: 'choices-summary' });
  const hint = element(document, 'p', { class: 'choices-summary choices-hint' });
  const note = element(document, 'p', { class: 'stand-in', hidden: true });
  const holder = element(document, 'div', { class: 'choices' }, table, summary, hint, note);
  const rows = createRows(context, block.id, body);

  const show = (spec: ChoicesSpec) => {
    setText(caption, spec.caption);
    writeHead(document, head, spec.columns);
    rows.show(spec);
    table.hidden = spec.rows.length === 0;
    setText(summary, spec.summary);
    setText(hint, spec.hint ?? '');
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
      hint.hidden = !given;
    },
  });
  watchProblem(context, quantities, stops, (text) => {
    setText(note, text ?? '');
    note.hidden = text === undefined;
  });
  return holder;
}

/** The rows of a list: each goes with its key, so that what is open or typed there stays with what it is about. */
function createRows(context: PageContext, id: string, body: HTMLElement) {
  let rows = new Map<unknown, ShownRow>();
  let made = 0;
  return {
    show({ rows: wanted, columns }: ChoicesSpec): void {
      const before = [...rows.values()];
      const active = context.document.activeElement ?? null;
      const next = new Map<unknown, ShownRow>();
      for (const row of wanted) {
        const key = keyOf(row, next);
        const shown = rows.get(key) ?? createRow(context, `${id}-${made++}`);
        shown.update(row, columns);
        next.set(key, shown);
      }
      rows = next;
      const now = [...rows.values()];
      const place = before.findIndex((shown) => holds(shown, active));
      for (const { line, rest } of before.filter((shown) => !now.includes(shown))) {
        line.remove();
        rest.remove();
      }
      putInOrder(body, now, active);
      // Whoever took a row out goes on at the one that took its place.
      if (place >= 0 && !now.includes(before[place]!))
        now[Math.min(place, now.length - 1)]?.line.querySelector<HTMLElement>('button')?.focus();
    },
  };
}

/** What a row is known by; a second row of the same key is known by its place among those. */
function keyOf({ name, key: wanted = name }: ChoiceRow, taken: ReadonlyMap<unknown, ShownRow>): unknown {
  return taken.has(wanted) ? `${name}, row ${taken.size}` : wanted;
}

const holds = ({ line, rest }: ShownRow, active: Element | null) =>
  active !== null && (line.contains(active) || rest.contains(active));

/** Rows in their order. What has the focus stays where it is and the others move around it, since moving it would lose it. */
function putInOrder(body: HTMLElement, rows: readonly ShownRow[], active: Element | null): void {
  const parts = rows.flatMap(({ line, rest }) => [line, rest]);
  const held = parts.findIndex((part) => active && part.contains(active));
  parts.forEach((part, i) => {
    if (i === held) while (body.children[i] !== part) body.append(body.children[i]!);
    else if (body.children[i] !== part) body.insertBefore(part, body.children[i] ?? null);
  });
}

function writeHead(document: Document, head: HTMLElement, columns: readonly string[]): void {
  const shown = [...columns, 'more'];
  if (head.children.length === shown.length) {
    shown.forEach((text, i) => {
      setText(head.children[i] as HTMLElement, text);
    });
    return;
  }
  head.replaceChildren(
    ...shown.map((text) => element(document, 'th', { scope: 'col', role: 'columnheader' }, text)),
  );
}

function createRow(context: PageContext, id: string): ShownRow {
  const { document, live } = context;
  const take = element(document, 'button', { type: 'button', class: 'sets-link' });
  const name = element(document, 'th', { scope: 'row', role: 'rowheader' }, take);
  const toggle = element(document, 'button', {
    type: 'button',
    class: 'plain choices-toggle',
    'aria-expanded': 'false',
    'aria-controls': id,
  });
  const last = element(document, 'td', { role: 'cell' }, toggle);
  const line = element(document, 'tr', { role: 'row' }, name, last);
  const list = element(document, 'dl', {});
  const about = element(document, 'p', {});
  const acts = createRowActs(context, id);
  const box = element(document, 'td', { role: 'cell' }, about, list, acts.element);
  const rest = element(document, 'tr', { role: 'row', class: 'choices-rest', id, hidden: true }, box);
  let now: ChoiceRow | undefined;
  take.addEventListener('click', () => {
    try {
      if (now) live.set(now.patch);
    } catch (error) {
      context.report((error as Error).message);
    }
  });
  const nameToggle = () => setText(toggle, rest.hidden ? 'more' : 'less');
  toggle.addEventListener('click', () => {
    rest.hidden = !rest.hidden;
    toggle.setAttribute('aria-expanded', String(!rest.hidden));
    nameToggle();
  });
  nameToggle();
  const cells: HTMLElement[] = [];
  return {
    line,
    rest,
    update(row, columns) {
      now = row;
      setText(take, row.name);
      setAttributes(take, { 'aria-label': row.does, title: row.does });
      setAttributes(line, { 'aria-current': row.chosen && 'true' });
      toggle.setAttribute('aria-label', `More about ${row.name}`);
      while (cells.length > row.cells.length) cells.pop()!.remove();
      row.cells.forEach((text, i) => {
        cells[i] ??= line.insertBefore(element(document, 'td', { role: 'cell' }), last);
        setText(cells[i], text);
        setAttributes(cells[i], { 'data-label': columns[i + 1] });
      });
      setAttributes(box, { colspan: row.cells.length + 2 });
      setText(about, row.about);
      writeList(document, list, row.more);
      acts.update(row.acts);
    },
  };
}

function writeList(document: Document, list: HTMLElement, more: ChoiceRow['more']): void {
  while (list.children.length > 2 * more.length) list.lastChild!.remove();
  more.forEach(([name, value], i) => {
    if (list.children.length <= 2 * i) list.append(element(document, 'dt', {}), element(document, 'dd', {}));
    setText(list.children[2 * i] as HTMLElement, name);
    setText(list.children[2 * i + 1] as HTMLElement, value);
  });
}
