import type { Task } from '../../lessons/lesson.ts';
import { errorOf } from '../../lessons/plainError.ts';
import type { PageContext } from '../context.ts';
import { element } from '../element.ts';
import { renderProse } from '../proseView.ts';
import type { LessonAnswers } from './desk/lessonMessages.ts';

/** What is said of an answer. */
export type Said =
  | LessonAnswers['judge']
  | { readonly kind: 'right' | 'shown' | 'fault'; readonly words: string };

/** Where what is said of an answer stands, read aloud as it changes. */
export interface Reply {
  readonly element: HTMLElement;
  /** `task` gives the words for one of its typical errors. */
  show(said: Said, task?: Task): void;
  /** Says so while something takes longer than a moment. */
  during<T>(work: Promise<T>): Promise<T>;
}

/** Work shorter than this is not told of, ms. */
const moment = 400;

/** Makes the place; it is empty at first. */
export function createReply(context: PageContext, stops: (() => void)[]): Reply {
  const { document } = context;
  const place = element(document, 'div', { class: 'lesson-reply', role: 'status', tabindex: -1 });
  const own: (() => void)[] = [];
  const clear = () => {
    for (const stop of own.splice(0)) stop();
    place.replaceChildren();
  };
  stops.push(clear);
  const wordsOf = (said: Said, task: Task | undefined): Node[] => {
    if (said.kind === 'error') {
      const error = task && errorOf(task, said.error);
      return [...notYet(said.read), ...(error ? [renderProse(context, error.reason, own)] : [])];
    }
    if (said.kind === 'other') return [...notYet(said.read), paragraph(said.words)];
    return [paragraph('words' in said ? said.words : 'Right.')];
  };
  const notYet = (read: string | undefined) => [lead('Not yet.'), ...(read ? [paragraph(read)] : [])];
  const paragraph = (words: string) => element(document, 'p', {}, words);
  const lead = (words: string) => element(document, 'strong', { class: 'lesson-lead' }, words);
  return {
    element: place,
    show(said, task) {
      clear();
      place.setAttribute('data-said', said.kind);
      place.append(...wordsOf(said, task));
    },
    async during(work) {
      const timer = setTimeout(() => {
        clear();
        place.setAttribute('data-said', 'waiting');
        place.append(paragraph('Your answer is being looked at …'));
      }, moment);
      try {
        return await work;
      } finally {
        clearTimeout(timer);
      }
    },
  };
}
