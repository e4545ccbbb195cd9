import { longestName } from '../../lib/design/ownParts.ts';
import type { RowActs } from '../choicesSpec.ts';
import type { PageContext } from './context.ts';
import { element, setAttributes, setText } from './element.ts';

/** What can be done with a row of a list: its name in a field, and a button that takes it out. */
export interface RowActsView {
  readonly element: HTMLElement;
  /** Follows the row; hidden where nothing can be done. */
  update(acts: RowActs | undefined): void;
}

export function createRowActs({ document, live }: PageContext, id: string): RowActsView {
  const problem = element(document, 'p', { class: 'problem', id: `${id}-problem`, 'aria-live': 'polite' });
  const name = element(document, 'input', {
    type: 'text',
    class: 'field-text',
    maxlength: longestName,
    'aria-describedby': problem.id,
  });
  const rename = element(document, 'button', { type: 'submit', class: 'plain' }, 'Rename');
  const takeOut = element(document, 'button', { type: 'button', class: 'plain' });
  const form = element(
    document,
    'form',
    { class: 'choices-acts', autocomplete: 'off', hidden: true },
    name,
    rename,
    takeOut,
    problem,
  );
  let now: RowActs | undefined;
  const attempt = (act: (acts: RowActs) => void) => {
    try {
      if (now) act(now);
      setText(problem, '');
    } catch (error) {
      setText(problem, (error as Error).message);
    }
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    attempt((acts) => live.set(acts.rename.patch(name.value)));
  });
  name.addEventListener('input', () => setText(problem, ''));
  takeOut.addEventListener('click', () => attempt((acts) => live.set(acts.takeOut.patch)));
  return {
    element: form,
    update(acts) {
      form.hidden = acts === undefined;
      // What is being typed stays while the row is written again under the same name.
      if (acts?.rename.now !== now?.rename.now) {
        name.value = acts?.rename.now ?? '';
        setText(problem, '');
      }
      now = acts;
      if (!acts) return;
      setAttributes(name, { 'aria-label': acts.rename.does });
      setAttributes(takeOut, { 'aria-label': acts.takeOut.does });
      setText(takeOut, acts.takeOut.name);
    },
  };
}
