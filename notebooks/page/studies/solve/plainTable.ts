import { element } from '../../element.ts';

/** A small table of texts, whose rows begin with their heading. */
export function plainTable(
  document: Document,
  caption: string,
  columns: readonly string[],
  rows: readonly (readonly string[])[],
): HTMLElement {
  const head = columns.map((name) => element(document, 'th', { scope: 'col' }, name));
  const body = rows.map(([first = '', ...rest]) =>
    element(
      document,
      'tr',
      {},
      element(document, 'th', { scope: 'row' }, first),
      ...rest.map((text) => element(document, 'td', {}, text)),
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
  return element(document, 'div', { class: 'compare-table' }, table);
}
