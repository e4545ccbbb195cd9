import { longestText } from '../../../../lib/design/savedWritings.ts';
import { Problem } from '../../../../lib/problem.ts';
import { element } from '../../element.ts';
import { labelledField } from './labelledField.ts';
import type { FieldsOf } from './pieceParts.ts';
import { createSearchField } from './searchField.ts';

/** How a text is written: what stands there, and what it gives. */
const writing: readonly (readonly [written: string, gives: string])[] = [
  ['# Heading', 'a heading; ## one below it'],
  ['**bold**, *slanted*', 'words that stand out'],
  ['- one line each', 'a list; 1. 2. 3. a numbered one'],
  ['{spot.width}', 'the number as it is today, which follows the design'],
  ['$w_0 = \\lambda f / \\pi w$', 'an equation in the line; between $$ and $$ a large one'],
  ['[words](https://example.org)', 'a link to a page of the web'],
  ['| a | b |', 'a table: a line of |---|---| below its first'],
];

/** Words of the person's own, Markdown. */
export const textFields: FieldsOf<'text'> = ({ document, live }, start, changed) => {
  const text = element(document, 'textarea', {
    class: 'field-text own-text',
    rows: 9,
    maxlength: longestText,
  });
  text.value = start?.text ?? '';
  text.addEventListener('input', changed);
  const search = createSearchField(document, {
    label: 'Put a number of the design in',
    quantities: () => live.graph.quantities.values(),
    chosen: ({ id }) => {
      text.setRangeText(`{${id}}`, text.selectionStart, text.selectionEnd, 'end');
      text.focus();
      changed();
    },
  });
  const help = element(
    document,
    'details',
    { class: 'own-rules' },
    element(document, 'summary', {}, 'How a text is written'),
    element(
      document,
      'ul',
      {},
      ...writing.map(([written, gives]) =>
        element(document, 'li', {}, element(document, 'code', {}, written), ` ${gives}`),
      ),
    ),
  );
  return {
    elements: [labelledField(document, 'Text', text), search.element, help],
    read() {
      if (text.value.trim() === '') throw new Problem('absent', 'The text is empty; write a word.');
      return { kind: 'text', text: text.value };
    },
    focus: () => text.focus(),
  };
};
