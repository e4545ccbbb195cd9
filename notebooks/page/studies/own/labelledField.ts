import { freshId } from '../../controls/field.ts';
import { element } from '../../element.ts';

/** A control under its label, with a line of help that is read out with it. */
export function labelledField(
  document: Document,
  words: string,
  control: HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement,
  help = '',
): HTMLElement {
  if (control.id === '') control.id = freshId();
  const holder = element(document, 'div', { class: 'own-field' });
  holder.append(element(document, 'label', { for: control.id }, words), control);
  if (help !== '') {
    const id = `${control.id}-help`;
    holder.append(element(document, 'small', { id }, help));
    control.setAttribute('aria-describedby', id);
  }
  return holder;
}

/** A line of text to type in. */
export function textInput(document: Document, longest: number): HTMLInputElement {
  return element(document, 'input', {
    type: 'text',
    class: 'field-text',
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    maxlength: longest,
  });
}

/** A button in words; `about` is what is read out where the words alone do not say it. */
export function wordButton(
  document: Document,
  words: string,
  run: () => void,
  { about, main = false }: { readonly about?: string; readonly main?: boolean } = {},
): HTMLButtonElement {
  const button = element(
    document,
    'button',
    { type: 'button', class: main ? 'own-main' : 'plain', 'aria-label': about },
    words,
  );
  button.addEventListener('click', run);
  return button;
}
