import type { Influence } from '../../../../lib/studies/influence.ts';
import { influenceSaid } from '../../../varyWords.ts';
import type { PageContext } from '../../context.ts';
import { element } from '../../element.ts';
import { actButton } from '../formField.ts';

/** Inputs told before the others are asked for. */
const mostAtFirst = 6;

/** The inputs of a result with what each does to it, the strongest first; choosing one varies it. */
export function createInfluenceList({ document, live }: PageContext, vary: (id: string) => void) {
  const holder = element(document, 'div', { class: 'study-influences', 'aria-live': 'polite' });
  const rowOf = ({ id, name, strength }: Influence) =>
    element(
      document,
      'li',
      {},
      actButton(document, name, () => vary(id), { 'aria-label': `Vary ${name}` }),
      element(document, 'span', {}, influenceSaid(strength, live.state().inputs[id])),
    );
  const show = (name: string, found: readonly Influence[], all = false) => {
    const told = all ? found : found.slice(0, mostAtFirst);
    const list = element(document, 'ol', {}, ...told.map(rowOf));
    const words = `What ${name} depends on, the strongest first; choose one to vary it:`;
    const more = () => {
      show(name, found, true);
      holder.querySelectorAll<HTMLElement>('li button')[mostAtFirst]?.focus();
    };
    holder.replaceChildren(
      element(document, 'p', {}, words),
      list,
      ...(told.length < found.length
        ? [actButton(document, moreText(found.length - told.length), more)]
        : []),
    );
  };
  return {
    element: holder,
    show: (name: string, found: readonly Influence[]) => show(name, found),
    say: (words: string) =>
      holder.replaceChildren(...(words === '' ? [] : [element(document, 'p', {}, words)])),
  };
}

const moreText = (count: number) => (count === 1 ? 'Show one more' : `Show ${count} more`);
