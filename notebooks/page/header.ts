import { documents } from '../contents.ts';
import type { StepwellDocument } from '../document.ts';
import { stepSaid } from '../stepWords.ts';
import { element, setAttributes } from './element.ts';
import { readAddress } from './keeping/address.ts';
import type { Live } from './live.ts';

/** The bar at the top: way back to the start, undo and redo, light or dark, and messages. */
export interface Header {
  readonly element: HTMLElement;
  /** Tells the person of a problem that has no field of its own. */
  report(message: string): void;
}

/**
 * Makes the bar, bound to the live design; Ctrl+Z and Ctrl+Shift+Z work outside text fields. `menu` makes what stands
 * before undo, and may report; `search` stands before it.
 */
export function createHeader(
  document: Document,
  live: Live,
  menu?: (report: Header['report']) => HTMLElement,
  search?: { readonly button: HTMLElement; readonly element: HTMLElement },
): Header {
  const button = (text: string, act: () => void) => {
    const made = element(document, 'button', { type: 'button', class: 'plain' }, text);
    made.addEventListener('click', act);
    return made;
  };
  /** Steps through the history and says what changed, which may lie on another page. */
  const travel = (step: () => void, word: string) => () => {
    const before = live.state();
    step();
    const now = live.state();
    if (now !== before) say(`${word}: ${stepSaid(live.graph, before, now)}.`, false);
  };
  const undoStep = travel(live.undo, 'Undone');
  const redoStep = travel(live.redo, 'Done again');
  const undo = button('Undo', undoStep);
  const redo = button('Redo', redoStep);
  const scheme = button('Dark', () => {
    const next = currentScheme(document) === 'dark' ? 'light' : 'dark';
    document.documentElement.dataset['scheme'] = next;
    nameScheme();
  });
  const nameScheme = () => {
    scheme.textContent = currentScheme(document) === 'dark' ? 'Light page' : 'Dark page';
  };
  const message = element(document, 'p', { class: 'masthead-message problem', role: 'status' });
  const say = (text: string, wrong: boolean) => {
    message.classList.toggle('problem', wrong);
    message.textContent = text;
  };
  const refresh = () => {
    undo.disabled = !live.canUndo();
    redo.disabled = !live.canRedo();
    message.textContent = '';
  };
  live.onState(refresh);
  refresh();
  nameScheme();
  // The system may go dark in the evening, with the page open.
  darkQuery(document).addEventListener('change', nameScheme);
  document.addEventListener('keydown', (event) => {
    const inText = (event.target as HTMLElement).matches?.('input[type="text"], textarea');
    if (inText || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
    event.preventDefault();
    if (event.shiftKey) redoStep();
    else undoStep();
  });
  const home = element(
    document,
    'p',
    { class: 'masthead-title' },
    element(document, 'a', { href: '#' }, 'Stepwell'),
  );
  const linkTo = ({ id, title, short = title }: StepwellDocument) =>
    element(document, 'a', { href: `#${id}` }, short);
  const works = documents.filter(({ learning }) => !learning).map(linkTo);
  const learns = documents.filter(({ learning }) => learning).map(linkTo);
  const markCurrent = () => {
    const shown = `#${readAddress(document.defaultView!.location.hash).document}`;
    for (const link of [...works, ...learns])
      setAttributes(link, { 'aria-current': link.hash === shown && 'page' });
  };
  document.defaultView!.addEventListener('hashchange', markCurrent);
  markCurrent();
  const nav = element(document, 'nav', { 'aria-label': 'Documents' }, ...works);
  const learn = element(
    document,
    'nav',
    { class: 'masthead-learn', 'aria-label': 'Learning and teaching', hidden: learns.length === 0 },
    ...learns,
  );
  const report = (text: string) => say(text, true);
  const first = [...(search ? [search.button] : []), ...(menu ? [menu(report)] : [])];
  const actions = element(document, 'div', { class: 'masthead-actions' }, ...first, undo, redo, scheme);
  return {
    element: element(
      document,
      'header',
      { class: 'masthead' },
      home,
      learn,
      nav,
      actions,
      ...(search ? [search.element] : []),
      message,
    ),
    report,
  };
}

const darkQuery = (document: Document) => document.defaultView!.matchMedia('(prefers-color-scheme: dark)');

function currentScheme(document: Document): 'light' | 'dark' {
  const chosen = document.documentElement.dataset['scheme'];
  if (chosen === 'light' || chosen === 'dark') return chosen;
  return darkQuery(document).matches ? 'dark' : 'light';
}
