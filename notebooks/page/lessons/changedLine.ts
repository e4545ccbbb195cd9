import type { PageContext } from '../context.ts';
import { element } from '../element.ts';
import type { LessonDesign } from './lessonDesigns.ts';

/** Says that a link, or the hand on a chart, has changed the lesson's design, and brings it back. */
export function renderChanged(
  { document, live }: PageContext,
  { isChanged, restore }: Omit<LessonDesign, 'context'>,
  stops: (() => void)[],
): HTMLElement {
  const button = element(
    document,
    'button',
    { type: 'button', class: 'plain' },
    'Back to the lesson’s values',
  );
  const line = element(
    document,
    'p',
    { class: 'lesson-changed', role: 'status' },
    element(
      document,
      'span',
      {},
      'You have changed this design. The question is about the values that the lesson gave it. ',
    ),
    button,
  );
  const show = () => {
    const focused = line.contains(document.activeElement);
    line.hidden = !isChanged();
    if (line.hidden && focused) line.closest('section')?.querySelector<HTMLElement>('h3')?.focus();
  };
  button.addEventListener('click', restore);
  stops.push(live.onState(show));
  show();
  return line;
}
