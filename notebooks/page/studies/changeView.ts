import { type MovedRow, studyChange } from '../../../lib/studies/change.ts';
import { changedSaid, movedSaid } from '../../changeWords.ts';
import type { PageContext } from '../context.ts';
import { element, setText } from '../element.ts';
import { comparedTable, createDocumentChoice } from './comparedTable.ts';

/** A pause of the hand after which numbers are compared, ms. */
const restsFor = 150;

/** What the last step changed, how far which numbers moved, and along which chain. */
export function renderChange(context: PageContext, stops: (() => void)[]): HTMLElement {
  const { document, live } = context;
  const what = element(document, 'p', { class: 'change-said', 'aria-live': 'polite' });
  const choose = createDocumentChoice(document, 'change-document');
  const said = element(document, 'p', { class: 'choices-summary', 'aria-live': 'polite' });
  const tables = element(document, 'div', { class: 'compare-tables' });
  const below = element(document, 'div', {}, choose.holder, said, tables);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const study = () => {
    const before = live.history().past.at(-1);
    below.hidden = before === undefined;
    if (before === undefined) {
      setText(what, 'Nothing has been changed yet. Change an input here or on another page, and come back.');
      return;
    }
    const { title, ids } = choose.chosen();
    const found = studyChange(live.graph, before.inputs, live.state().inputs, ids);
    setText(what, changedSaid(found));
    setText(said, movedSaid(found, title));
    tables.replaceChildren(
      comparedTable(context, `Numbers of ‘${title}’ that moved`, ['before', 'now'], found.moved, {
        name: 'by way of',
        textOf: (row) => (row as MovedRow).chain.join(' → '),
      }),
    );
    tables.removeAttribute('data-older');
  };
  const follow = () => {
    clearTimeout(timer);
    tables.setAttribute('data-older', '');
    timer = setTimeout(study, restsFor);
  };
  choose.select.addEventListener('change', study);
  stops.push(live.onState(follow) as () => void, () => clearTimeout(timer));
  study();
  return element(document, 'section', { class: 'compare', 'aria-label': 'The last change' }, what, below);
}
