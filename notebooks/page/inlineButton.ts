import { element } from './element.ts';

/**
 * A button that wraps with the text around it, which a `button` element does not: it is laid out as a box, so long
 * words in it stay together and a full stop behind it may start a line.
 */
export function inlineButton(
  document: Document,
  className: string,
  text: string,
  act: (from: HTMLElement) => void,
): HTMLElement {
  const made = element(document, 'span', { class: className, role: 'button', tabindex: 0 }, text);
  made.addEventListener('click', () => act(made));
  made.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    act(made);
  });
  return made;
}
