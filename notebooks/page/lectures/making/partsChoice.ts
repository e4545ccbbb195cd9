import type { StepDraft } from '../../../../lib/studies/lectures.ts';
import { ownPagesOf } from '../../../../lib/studies/ownPages.ts';
import { lending } from '../../../blockChoices.ts';
import { documents } from '../../../contents.ts';
import { asOneStep, eachAStep, type Part, partsOfDocument, partsOfPage } from '../../../lectures/dividing.ts';
import type { PageContext } from '../../context.ts';
import { element, setText } from '../../element.ts';
import { labelledField, wordButton } from '../../studies/own/labelledField.ts';
import type { LectureMemory } from '../lectureMemory.ts';

/** Parts of several pages, ticked one after another, that become steps. */
export interface PartsChoice {
  readonly element: HTMLElement;
  /** Offers what the pages hold now. */
  refresh(): void;
  focus(): void;
}

/** A page that parts are taken from. */
interface Source {
  readonly key: string;
  readonly title: string;
  readonly isOwn: boolean;
  parts(): readonly Part[];
}

/** `add` gets the steps that are to be made; what is ticked is put away once they are. */
export function createPartsChoice(
  { document, live }: PageContext,
  memory: LectureMemory,
  add: (steps: readonly StepDraft[]) => void,
): PartsChoice {
  const sources = (): readonly Source[] => [
    ...ownPagesOf(live.state()).map((page) => ({
      key: `own/${page.id}`,
      title: page.title,
      isOwn: true,
      parts: () => partsOfPage(live.graph, documents, page),
    })),
    ...lending(documents).map((one) => ({
      key: `page/${one.id}`,
      title: one.title,
      isOwn: false,
      parts: () => partsOfDocument(one, live.state().inputs),
    })),
  ];
  const from = element(document, 'select', { class: 'field-list' });
  const offered = element(document, 'div', { class: 'lecture-offered', role: 'group', tabindex: 0 });
  const chosen = element(document, 'ol', { class: 'own-chosen', 'aria-label': 'Chosen, in this order' });
  const said = element(document, 'p', { class: 'own-said', role: 'status' });
  const problem = element(document, 'p', { class: 'problem', role: 'status' });
  const addAs = (words: string, make: typeof eachAStep) =>
    wordButton(
      document,
      words,
      () => {
        try {
          setText(problem, '');
          const parts = memory.parts;
          add(make(parts));
          set([]);
        } catch (error) {
          setText(problem, (error as Error).message);
        }
      },
      { main: true },
    );
  const each = addAs('Add', eachAStep);
  const one = addAs('Add all as one step', asOneStep);
  const set = (parts: LectureMemory['parts']) => {
    memory.parts = parts;
    setText(problem, '');
    drawChosen();
  };
  const nameOf = (source: Source) => (source.isOwn ? `‘${source.title}’, of your own` : source.title);
  const source = () => {
    const all = sources();
    return all.find(({ key }) => key === memory.source) ?? all.find(({ isOwn }) => !isOwn)!;
  };
  const drawSources = () => {
    const all = sources();
    const key = all.map((one) => `${one.key} ${one.title}`).join('\n');
    if (from.dataset['key'] === key) return;
    from.dataset['key'] = key;
    from.replaceChildren(...all.map((one) => element(document, 'option', { value: one.key }, nameOf(one))));
    from.value = source().key;
  };
  let drawn = '';
  const drawOffered = () => {
    const { key, title, parts } = source();
    const all = parts().map((part) => ({ ...part, key: JSON.stringify(part.piece) }));
    const now = `${key}\n${all.map((part) => `${part.key} ${part.title}`).join('\n')}`;
    if (now === drawn) return;
    drawn = now;
    offered.setAttribute('aria-label', `Parts of ${title}`);
    offered.replaceChildren(
      ...all.map((part) => {
        const box = element(document, 'input', { type: 'checkbox', value: part.key });
        box.addEventListener('change', () => {
          const others = memory.parts.filter(({ key }) => key !== part.key);
          set(box.checked ? [...others, part] : others);
        });
        return element(document, 'label', { class: 'field-option' }, box, ` ${part.label}`);
      }),
    );
    if (all.length === 0)
      offered.append(element(document, 'p', { class: 'own-said' }, 'Nothing stands on this page yet.'));
    mark();
  };
  const mark = () => {
    const keys = new Set(memory.parts.map(({ key }) => key));
    for (const box of offered.querySelectorAll('input')) box.checked = keys.has(box.value);
  };
  const drawChosen = () => {
    const { parts } = memory;
    mark();
    chosen.replaceChildren(
      ...parts.map((part, i) =>
        element(
          document,
          'li',
          {},
          element(document, 'span', {}, `${i + 1}. ${part.label}`),
          wordButton(
            document,
            'Take out',
            () => {
              set(parts.filter((other) => other !== part));
              (chosen.querySelectorAll('button')[i] ?? from).focus();
            },
            { about: `Take out of what is chosen: ${part.label}` },
          ),
        ),
      ),
    );
    chosen.hidden = parts.length === 0;
    each.disabled = parts.length === 0;
    one.hidden = parts.length < 2;
    setText(each, parts.length < 2 ? 'Add it as a step' : `Add ${parts.length} steps, one for each`);
    setText(
      said,
      parts.length === 0
        ? 'Tick what is to become steps, from as many pages as you like.'
        : `${parts.length} chosen, in the order in which they were ticked.`,
    );
  };
  from.addEventListener('change', () => {
    memory.source = from.value;
    drawOffered();
  });
  const refresh = () => {
    drawSources();
    drawOffered();
  };
  refresh();
  drawChosen();
  return {
    element: element(
      document,
      'div',
      { class: 'lecture-parts' },
      labelledField(document, 'Page they come from', from),
      offered,
      said,
      chosen,
      element(document, 'div', { class: 'own-buttons lecture-add' }, each, one),
      problem,
    ),
    refresh,
    focus: () => from.focus(),
  };
}
