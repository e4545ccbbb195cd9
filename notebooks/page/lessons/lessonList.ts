import type { Lesson } from '../../lessons/lesson.ts';
import { lessonState, listState } from '../../lessons/progressWords.ts';
import { element, setText } from '../element.ts';
import { troubleOf } from './lessonView.ts';
import type { ProgressStore } from './progressStore.ts';

/** All lessons with what was done of each, and the way to have that forgotten. */
export function renderLessonList(
  document: Document,
  lessons: readonly Lesson[],
  store: ProgressStore,
  stops: (() => void)[],
): HTMLElement {
  const rows = lessons.map((lesson) => ({ lesson, row: lessonRow(document, lesson) }));
  const said = element(document, 'p', { class: 'lesson-said', role: 'status' });
  const forget = forgetPart(document, store);
  const show = () => {
    const runs = store.value();
    for (const { lesson, row } of rows) row.show(lessonState(lesson, runs[lesson.id]));
    const state = listState(lessons, runs);
    setText(said, state);
    forget.show(Object.keys(runs).length > 0);
  };
  stops.push(store.onChange(show));
  show();
  return element(
    document,
    'div',
    {},
    element(document, 'ol', { class: 'lesson-list' }, ...rows.map(({ row }) => row.element)),
    said,
    troubleOf(document, store, stops),
    forget.element,
  );
}

function lessonRow(document: Document, { id, title, about, minutes }: Lesson) {
  const state = element(document, 'span', {});
  const made = element(
    document,
    'li',
    {},
    element(document, 'h2', {}, element(document, 'a', { href: `#lessons/${id}` }, title)),
    element(document, 'p', { class: 'lesson-about' }, about),
    element(document, 'p', { class: 'lesson-state' }, `about ${minutes} minutes, `, state),
  );
  return {
    element: made,
    show: (words: string) => setText(state, words),
  };
}

/** The button that forgets, and asks once more before. */
function forgetPart(document: Document, store: ProgressStore) {
  const button = (words: string, act: () => void) => {
    const made = element(document, 'button', { type: 'button', class: 'plain' }, words);
    made.addEventListener('click', act);
    return made;
  };
  const ask = (asks: boolean) => {
    first.hidden = asks;
    sure.hidden = !asks;
  };
  const first = button('Forget what I have done', () => {
    ask(true);
    no.focus();
  });
  const yes = button('Forget it', () => {
    ask(false);
    store.forget();
  });
  const no = button('Keep it', () => {
    ask(false);
    first.focus();
  });
  const words = 'All your answers in the lessons go from this browser, and nothing brings them back. ';
  const sure = element(document, 'span', { hidden: true }, words, yes, no);
  const whole = element(document, 'p', { class: 'lesson-forget' }, first, sure);
  return {
    element: whole,
    show: (any: boolean) => {
      const focused = whole.contains(document.activeElement);
      whole.hidden = !any;
      if (!any && focused) whole.closest('main')?.querySelector<HTMLElement>('h1')?.focus();
    },
  };
}
