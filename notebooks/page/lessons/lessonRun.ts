import type { Lesson, Task } from '../../lessons/lesson.ts';
import {
  doneOf,
  isFinished,
  type Run,
  tasksReached,
  withAnswer,
  withNext,
  withShown,
} from '../../lessons/progress.ts';
import type { PageContext, RenderBlock } from '../context.ts';
import { element } from '../element.ts';
import type { LessonDesk } from './desk/lessonDesk.ts';
import type { LessonAnswers, LessonQuestion } from './desk/lessonMessages.ts';
import { createLessonDesigns } from './lessonDesigns.ts';
import { renderSummary } from './summaryView.ts';
import { renderTask, type TaskActs } from './taskView.ts';

/** What a run of a lesson works with. */
export interface RunParts {
  readonly context: PageContext;
  readonly lesson: Lesson;
  /** Keeps how far it has come. */
  keep(run: Run): void;
  readonly desk: LessonDesk;
  readonly renderBlock: RenderBlock;
  /** Takes the lesson again with other values. */
  again(last: Run): void;
}

/** How a run comes before the person. */
export interface RunStart {
  focus(): void;
  /** Brings the open task into view, where others stand above it. */
  takeUp(): void;
}

export interface RunView {
  readonly element: HTMLElement;
  /** Resolves once its first tasks are drawn, with what puts the focus there, or the open task into view. */
  readonly drawn: Promise<RunStart>;
}

/** Draws the tasks that were reached, one below the other; the next one comes when the person goes on. */
export function renderRun(parts: RunParts, first: Run, stops: (() => void)[]): RunView {
  const { context, lesson, desk, renderBlock } = parts;
  const { document } = context;
  const { seed } = first;
  let run = first;
  let over = false;
  stops.push(() => {
    over = true;
  });
  const designs = createLessonDesigns(context, stops);
  const whole = element(document, 'div', { class: 'lesson-tasks' });
  const keep = (next: Run) => {
    run = next;
    parts.keep(run);
  };
  const ask = async <Q extends LessonQuestion>(question: Q) => {
    const reply = await desk.ask(lesson.id, seed, question);
    if ('fault' in reply) throw new Error(reply.fault);
    return reply.answer;
  };
  const actsOf = (task: Task, ended: () => void): TaskActs => ({
    done: () => doneOf(run, task),
    async judge(given, toKeep) {
      const verdict: LessonAnswers['judge'] = await ask({ kind: 'judge', task: task.id, given });
      if (toKeep && verdict.kind !== 'unreadable')
        keep(withAnswer(run, task, given, verdict.kind === 'right'));
      return verdict;
    },
    solution: (given) => ask({ kind: 'solution', task: task.id, ...(given !== undefined && { given }) }),
    show: () => keep(withShown(run, task)),
    ended,
  });
  const add = (task: Task, patches: LessonAnswers['open'], goesOn: boolean) => {
    const ended = () => {
      if (isFinished(lesson, run)) return finish();
      if (!goesOn) return;
      const next = lesson.tasks[lesson.tasks.indexOf(task) + 1]!;
      view.element.append(
        nextButton(document, () => {
          keep(withNext(lesson, run));
          add(next, patches, true).focus();
        }),
      );
    };
    const design = designs.of(patches[task.id]!);
    const view = renderTask(design, lesson, task, actsOf(task, ended), renderBlock, stops);
    whole.append(view.element);
    return view;
  };
  const finish = () => {
    if (over || whole.querySelector('.lesson-summary')) return;
    whole.append(renderSummary(document, lesson, run, () => parts.again(run)));
  };
  const draw = async () => {
    const patches = await ask({ kind: 'open' });
    if (over) return { focus: () => {}, takeUp: () => {} };
    whole.replaceChildren();
    const reached = tasksReached(lesson, run);
    const views = reached.map((task, i) => add(task, patches, i === reached.length - 1));
    return {
      focus: () => views[0]!.focus(),
      takeUp: () => {
        if (views.length > 1 && !isFinished(lesson, run)) views.at(-1)!.show();
      },
    };
  };
  whole.append(
    element(
      document,
      'p',
      { class: 'lesson-hint', role: 'status' },
      'The values of this lesson are being drawn …',
    ),
  );
  const drawn = draw().catch((error: Error) => {
    const words = `The values of this lesson could not be drawn: ${error.message}`;
    const button = element(document, 'button', { type: 'button', class: 'study-go' }, 'Take other values');
    button.addEventListener('click', () => parts.again(run));
    whole.replaceChildren(element(document, 'p', { class: 'problem', role: 'status' }, words), button);
    return { focus: () => button.focus(), takeUp: () => {} };
  });
  return { element: whole, drawn };
}

/** Leads to the next task, once. */
function nextButton(document: Document, act: () => void): HTMLElement {
  const button = element(document, 'button', { type: 'button', class: 'study-go lesson-next' }, 'Go on');
  button.addEventListener('click', () => {
    button.remove();
    act();
  });
  return button;
}
