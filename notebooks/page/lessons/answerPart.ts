import type { Task } from '../../lessons/lesson.ts';
import { type Given, mayShow, type TaskDone } from '../../lessons/progress.ts';
import { element, setText } from '../element.ts';
import { createAnswerForm, markTried } from './answerForm.ts';
import type { PlaceHandle } from './placeHandle.ts';

/** The form of a task with its buttons. */
export interface AnswerPart {
  readonly element: HTMLElement;
  /** A mark was put there, in words. */
  mark(words: string): void;
  /** An answer was not right: what was tried is marked, and after the second the right one is offered. */
  tried(done: TaskDone): void;
  /** The last answer of an earlier visit stands in the form again. */
  put(given: Given): void;
  /** The task has ended. */
  close(): void;
}

interface AnswerActs {
  answer(given: Given): Promise<void>;
  /** Nothing was answered yet: what to do first. */
  missing(words: string): void;
  show(): Promise<void>;
}

/** Makes the form; one answer is looked at at a time. */
export function createAnswerPart(
  document: Document,
  task: Task,
  id: string,
  handle: PlaceHandle | undefined,
  acts: AnswerActs,
): AnswerPart {
  const fields = createAnswerForm(document, task, id, handle);
  const words = task.kind === 'mark' ? 'Answer here' : 'Answer';
  const submit = element(document, 'button', { type: 'submit', class: 'study-go' }, words);
  const show = element(document, 'button', { type: 'button', class: 'plain', hidden: true }, 'Show me');
  const marked = element(document, 'span', { class: 'lesson-marked' });
  const buttons = element(document, 'div', { class: 'lesson-buttons' }, submit, show, marked);
  const form = element(document, 'form', { class: 'lesson-answer' }, fields.element, buttons);
  let busy = false;
  const once = (work: () => Promise<void>) => {
    if (busy) return;
    busy = true;
    void work().finally(() => {
      busy = false;
    });
  };
  form.addEventListener('submit', (event) => {
    event.preventDefault();
    const given = fields.given();
    if (given !== undefined) return once(() => acts.answer(given));
    acts.missing(fields.missing);
    fields.focus();
  });
  handle?.onEnter(() => form.requestSubmit());
  show.addEventListener('click', () => once(acts.show));
  return {
    element: form,
    put: fields.put,
    mark: (place) => setText(marked, `at ${place}`),
    tried(done) {
      markTried(document, form, done.tries);
      show.hidden = !mayShow(done);
      if (form.contains(document.activeElement)) fields.focus();
    },
    close() {
      form.hidden = true;
    },
  };
}
