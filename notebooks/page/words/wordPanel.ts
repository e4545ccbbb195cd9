import { wordById } from '../../words/words.ts';
import type { PageContext } from '../context.ts';
import { element, setAttributes } from '../element.ts';
import { wordMeaning, wordName, wordValues } from './wordParts.ts';

/** The small panel with the meaning of a word, beside where it stands. */
export interface WordPanel {
  readonly element: HTMLElement;
  /** Opens the word of that id below the words that were chosen, `bare` without values; once more closes it. */
  open(id: string, from: HTMLElement, bare?: boolean): void;
  close(): void;
}

/** Room between words and panel, and from the panel to the edge of the window; px. */
const apart = 8;

/** Makes the panel; `context.define` should be its `open`. */
export function createWordPanel(context: PageContext): WordPanel {
  const { document } = context;
  const panel = element(document, 'div', {
    class: 'word-panel',
    role: 'dialog',
    tabindex: -1,
    hidden: true,
  });
  let stops: (() => void)[] = [];
  let origin: HTMLElement | undefined;
  const clear = () => {
    for (const stop of stops) stop();
    stops = [];
    panel.hidden = true;
    panel.replaceChildren();
    if (origin) setAttributes(origin, { 'aria-expanded': 'false' });
  };
  const close = () => {
    const from = origin;
    clear();
    origin = undefined;
    from?.focus({ preventScroll: true });
  };
  const open = (id: string, from: HTMLElement, bare = false) => {
    if (origin === from) return close();
    clear();
    origin = from;
    const word = wordById.get(id)!;
    const shut = element(document, 'button', { type: 'button', class: 'plain' }, 'Close');
    shut.addEventListener('click', close);
    panel.append(
      element(document, 'h2', {}, ...wordName(document, word)),
      wordMeaning(context, word, stops),
      ...(bare ? [] : [wordValues(context, word, stops)]),
      element(
        document,
        'p',
        { class: 'word-acts' },
        element(document, 'a', { href: `#words/${id}` }, 'In the list of words'),
        shut,
      ),
    );
    setAttributes(panel, { 'aria-label': `What ‘${word.word}’ means` });
    setAttributes(from, { 'aria-expanded': 'true' });
    panel.hidden = false;
    place(panel, from);
    panel.focus({ preventScroll: true });
  };
  panel.addEventListener('keydown', (event) => {
    if (event.key === 'Tab' && !staysWithin(panel, event)) close();
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    close();
  });
  // Elsewhere: the words that opened it close it by themselves, and a number in it opens its trace.
  document.addEventListener('pointerdown', ({ target }) => {
    if (panel.hidden || panel.contains(target as Node) || origin?.contains(target as Node)) return;
    clear();
    origin = undefined;
  });
  return {
    element: panel,
    open,
    close: () => {
      clear();
      origin = undefined;
    },
  };
}

/** False where Tab goes on behind the last, or before the first: reading then goes on where the word stands. */
function staysWithin(panel: HTMLElement, { shiftKey, target }: KeyboardEvent): boolean {
  const all = [...panel.querySelectorAll<HTMLElement>('a, button, [tabindex="0"]')];
  return shiftKey ? target !== panel && target !== all[0] : target !== all.at(-1);
}

/** Below the words, or above them where there is no room; never beyond the window. */
function place(panel: HTMLElement, from: HTMLElement): void {
  const { scrollX, scrollY, innerHeight } = window;
  const { clientWidth } = panel.ownerDocument.documentElement;
  const [first] = from.getClientRects();
  const { left, top } = first ?? from.getBoundingClientRect();
  const { bottom } = from.getBoundingClientRect();
  const { offsetWidth: width, offsetHeight: height } = panel;
  const x = Math.max(apart, Math.min(left, clientWidth - width - apart));
  const below = bottom + apart;
  const above = top - apart - height;
  const y = below + height > innerHeight && above > apart ? above : below;
  panel.style.left = `${x + scrollX}px`;
  panel.style.top = `${y + scrollY}px`;
}
