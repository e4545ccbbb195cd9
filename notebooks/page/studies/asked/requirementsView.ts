import type { Requirement } from '../../../../lib/graph/studies.ts';
import { canBeAsked, requirementsOf, withoutRequirement } from '../../../../lib/studies/requirements.ts';
import { failedFirst, requirementsSaid } from '../../../requirementWords.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { createAskForm } from './askForm.ts';
import { createRequirementRow, type RequirementRow, rowColumns } from './requirementRow.ts';

/** All that is asked of the design, failed first, with today's values; and the form to ask more. */
export function renderRequirements(context: PageContext, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const said = element(document, 'p', { class: 'choices-summary', 'aria-live': 'polite' });
  const body = element(document, 'tbody', { role: 'rowgroup' });
  const table = createTable(document, body);
  const ask = createAskForm(context, stops, () => {});
  const rows = new Map<string, RequirementRow>();

  /** Rows change places only where a verdict changed; whoever stands in one goes with it. */
  const arrange = () => {
    const all = failedFirst([...rows.values()]);
    setText(said, requirementsSaid(all.map(({ verdict }) => verdict)));
    const lines = all.map((row) => row.line);
    if (lines.every((line, i) => body.children[i] === line)) return;
    const held = document.activeElement;
    body.append(...lines);
    if (held && body.contains(held)) (held as HTMLElement).focus({ preventScroll: true });
  };
  const removed = ({ id }: Requirement) => {
    live.open(withoutRequirement(live.state(), id));
    ask.element.querySelector('input')!.focus();
  };
  const edited = ({ id }: Requirement) => {
    const quantity = live.graph.quantities.get(id);
    if (canBeAsked(quantity)) ask.edit(quantity);
  };
  const follow = () => {
    const requirements = requirementsOf(live.state());
    const kept = new Map(requirements.map((one) => [keyOf(one), one]));
    for (const [key, row] of rows) {
      if (kept.has(key) && row.quantity === live.graph.quantities.get(row.requirement.id)) continue;
      row.close();
      row.line.remove();
      rows.delete(key);
    }
    for (const [key, one] of kept)
      if (!rows.has(key))
        rows.set(
          key,
          createRequirementRow(context, one, {
            changed: arrange,
            edit: () => edited(one),
            remove: () => removed(one),
          }),
        );
    inOrderOf(rows, [...kept.keys()]);
    table.hidden = rows.size === 0;
    arrange();
    ask.follow();
  };
  stops.push(live.onState(follow), () => {
    for (const row of rows.values()) row.close();
  });
  follow();
  return element(
    document,
    'section',
    { class: 'requirements', 'aria-label': 'What is asked of the design' },
    table,
    said,
    ask.element,
  );
}

/** One row for each wording: what is changed is a new one. */
const keyOf = (requirement: Requirement) => JSON.stringify(requirement);

/** Puts the entries of a map into an order. */
function inOrderOf<V>(map: Map<string, V>, keys: readonly string[]): void {
  const entries = keys.map((key) => [key, map.get(key)!] as const);
  map.clear();
  for (const [key, value] of entries) map.set(key, value);
}

function createTable(document: Document, body: HTMLElement): HTMLElement {
  const heads = rowColumns.map((name) =>
    // A column without a name gets a plain cell: a heading without words is read out as nothing.
    name === ''
      ? element(document, 'td', { role: 'cell' })
      : element(document, 'th', { scope: 'col', role: 'columnheader' }, name),
  );
  // Roles are said outright: on a narrow page the rows are laid out as blocks, which would end them as a table.
  return element(
    document,
    'table',
    { class: 'table choices-table requirements-table', role: 'table' },
    element(document, 'caption', {}, 'Requirements, those not met first'),
    element(document, 'thead', { role: 'rowgroup' }, element(document, 'tr', { role: 'row' }, ...heads)),
    body,
  );
}
