import type { Quantity } from '../../../lib/graph/quantity.ts';
import { ownProse } from '../../ownProse.ts';
import { isWorded } from '../../wordedSymbol.ts';
import type { Word } from '../../words/word.ts';
import { wordById } from '../../words/words.ts';
import type { PageContext } from '../context.ts';
import { element } from '../element.ts';
import { inlineButton } from '../inlineButton.ts';
import { mathElement, renderProse, valueElement } from '../proseView.ts';

/** The word and its symbol, for a heading. */
export function wordName(document: Document, { word, symbol }: Word): (Node | string)[] {
  return symbol === undefined ? [word] : [word, ' ', mathElement(document, symbol)];
}

/** What the word means, and the custom that holds here. */
export function wordMeaning(context: PageContext, word: Word, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const told = element(document, 'div', { class: 'word-meaning' });
  told.append(renderProse(context, ownProse(live.graph, word.meaning), stops));
  if (word.convention !== undefined) {
    const custom = renderProse(context, ownProse(live.graph, `Here: ${inSentence(word.convention)}`), stops);
    const holder = element(document, 'div', { class: 'word-custom' });
    holder.append(custom);
    told.append(holder);
  }
  return told;
}

/** A sentence to stand behind a colon: its first word small, unless it is a name or a symbol. */
function inSentence(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text;
}

/** Other names and what it is looked for by, and the words to read beside this one. */
export function wordRelations(document: Document, { also, see }: Word): HTMLElement[] {
  const line = (...parts: (Node | string)[]) => element(document, 'p', { class: 'word-line' }, ...parts);
  const names = also ? [line(`Found under: ${also.join(', ')}.`)] : [];
  const links = (see ?? []).flatMap((id, i) => {
    const link = element(document, 'a', { href: `#words/${id}` }, wordById.get(id)!.word);
    return i === 0 ? [link] : [', ', link];
  });
  return links.length === 0 ? names : [...names, line('See: ', ...links, '.')];
}

/** The quantities behind a word with what they are today. */
export function wordValues(context: PageContext, word: Word, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const list = element(document, 'dl', { class: 'word-values' });
  for (const id of word.quantities ?? []) {
    const quantity = live.graph.quantities.get(id)!;
    const symbol = isWorded(quantity) ? [] : [' ', mathElement(document, quantity.symbol)];
    list.append(
      element(document, 'dt', {}, quantity.name, ...symbol),
      element(document, 'dd', {}, valueToday(context, quantity, stops)),
    );
  }
  return list;
}

/** What takes a long search is worked out only when it is opened. */
function valueToday(context: PageContext, quantity: Quantity, stops: (() => void)[]): HTMLElement {
  if (!needsSearch(quantity)) return valueElement(context, quantity, stops);
  return inlineButton(context.document, 'value', 'work it out', (from) => context.open(quantity, from));
}

const searching = new Map<Quantity, boolean>();

/** True where a long search stands anywhere behind a quantity. */
function needsSearch(quantity: Quantity): boolean {
  const known = searching.get(quantity);
  if (known !== undefined) return known;
  const found =
    quantity.kind === 'derived' &&
    (quantity.heavy === 'search' || Object.values(quantity.from).some(needsSearch));
  searching.set(quantity, found);
  return found;
}
