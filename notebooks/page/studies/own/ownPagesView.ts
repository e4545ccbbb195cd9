import type { OwnDocument } from '../../../../lib/graph/studies.ts';
import { longestTitle } from '../../../../lib/studies/freshNames.ts';
import {
  addPage,
  duplicatePage,
  ownPagesOf,
  renamePage,
  takeOutPage,
} from '../../../../lib/studies/ownPages.ts';
import type { PageContext, RenderBlock } from '../../context.ts';
import { element, setAttributes, setText } from '../../element.ts';
import type { Live } from '../../live.ts';
import { labelledField, textInput, wordButton } from './labelledField.ts';
import { createOwnPage } from './pageView.ts';
import { writingsOf } from './writings.ts';

/** Which page is open, whether it is arranged and what is typed, while the person is elsewhere. */
interface Memory {
  open: string | undefined;
  arranging: boolean;
  /** Title of a page that is not made yet. */
  title: string;
}
const memories = new WeakMap<Live, Memory>();

function memoryOf(live: Live): Memory {
  const known = memories.get(live) ?? { open: undefined, arranging: false, title: '' };
  memories.set(live, known);
  return known;
}

/** The pages of the person's own: their list, and the one that is open. */
export function renderOwnPages(
  context: PageContext,
  stops: (() => void)[],
  renderBlock: RenderBlock,
): HTMLElement {
  const { document, live } = context;
  const memory = memoryOf(live);
  const said = element(document, 'p', { class: 'own-said', role: 'status' });
  const say = (text: string) => setText(said, text);
  const list = element(document, 'ul', { class: 'own-pages-list', 'aria-label': 'Your pages' });
  const none = element(document, 'p', { class: 'own-said' }, 'No page yet: give the first one a title.');
  const title = element(document, 'h2', { class: 'own-page-title', tabindex: -1 });
  const view = createOwnPage(context, renderBlock, say);
  const openPage = (): OwnDocument | undefined => {
    const pages = ownPagesOf(live.state());
    return pages.find(({ id }) => id === memory.open) ?? pages[0];
  };
  const open = (id: string) => {
    memory.open = id;
    say('');
    follow();
    title.focus();
  };
  const create = titleForm(document, 'Title of a new page', 'New page', (text) => {
    const { design, page } = addPage(live.state(), text);
    memory.open = page.id;
    memory.arranging = true;
    live.open(design);
    say(`‘${page.title}’ is there; add its first piece.`);
    view.element.querySelector<HTMLElement>('.own-kinds button')?.focus();
  });
  create.text.value = memory.title;
  for (const kind of ['input', 'submit'])
    create.form.addEventListener(kind, () => {
      memory.title = create.text.value;
    });
  const rename = titleForm(document, 'Title of this page', 'Rename', (text) => {
    live.open(renamePage(live.state(), openPage()!.id, text));
    rename.form.hidden = true;
    title.focus();
  });
  rename.form.hidden = true;
  const arrange = wordButton(
    document,
    'Arrange',
    () => {
      if (memory.arranging && !view.finish()) return;
      memory.arranging = !memory.arranging;
      follow();
      arrange.focus();
    },
    { main: true },
  );
  const tools = element(
    document,
    'div',
    { class: 'own-buttons own-page-tools' },
    arrange,
    wordButton(document, 'Rename', () => {
      rename.form.hidden = !rename.form.hidden;
      rename.text.value = openPage()?.title ?? '';
      if (!rename.form.hidden) rename.text.focus();
    }),
    wordButton(document, 'Duplicate', () => {
      try {
        const { design, page } = duplicatePage(live.state(), openPage()!.id);
        memory.open = page.id;
        live.open(design);
        say(`‘${page.title}’ is there.`);
        title.focus();
      } catch (error) {
        say((error as Error).message);
      }
    }),
    wordButton(document, 'Take the page out', () => {
      const page = openPage()!;
      live.open(takeOutPage(live.state(), page.id));
      say(`‘${page.title}’ has been taken out. Undo brings it back.`);
      (list.querySelector<HTMLElement>('button') ?? create.text).focus();
    }),
  );
  const article = element(
    document,
    'article',
    { class: 'own-page' },
    title,
    tools,
    rename.form,
    view.element,
  );
  const drawList = (pages: readonly OwnDocument[], page: OwnDocument | undefined) => {
    const key = pages.map(({ id, title }) => `${id} ${title}`).join('\n');
    if (list.dataset['key'] !== key) {
      list.dataset['key'] = key;
      list.replaceChildren(
        ...pages.map((one) => {
          const button = wordButton(document, one.title, () => open(one.id));
          button.dataset['page'] = one.id;
          return element(document, 'li', {}, button);
        }),
      );
    }
    for (const button of list.querySelectorAll('button'))
      setAttributes(button, { 'aria-current': button.dataset['page'] === page?.id && 'page' });
    list.hidden = pages.length === 0;
  };
  const follow = () => {
    const pages = ownPagesOf(live.state());
    const page = openPage();
    drawList(pages, page);
    // What is still being written there is not hidden.
    if (page && writingsOf(live).has(page.id)) memory.arranging = true;
    article.hidden = page === undefined;
    none.hidden = page !== undefined;
    setText(title, page?.title ?? '');
    setText(arrange, memory.arranging ? 'Done arranging' : 'Arrange');
    setAttributes(article, { 'aria-label': page?.title, 'data-arranging': memory.arranging });
    view.show(page, memory.arranging);
  };
  // What was said belongs to the design as it was then; whoever changes it here says so afterwards.
  const changed = () => {
    say('');
    follow();
  };
  stops.push(live.onState(changed), view.close);
  follow();
  return element(
    document,
    'section',
    { class: 'own-pages', 'aria-label': 'Your own pages' },
    element(document, 'div', { class: 'own-pages-choice' }, list, none, create.form),
    said,
    article,
  );
}

/** A title to type, and a button for it; `take` throws a Problem where it cannot be taken. */
function titleForm(document: Document, label: string, words: string, take: (text: string) => void) {
  const text = textInput(document, longestTitle);
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const form = element(
    document,
    'form',
    { class: 'own-title-form', autocomplete: 'off' },
    labelledField(document, label, text),
    element(document, 'button', { type: 'submit', class: 'own-main' }, words),
    problem,
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    try {
      setText(problem, '');
      take(text.value);
      text.value = '';
    } catch (error) {
      setText(problem, (error as Error).message);
    }
  });
  return { form, text };
}
