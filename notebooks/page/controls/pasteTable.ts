import { element } from '../element.ts';

/** What a table that was pasted is called where files go by their names. */
export const pastedName = 'pasted table';

/**
 * A place to paste a table, behind a summary; it is read as a file of the name "pasted table". `take` tells whether it was
 * taken: then the text has gone, else it stays to be corrected.
 */
export function createPasteTable(
  document: Document,
  { describedBy, name }: { readonly describedBy: string; readonly name: string },
  take: (file: File) => Promise<boolean>,
): HTMLElement {
  const text = element(document, 'textarea', {
    class: 'field-text field-pasted',
    rows: 6,
    spellcheck: 'false',
    autocomplete: 'off',
    placeholder: 'Heading with units, then a line a row',
    'aria-label': `Text of the ${name}`,
    'aria-describedby': describedBy,
  });
  const read = element(document, 'button', { type: 'button', class: 'plain' }, 'Read it');
  const summary = element(
    document,
    'summary',
    { class: 'field-paste-summary', 'aria-label': `Paste a table: ${name}` },
    'Paste a table',
  );
  const box = element(document, 'details', { class: 'field-paste' }, summary, text, read);
  const submit = async () => {
    if (await take(new File([text.value], pastedName, { type: 'text/plain' }))) {
      text.value = '';
      box.removeAttribute('open');
      summary.focus();
    } else text.focus();
  };
  read.addEventListener('click', () => void submit());
  text.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
    event.preventDefault();
    void submit();
  });
  box.addEventListener('toggle', () => {
    if (box.hasAttribute('open')) text.focus();
  });
  return box;
}
