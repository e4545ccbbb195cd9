import { outlineOf, outlineSaid } from '../../rationale/outline.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';

/** What will stand in the rationale and what is missing; it follows the design. */
export function renderOutline({ document, live }: PageContext, stops: (() => void)[]): HTMLElement {
  const said = element(document, 'p', { class: 'write-up-said', 'aria-live': 'polite' });
  const list = element(document, 'dl', { class: 'write-up-outline' });
  const follow = () => {
    const lines = outlineOf(live.state());
    setText(said, outlineSaid(lines));
    const rows = lines.map(({ heading, says, open }) =>
      element(
        document,
        'div',
        open ? { class: 'open' } : {},
        element(document, 'dt', {}, heading),
        element(document, 'dd', {}, says),
      ),
    );
    list.replaceChildren(...rows);
  };
  stops.push(live.onState(follow) as () => void);
  follow();
  return element(document, 'div', {}, said, list);
}
