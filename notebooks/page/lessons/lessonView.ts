import type { Lesson } from '../../lessons/lesson.ts';
import { lessons } from '../../lessons/lessons.ts';
import { beginRun, isSameRun, type Run } from '../../lessons/progress.ts';
import type { PageContext, RenderBlock } from '../context.ts';
import { element } from '../element.ts';
import { createLessonDesk } from './desk/lessonDesk.ts';
import { openLessonWorker } from './desk/openLessonWorker.ts';
import { renderRun } from './lessonRun.ts';
import { newSeed } from './newSeed.ts';
import type { ProgressStore } from './progressStore.ts';

/** A lesson on the page, taken up where it was left, or begun; it can be taken again with other values. */
export function renderLesson(
  context: PageContext,
  lesson: Lesson,
  store: ProgressStore,
  renderBlock: RenderBlock,
  stops: (() => void)[],
): HTMLElement {
  const { document } = context;
  const desk = createLessonDesk(lessons, openLessonWorker);
  const place = element(document, 'div', {});
  const own: (() => void)[] = [];
  const end = () => {
    for (const stop of own.splice(0).reverse()) stop();
  };
  let run: Run;
  const keep = (next: Run) => {
    run = next;
    store.keep(lesson.id, run);
  };
  const draw = (byHand: boolean) => {
    end();
    const again = (last: Run) => {
      keep(beginRun(lesson, newSeed(last.seed), last));
      draw(true);
    };
    const view = renderRun({ context, lesson, keep, desk, renderBlock, again }, run, own);
    place.replaceChildren(view.element);
    void view.drawn.then((start) => (byHand ? start.focus() : start.takeUp()));
  };
  keep(store.value()[lesson.id] ?? beginRun(lesson, newSeed()));
  draw(false);
  // Another tab that went on with this lesson is followed, so that neither loses answers.
  const follow = () => {
    const kept = store.value()[lesson.id];
    if (!kept || isSameRun(kept, run)) return;
    run = kept;
    draw(false);
  };
  stops.push(desk.close, end, store.onChange(follow));
  return element(
    document,
    'div',
    { class: 'lesson' },
    ...headOf(document, lesson),
    troubleOf(document, store, stops),
    place,
  );
}

function headOf(document: Document, { title, about, minutes }: Lesson): HTMLElement[] {
  return [
    element(
      document,
      'p',
      { class: 'lesson-back' },
      element(document, 'a', { href: '#lessons' }, 'All lessons'),
    ),
    element(document, 'h2', { class: 'lesson-title' }, title),
    element(document, 'p', { class: 'lesson-about' }, `${about} About ${minutes} minutes.`),
    element(
      document,
      'p',
      { class: 'lesson-own' },
      'This lesson has a design of its own. The one that you have open stays as it is.',
    ),
  ];
}

/** Says where nothing can be kept. */
export function troubleOf(document: Document, store: ProgressStore, stops: (() => void)[]): HTMLElement {
  const place = element(document, 'p', { class: 'problem', role: 'status' }, store.trouble());
  stops.push(
    store.onChange(() => {
      if (place.textContent !== store.trouble()) place.textContent = store.trouble();
    }),
  );
  return place;
}
