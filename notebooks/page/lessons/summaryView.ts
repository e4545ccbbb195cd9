import type { Lesson } from '../../lessons/lesson.ts';
import type { Run } from '../../lessons/progress.ts';
import { stageWords, summarySaid, taskEnd } from '../../lessons/progressWords.ts';
import { element } from '../element.ts';

/** What came of a lesson, and the way to take it again. */
export function renderSummary(document: Document, lesson: Lesson, run: Run, again: () => void): HTMLElement {
  const rows = lesson.tasks.map((task) =>
    element(
      document,
      'li',
      {},
      `${stageWords[task.stage]}: `,
      element(document, 'span', { class: 'lesson-end' }, taskEnd(run, task)),
    ),
  );
  const button = element(
    document,
    'button',
    { type: 'button', class: 'study-go' },
    'Take it again with other values',
  );
  button.addEventListener('click', again);
  const id = 'lesson-summary-title';
  return element(
    document,
    'section',
    { class: 'lesson-summary', 'aria-labelledby': id },
    element(document, 'h3', { id }, 'What came of it'),
    element(document, 'p', {}, summarySaid(lesson, run)),
    element(document, 'ol', {}, ...rows),
    element(
      document,
      'p',
      { class: 'lesson-buttons' },
      button,
      element(document, 'a', { href: '#lessons' }, 'To the other lessons'),
    ),
  );
}
