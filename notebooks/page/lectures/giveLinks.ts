import type { Lecture } from '../../../lib/graph/studies.ts';
import type { PageContext } from '../context.ts';
import { element, setAttributes, setText } from '../element.ts';
import { forget, leftAt } from './givingMemory.ts';
import { designOf } from './lectureAt.ts';

/** The ways into a lecture: where it was left, and its beginning. */
export interface GiveLinks {
  readonly elements: readonly HTMLElement[];
  refresh(lecture: Lecture): void;
  /** The one that is pressed first; none where the lecture has no steps. */
  main(): HTMLElement | undefined;
}

export function createGiveLinks({ document, live }: PageContext, id: string): GiveLinks {
  const window = document.defaultView!;
  const on = element(document, 'a', { class: 'own-main lecture-give', hidden: true });
  const begin = element(document, 'a', { class: 'own-main lecture-give', href: `#lectures/${id}/1` });
  // What was shown and marked goes with it: the room is another, or asked once more.
  begin.addEventListener('click', () => forget(window, id));
  return {
    elements: [on, begin],
    refresh(lecture) {
      const { title, steps } = lecture;
      const isEmpty = steps.length === 0;
      const place = isEmpty
        ? undefined
        : leftAt(window, { lecture, design: designOf(lecture, live.state()) });
      begin.hidden = isEmpty;
      on.hidden = place === undefined;
      const step = (place ?? 0) + 1;
      setText(on, `Go on at step ${step}`);
      setAttributes(on, { href: `#lectures/${id}/${step}`, 'aria-label': `Go on at step ${step}: ${title}` });
      const words = place === undefined ? 'Give it' : 'Give it from the beginning';
      setText(begin, words);
      setAttributes(begin, { 'aria-label': `${words}: ${title}` });
    },
    main: () => [on, begin].find(({ hidden }) => !hidden),
  };
}
