import { copyLecture, lecturesOf } from '../../../lib/studies/lectures.ts';
import { shippedLectures } from '../../lectures/shipped.ts';
import type { PageContext } from '../context.ts';
import { element } from '../element.ts';
import { createLectureCard, type LectureCard } from './lectureCard.ts';
import type { LectureMemory } from './lectureMemory.ts';
import { createNewLecture } from './newLecture.ts';

/** All lectures: those that come with the program, then the person's own, and where a new one is begun. */
export interface LectureList {
  readonly element: HTMLElement;
  refresh(): void;
  /** Puts the focus on a lecture, or where a new one is begun. */
  focus(id: string): void;
}

/** `within` names the lecture that the address leads to; `arrange` opens one, `said` tells what was done. */
export function createLectureList(
  context: PageContext,
  memory: LectureMemory,
  arrange: (id: string) => void,
  said: (text: string) => void,
): LectureList {
  const { document, live } = context;
  const cards = new Map<string, LectureCard>();
  const shipped = element(document, 'div');
  const own = element(document, 'div');
  const none = element(document, 'p', { class: 'own-said' }, 'You have no lecture of your own yet.');
  const copy = (id: string) => {
    try {
      const lecture = shippedLectures.find((one) => one.id === id)!;
      const made = copyLecture(live.graph, live.state(), lecture);
      live.open(made.design);
      arrange(made.lecture.id);
      said(`‘${made.lecture.title}’ is yours now; the one that comes with the program stays.`);
    } catch (error) {
      said((error as Error).message);
    }
  };
  const cardOf = (id: string, isShipped: boolean): LectureCard => {
    const known = cards.get(id) ?? createLectureCard(context, id, { isShipped, copy, arrange });
    cards.set(id, known);
    return known;
  };
  const begin = createNewLecture(context, memory, arrange);
  let wanted = context.within.split('/')[0];
  const refresh = () => {
    const mine = lecturesOf(live.state());
    const known = new Set([...shippedLectures, ...mine].map(({ id }) => id));
    for (const [id, card] of cards)
      if (!known.has(id)) {
        card.element.remove();
        cards.delete(id);
      }
    for (const lecture of shippedLectures) put(shipped, cardOf(lecture.id, true), lecture);
    for (const lecture of mine) put(own, cardOf(lecture.id, false), lecture);
    none.hidden = mine.length > 0;
    begin.refresh();
    const card = wanted && cards.get(wanted);
    if (!card) return;
    wanted = undefined;
    // Once it stands on the page, whose own heading has the focus by then.
    requestAnimationFrame(() => card.show());
  };
  const put = (holder: HTMLElement, card: LectureCard, lecture: Parameters<LectureCard['refresh']>[0]) => {
    card.refresh(lecture);
    if (card.element.parentNode !== holder) holder.append(card.element);
  };
  return {
    element: element(document, 'div', { class: 'lecture-list' }, shipped, own, none, begin.element),
    refresh,
    focus(id) {
      const card = cards.get(id);
      if (card) card.focus();
      else begin.focus();
    },
  };
}
