import type { ComparedRow } from '../../../lib/studies/compare.ts';
import { blockQuantities } from '../../blockQuantities.ts';
import { changeText, comparisonColumns } from '../../compareWords.ts';
import { documents } from '../../contents.ts';
import type { PageContext } from '../context.ts';
import { element } from '../element.ts';
import { download, fileName } from '../figures/exportFigure.ts';
import { rowsCsv } from '../figures/figureCsv.ts';

/** A list of the documents, and the ids of all quantities that the chosen one shows. */
export function createDocumentChoice(document: Document, name: string) {
  const left = ['what-if', 'own-pages', 'write-up'];
  const shown = documents.filter(({ id, learning }) => !learning && !left.includes(id));
  const select = element(
    document,
    'select',
    { id: name, class: 'field-list' },
    ...shown.map(({ title }, i) => element(document, 'option', { value: i }, title)),
  );
  const holder = element(
    document,
    'p',
    { class: 'compare-document' },
    element(document, 'label', { for: name }, 'Numbers of the document '),
    select,
  );
  const chosen = () => {
    const { title, blocks } = shown[Number(select.value)]!;
    return { title, ids: blocks.flatMap((block) => blockQuantities(block).map(({ id }) => id)) };
  };
  return { select, holder, chosen };
}

/**
 * Rows held against each other, with their changes against the first column and the way to a file; `more` is a last
 * column. Hidden while there are none.
 */
export function comparedTable(
  { document, live, open }: PageContext,
  caption: string,
  names: readonly string[],
  rows: readonly ComparedRow[],
  more?: { readonly name: string; readonly textOf: (row: ComparedRow) => string },
): HTMLElement {
  const head = element(
    document,
    'tr',
    {},
    element(document, 'td', {}),
    ...[...names, ...(more ? [more.name] : [])].map((name) =>
      element(document, 'th', { scope: 'col' }, name),
    ),
  );
  const body = rows.map((row) => {
    const label = element(document, 'button', { type: 'button', class: 'plain' }, row.name);
    label.addEventListener('click', () => open(live.graph.quantities.get(row.id)!, label));
    const cells = row.texts.map((text, i) => {
      // Of what reads 0 nothing is a part, whatever stands behind its last digit.
      const change = i === 0 || /^0(?![.\d])/.test(row.texts[0]!) ? '' : changeText(row.changes[i]);
      return element(
        document,
        'td',
        { class: text === row.texts[0] ? 'compare-same' : '' },
        text,
        ...(change === '' ? [] : [' ', element(document, 'small', {}, change)]),
      );
    });
    const last = more ? [element(document, 'td', { class: 'compare-more' }, more.textOf(row))] : [];
    return element(document, 'tr', {}, element(document, 'th', { scope: 'row' }, label), ...cells, ...last);
  });
  const save = element(document, 'button', { type: 'button', class: 'plain' }, 'CSV');
  save.setAttribute('aria-label', `${caption} as CSV`);
  save.addEventListener('click', () => {
    const text = rowsCsv(comparisonColumns(names, rows));
    download(fileName(caption, 'csv'), new Blob([text], { type: 'text/csv' }));
  });
  const made = element(
    document,
    'table',
    { class: 'table' },
    element(document, 'caption', {}, caption, ' ', save),
    element(document, 'thead', {}, head),
    element(document, 'tbody', {}, ...body),
  );
  const holder = element(document, 'div', { class: 'compare-table' }, made);
  holder.hidden = rows.length === 0;
  return holder;
}
