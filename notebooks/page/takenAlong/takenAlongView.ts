import { element, setText } from '../element.ts';
import type { KeptPages } from './keepPages.ts';
import { takenAlongWords } from './takenAlongWords.ts';

/** The line of the start page about what leaves the browser, and what works without network. */
export function createTakenAlong(document: Document, pages: KeptPages): HTMLElement {
  const line = element(document, 'p', { class: 'taken-along', role: 'status' });
  const show = () => setText(line, takenAlongWords(pages.taken()));
  pages.onTaken(show);
  show();
  return line;
}
