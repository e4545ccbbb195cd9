import { parseHTML } from 'linkedom';
import { designGraph } from '../../lib/design/design.ts';
import type { PartKind } from '../../lib/design/ownParts.ts';
import { record, startHistory, undo } from '../../lib/graph/history.ts';
import { applyPatch, initialState, type Patch } from '../../lib/graph/state.ts';
import { createOwnPartsField } from '../../notebooks/page/controls/ownPartsField.ts';
import type { StoreWindow } from '../../notebooks/page/localStore.ts';
import { createOwnPartsStore } from '../../notebooks/page/ownPartsStore.ts';

/** A store on a storage of its own; `blocked` refuses to write. */
function createStore(blocked = false) {
  const texts = new Map<string, string>();
  const localStorage = {
    getItem: (key: string) => texts.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (blocked) throw new Error('blocked');
      texts.set(key, text);
    },
  };
  return createOwnPartsStore({ localStorage, addEventListener: () => {} } as unknown as StoreWindow);
}

/** The control for one kind over a design of its own, and how a person uses it. */
export function openOwnParts(kind: PartKind, blocked = false) {
  const { document, window } = parseHTML('<html><body></body></html>');
  const store = createStore(blocked);
  const saved: [string, string][] = [];
  let history = startHistory(initialState(designGraph));
  const field = createOwnPartsField(document, kind, store, {
    inputs: () => history.present.inputs,
    set: (patch) => {
      history = record(history, applyPatch(designGraph, history.present, patch), true);
      field.refresh();
    },
    save: (name, text) => saved.push([name, text]),
  });
  store.onChange(field.refresh);
  document.body.append(field.element);
  const find = <T extends Element>(query: string) => field.element.querySelector<T>(query)!;
  const list = find<HTMLSelectElement>('select');
  const [name, note] = [...field.element.querySelectorAll<HTMLInputElement>('input[type=text]')];
  const fire = (target: Element, type: string) =>
    target.dispatchEvent(new window.Event(type, { bubbles: true }));
  const button = (words: string) =>
    [...field.element.querySelectorAll('button')].find(({ textContent }) => textContent === words)!;
  return {
    field,
    store,
    saved,
    find,
    list,
    name: name!,
    note: note!,
    button,
    inputs: () => history.present.inputs,
    steps: () => history.past.length,
    set: (patch: Patch) => {
      history = record(history, applyPatch(designGraph, history.present, patch), true);
      field.refresh();
    },
    undo: () => {
      history = undo(history);
      field.refresh();
    },
    keep: async (called: string, noted = '') => {
      name!.value = called;
      note!.value = noted;
      fire(find('form'), 'submit');
      await Promise.resolve();
    },
    choose: async (called: string) => {
      for (const option of list.children as Iterable<HTMLOptionElement>)
        if (option.textContent === called) option.selected = true;
      fire(list, 'change');
      await Promise.resolve();
    },
    press: async (words: string) => {
      fire(button(words), 'click');
      await Promise.resolve();
    },
    options: () => [...list.children].map(({ textContent }) => textContent),
    chosen: () => [...list.children].find((option) => option.hasAttribute('selected'))!.textContent,
    status: () => find('[role=status]').textContent,
    problem: () => find('.problem').textContent,
  };
}
