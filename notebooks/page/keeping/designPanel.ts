import { element, setText } from '../element.ts';
import type { Live } from '../live.ts';

/** Name and notes of the design, two fields that follow it. */
export function createDesignTexts(document: Document, live: Live): HTMLElement {
  const name = element(document, 'input', {
    type: 'text',
    id: 'design-name',
    class: 'field-text',
    autocomplete: 'off',
    maxlength: 120,
  });
  const about = element(document, 'textarea', { id: 'design-about', class: 'field-text', rows: 4 });
  const follow = () => {
    const { name: called = '', about: noted = '' } = live.state();
    if (name.value !== called) name.value = called;
    if (about.value !== noted) about.value = noted;
  };
  // All that is typed into a field until it is left is one step back.
  const take = (final: boolean) => () =>
    live.open({ ...live.state(), name: name.value, about: about.value }, { final });
  for (const field of [name, about]) {
    field.addEventListener('input', take(false));
    field.addEventListener('change', take(true));
  }
  live.onState(follow);
  follow();
  return element(
    document,
    'div',
    { class: 'design-texts' },
    element(document, 'label', { for: 'design-name' }, 'Name'),
    name,
    element(document, 'label', { for: 'design-about' }, 'Notes'),
    about,
  );
}

/** What the design is called, for people. */
export function shownName(live: Live): string {
  const { name = '' } = live.state();
  return name.trim() === '' ? 'Unnamed design' : name;
}

/** A disclosure that closes with Escape and with a click elsewhere, named by the design. */
export function createDesignMenu(
  document: Document,
  live: Live,
  ...content: HTMLElement[]
): HTMLDetailsElement {
  const name = element(document, 'span', { class: 'design-name' });
  const summary = element(
    document,
    'summary',
    {},
    element(document, 'span', { class: 'off-screen' }, 'Design: '),
    name,
  );
  const panel = element(document, 'div', { class: 'design-panel' }, ...content);
  const menu = element(document, 'details', { class: 'design-menu' }, summary, panel);
  const follow = () => setText(name, shownName(live));
  live.onState(follow);
  follow();
  menu.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || !menu.open) return;
    event.stopPropagation();
    menu.open = false;
    summary.focus();
  });
  document.addEventListener('pointerdown', (event) => {
    if (menu.open && !menu.contains(event.target as Node)) menu.open = false;
  });
  return menu;
}
