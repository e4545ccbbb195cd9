import type { Quantity } from '../../../../lib/graph/quantity.ts';
import type { PageContext } from '../../context.ts';
import { element } from '../../element.ts';
import { wordButton } from './labelledField.ts';
import { createSearchField } from './searchField.ts';

/** Quantities chosen one after another through a search. */
export interface ChosenList {
  readonly element: HTMLElement;
  readonly input: HTMLInputElement;
  ids(): readonly string[];
}

/** What may be chosen, and how many at most: with one, the next takes its place. */
export interface ChosenOptions {
  readonly label: string;
  readonly of: (quantity: Quantity) => boolean;
  readonly most: number;
  changed(): void;
}

/** A search with the list of what was chosen below it; each can go up, and out again. */
export function createChosenList(
  { document, live }: PageContext,
  start: readonly string[],
  { label, of, most, changed }: ChosenOptions,
): ChosenList {
  let ids = [...start];
  const list = element(document, 'ul', { class: 'own-chosen', 'aria-label': 'Chosen' });
  const set = (next: string[]) => {
    ids = next;
    draw();
    changed();
  };
  const nameOf = (id: string) => live.graph.quantities.get(id)?.name ?? id;
  const draw = () => {
    list.replaceChildren(
      ...ids.map((id, i) =>
        element(
          document,
          'li',
          {},
          element(document, 'span', {}, nameOf(id), ' ', element(document, 'small', {}, id)),
          ...(i === 0
            ? []
            : [
                wordButton(document, 'Up', () => up(i), {
                  about: `Move ${nameOf(id)} up`,
                }),
              ]),
          wordButton(document, 'Take out', () => takeOut(i), { about: `Take ${nameOf(id)} out` }),
        ),
      ),
    );
    list.hidden = ids.length === 0;
  };
  const up = (i: number) => {
    set(ids.toSpliced(i, 1).toSpliced(i - 1, 0, ids[i]!));
    list.children[i - 1]?.querySelector('button')?.focus();
  };
  const takeOut = (i: number) => {
    set(ids.toSpliced(i, 1));
    search.input.focus();
  };
  const search = createSearchField(document, {
    label,
    quantities: () => [...live.graph.quantities.values()].filter(of),
    chosen: ({ id }) => {
      if (ids.includes(id)) return;
      set(most === 1 ? [id] : [...ids, id].slice(0, most));
    },
  });
  draw();
  return {
    element: element(document, 'div', { class: 'own-choosing' }, search.element, list),
    input: search.input,
    ids: () => ids,
  };
}
