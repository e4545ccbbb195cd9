import { longestTitle } from '../../../lib/studies/freshNames.ts';
import { addLecture, type StepDraft } from '../../../lib/studies/lectures.ts';
import { ownPagesOf } from '../../../lib/studies/ownPages.ts';
import { lending } from '../../blockChoices.ts';
import { documents } from '../../contents.ts';
import { dividedIntoSteps, partsOfDocument, partsOfPage } from '../../lectures/dividing.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import { labelledField, textInput } from '../studies/own/labelledField.ts';
import type { LectureMemory } from './lectureMemory.ts';

/** Where a new lecture is begun. */
export interface NewLecture {
  readonly element: HTMLElement;
  /** Offers the own pages that there are now. */
  refresh(): void;
  focus(): void;
}

/** What a lecture begins with. */
interface Beginning {
  readonly key: string;
  readonly title: string;
  steps(): readonly StepDraft[];
}

/** `made` hears of the new lecture by its id. */
export function createNewLecture(
  { document, live }: PageContext,
  { drafts }: LectureMemory,
  made: (id: string) => void,
): NewLecture {
  const pages = (): readonly Beginning[] =>
    ownPagesOf(live.state()).map((page) => ({
      key: `own/${page.id}`,
      title: page.title,
      steps: () => dividedIntoSteps(page.title, partsOfPage(live.graph, documents, page)),
    }));
  const lent: readonly Beginning[] = lending(documents).map((one) => ({
    key: `page/${one.id}`,
    title: one.title,
    steps: () => dividedIntoSteps(one.title, partsOfDocument(one, live.state().inputs)),
  }));
  const title = textInput(document, longestTitle);
  title.value = drafts.get('new') ?? '';
  title.addEventListener('input', () => drafts.set('new', title.value));
  const from = element(document, 'select', { class: 'field-list' });
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const group = (label: string, ones: readonly Beginning[]) =>
    element(
      document,
      'optgroup',
      { label },
      ...ones.map(({ key, title }) => element(document, 'option', { value: key }, title)),
    );
  const refresh = () => {
    const own = pages();
    const key = own.map((page) => `${page.key} ${page.title}`).join('\n');
    if (from.dataset['key'] === key) return;
    from.dataset['key'] = key;
    const chosen = from.value;
    from.replaceChildren(
      element(document, 'option', { value: '' }, 'no step yet'),
      ...(own.length === 0 ? [] : [group('a page of your own, divided into steps', own)]),
      group('a page of the program, divided into steps', lent),
    );
    from.value = [...own, ...lent].some((one) => one.key === chosen) ? chosen : '';
  };
  const form = element(
    document,
    'form',
    { class: 'own-title-form lecture-new', autocomplete: 'off', 'aria-label': 'A new lecture' },
    labelledField(document, 'Title of a new lecture', title),
    labelledField(document, 'It begins with', from),
    element(document, 'button', { type: 'submit', class: 'own-main' }, 'New lecture'),
    problem,
  );
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const beginning = [...pages(), ...lent].find(({ key }) => key === from.value);
    const named = title.value.trim() === '' && beginning ? beginning.title : title.value;
    try {
      setText(problem, '');
      const draft = { title: named, steps: beginning?.steps() ?? [] };
      const { design, lecture } = addLecture(live.state(), draft);
      title.value = '';
      drafts.delete('new');
      from.value = '';
      live.open(design);
      made(lecture.id);
    } catch (error) {
      setText(problem, (error as Error).message);
    }
  });
  refresh();
  return { element: form, refresh, focus: () => title.focus() };
}
