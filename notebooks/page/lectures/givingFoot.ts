import { type Giving, roomOf, stepOf, withholds } from '../../lectures/giving.ts';
import { type GivingAct, keysSaid } from '../../lectures/givingKeys.ts';
import { element, setText } from '../element.ts';

/** The quiet line below a step: where one is, and what can be done, for the mouse and the finger. */
export interface GivingFoot {
  readonly element: HTMLElement;
  readonly help: HTMLElement;
  /** `isPrepared`: nothing has been moved in this step. */
  show(giving: Giving, isPrepared: boolean): void;
  /** Opens or closes the list of keys. */
  toggleHelp(): void;
}

/** Makes the line; its buttons do what the keys do. */
export function createFoot(document: Document, take: (act: GivingAct) => void): GivingFoot {
  const button = (words: string, act: GivingAct, label?: string) => {
    const made = element(document, 'button', { type: 'button', class: 'plain', 'aria-label': label }, words);
    made.addEventListener('click', () => take(act));
    return made;
  };
  const back = button('←', { act: 'back' }, 'Back');
  const on = button('→', { act: 'on' }, 'Next');
  const place = element(document, 'span', { class: 'giving-place' });
  const title = element(document, 'span', { class: 'giving-title' });
  const prepared = button('As prepared', { act: 'prepared' });
  prepared.classList.add('giving-prepared');
  const more = button('?', { act: 'help' }, 'Keys');
  const close = button('Close', { act: 'help' });
  const help = element(
    document,
    'section',
    { class: 'giving-help', hidden: true, 'aria-label': 'Keys', tabindex: -1 },
    element(document, 'h2', {}, 'Keys'),
    keyList(document),
    close,
  );
  return {
    element: element(
      document,
      'nav',
      { class: 'giving-foot', 'aria-label': 'Steps of the lecture' },
      back,
      place,
      on,
      title,
      prepared,
      button('Lecturer’s page', { act: 'notes' }),
      more,
      button('Leave', { act: 'leave' }),
    ),
    help,
    show(giving, isPrepared) {
      const { lecture, place: at } = giving;
      const step = stepOf(giving);
      const reveals = step !== undefined && withholds(step) && !roomOf(giving).revealed;
      setText(place, `${at + 1} / ${lecture.steps.length}`);
      setText(title, lecture.title);
      setText(on, reveals ? 'Show it →' : '→');
      on.setAttribute('aria-label', reveals ? 'Show it' : 'Next');
      back.disabled = at === 0;
      on.disabled = at === lecture.steps.length - 1 && !reveals;
      prepared.disabled = isPrepared;
    },
    toggleHelp() {
      help.hidden = !help.hidden;
      more.setAttribute('aria-expanded', String(!help.hidden));
      if (help.hidden) more.focus();
      else help.focus();
    },
  };
}

function keyList(document: Document): HTMLElement {
  const rows = keysSaid.map(([keys, does]) =>
    element(document, 'div', {}, element(document, 'dt', {}, keys), element(document, 'dd', {}, does)),
  );
  return element(document, 'dl', {}, ...rows);
}
