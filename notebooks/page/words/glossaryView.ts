import { findWords } from '../../words/findWords.ts';
import type { Word } from '../../words/word.ts';
import { words, wordsByLetter } from '../../words/words.ts';
import type { PageContext } from '../context.ts';
import { freshId } from '../controls/field.ts';
import { element, setText } from '../element.ts';
import { wordMeaning, wordName, wordRelations, wordValues } from './wordParts.ts';

/** How far below and above the window values are brought already. */
const nearness = '600px';

/** All words under their letters, with what is behind them today, and a field to look one up. */
export function renderGlossary(context: PageContext, stops: (() => void)[]): HTMLElement {
  const { document } = context;
  const values = createValues(context, stops);
  const articles = new Map<Word, HTMLElement>();
  const letters: HTMLElement[] = [];
  const way = element(document, 'p', { class: 'word-letters', role: 'group', 'aria-label': 'Letters' });
  for (const [letter, list] of wordsByLetter(words)) {
    const heading = element(document, 'h2', { class: 'word-letter', tabindex: -1 }, letter);
    const shown = list.map((word) => {
      const article = entry(context, word, stops);
      articles.set(word, article);
      values.observe(article, word);
      return article;
    });
    const section = element(document, 'section', { 'aria-label': `Words with ${letter}` }, heading, ...shown);
    letters.push(section);
    const go = element(document, 'button', { type: 'button', class: 'plain' }, letter);
    go.addEventListener('click', () => {
      heading.scrollIntoView();
      heading.focus({ preventScroll: true });
    });
    way.append(go);
  }
  // What is found stands in a place of its own, the best first; letters would part it.
  const foundHeading = element(document, 'h2', { class: 'word-letter' }, 'Found');
  const foundPlace = element(document, 'section', { 'aria-label': 'Words that are found', hidden: true });
  const homes = new Map([...articles.values()].map((article) => [article, article.parentElement!]));
  const search = createSearch(document, (typed) => {
    const found = findWords(words, typed);
    const asked = typed.trim() !== '';
    for (const article of articles.values()) homes.get(article)!.append(article);
    for (const section of letters) section.hidden = asked;
    if (asked) foundPlace.replaceChildren(foundHeading, ...found.map((word) => articles.get(word)!));
    foundPlace.hidden = found.length === 0 || !asked;
    way.hidden = asked;
    return found.length;
  });
  return element(document, 'div', { class: 'words wide' }, search, way, foundPlace, ...letters);
}

function createSearch(document: Document, find: (typed: string) => number): HTMLElement {
  const id = freshId();
  const field = element(document, 'input', {
    type: 'search',
    id,
    class: 'field-text',
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
  });
  const said = element(document, 'span', { class: 'word-count', role: 'status' }, `${words.length} words`);
  field.addEventListener('input', () => {
    const count = find(field.value);
    setText(
      said,
      field.value.trim() === ''
        ? `${words.length} words`
        : count === 0
          ? 'No word like that. Try a part of it, or Find at the top of the page, which looks everywhere.'
          : `${count} of ${words.length} words`,
    );
  });
  return element(
    document,
    'p',
    { class: 'word-search', role: 'search' },
    element(document, 'label', { for: id }, 'Look up a word or a symbol'),
    field,
    said,
  );
}

function entry(context: PageContext, word: Word, stops: (() => void)[]): HTMLElement {
  const { document } = context;
  const heading = element(
    document,
    'h3',
    { id: `word-${word.id}`, tabindex: -1 },
    ...wordName(document, word),
  );
  return element(
    document,
    'article',
    { class: 'word', 'data-within': word.id, 'aria-labelledby': heading.id },
    element(
      document,
      'div',
      { class: 'word-text' },
      heading,
      wordMeaning(context, word, stops),
      ...wordRelations(document, word),
    ),
  );
}

/** Brings the values of a word once it comes near the window: there are hundreds in all. */
function createValues(context: PageContext, stops: (() => void)[]) {
  const waiting = new Map<Element, Word>();
  const observer = new IntersectionObserver(
    (seen) => {
      for (const { isIntersecting, target } of seen) {
        const word = waiting.get(target);
        if (!isIntersecting || !word) continue;
        waiting.delete(target);
        observer.unobserve(target);
        target.append(wordValues(context, word, stops));
      }
    },
    { rootMargin: nearness },
  );
  stops.push(() => observer.disconnect());
  return {
    observe(article: HTMLElement, word: Word) {
      if (!word.quantities) return;
      waiting.set(article, word);
      observer.observe(article);
    },
  };
}
