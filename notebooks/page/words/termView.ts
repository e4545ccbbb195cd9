import type { Term } from '../../prose.ts';
import type { PageContext } from '../context.ts';
import { setAttributes } from '../element.ts';
import { inlineButton } from '../inlineButton.ts';

/** A word whose meaning opens beside it; plain words where nothing can be opened. */
export function renderTerm({ document, define }: PageContext, { text, word }: Term): Node {
  if (!define) return document.createTextNode(text);
  const made = inlineButton(document, 'term', text, (from) => define(word, from));
  setAttributes(made, { 'aria-haspopup': 'dialog', 'aria-expanded': 'false' });
  return made;
}
