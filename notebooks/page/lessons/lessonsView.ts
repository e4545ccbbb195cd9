import { lessons } from '../../lessons/lessons.ts';
import type { PageContext, RenderBlock } from '../context.ts';
import { element } from '../element.ts';
import { renderLessonList } from './lessonList.ts';
import { renderLesson } from './lessonView.ts';
import { progressOf } from './progressStore.ts';

/** The lesson that the address names, or the list of all. */
export function renderLessons(
  context: PageContext,
  stops: (() => void)[],
  renderBlock: RenderBlock,
): HTMLElement {
  const { document, within } = context;
  const store = progressOf(document.defaultView!);
  const lesson = lessons.find(({ id }) => id === within);
  if (lesson) return renderLesson(context, lesson, store, renderBlock, stops);
  const list = renderLessonList(document, lessons, store, stops);
  if (within !== '')
    list.prepend(
      element(
        document,
        'p',
        { class: 'problem' },
        `There is no lesson called ‘${within.slice(0, 40)}’. Choose one here.`,
      ),
    );
  return list;
}
