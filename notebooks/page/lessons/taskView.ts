import type { Lesson, Task } from '../../lessons/lesson.ts';
import type { Given, TaskDone } from '../../lessons/progress.ts';
import { endSaid, stageWords } from '../../lessons/progressWords.ts';
import type { RenderBlock } from '../context.ts';
import { element } from '../element.ts';
import { renderProse } from '../proseView.ts';
import { renderWork } from '../workLines.ts';
import { createAnswerPart } from './answerPart.ts';
import { renderChanged } from './changedLine.ts';
import type { LessonAnswers } from './desk/lessonMessages.ts';
import type { LessonDesign } from './lessonDesigns.ts';
import { createReply } from './replyView.ts';
import { createTaskCharts } from './taskChart.ts';

/** What a task asks of its lesson. */
export interface TaskActs {
  done(): TaskDone;
  /** Judges an answer and keeps it; rejects with the reason where it cannot be judged. */
  judge(given: Given, keep: boolean): Promise<LessonAnswers['judge']>;
  /** The right answer, with the last one given written beside it. */
  solution(given: Given | undefined): Promise<LessonAnswers['solution']>;
  /** The right answer was asked for. */
  show(): void;
  /** The task has ended, now or before; the lesson goes on below. */
  ended(): void;
}

/** A task on the page; what it watches is collected in `stops`. */
export interface TaskView {
  readonly element: HTMLElement;
  focus(): void;
  /** Brings it into view without taking the focus. */
  show(): void;
}

/** Draws a task as it stands, and lets the person answer it while it is open. */
export function renderTask(
  { context, ...design }: LessonDesign,
  lesson: Lesson,
  task: Task,
  acts: TaskActs,
  renderBlock: RenderBlock,
  stops: (() => void)[],
): TaskView {
  const { document } = context;
  const id = `lesson-${task.id}`;
  const number = lesson.tasks.indexOf(task) + 1;
  const heading = element(
    document,
    'h3',
    { id, class: 'lesson-stage', tabindex: -1 },
    element(document, 'span', { class: 'lesson-count' }, `${number} of ${lesson.tasks.length}`),
    ` ${stageWords[task.stage]}`,
  );
  const question = element(
    document,
    'div',
    { class: 'lesson-question' },
    renderProse(context, task.question, stops),
  );
  const reply = createReply(context, stops);
  const charts = createTaskCharts(context, task, renderBlock, stops, (words) => part.mark(words));
  const explanation = element(document, 'div', { class: 'lesson-explanation', hidden: true });
  const finish = async (byHand: boolean) => {
    const done = acts.done();
    part.close();
    // What is told below rests on the case; a case that cannot be drawn again leaves the words without it.
    const solution = await acts.solution(done.tries.at(-1)).catch(() => undefined);
    reply.show({
      kind: done.end === 'right' ? 'right' : 'shown',
      words: endSaid(task, done, solution?.text, solution?.marked),
    });
    charts.end(done, solution?.value);
    explanation.append(renderProse(context, task.explanation, stops));
    explanation.hidden = false;
    acts.ended();
    if (byHand) reply.element.focus({ preventScroll: true });
  };
  const answer = async (given: Given) => {
    try {
      const verdict = await reply.during(acts.judge(given, true));
      if (verdict.kind === 'right') return await finish(true);
      reply.show(verdict, task);
      part.tried(acts.done());
    } catch (error) {
      reply.show({ kind: 'fault', words: (error as Error).message });
    }
  };
  const part = createAnswerPart(document, task, `${id}-answer`, charts.handle, {
    answer,
    missing: (words) => reply.show({ kind: 'unreadable', words }),
    show: () => {
      acts.show();
      return finish(true);
    },
  });
  const section = element(
    document,
    'section',
    { class: 'lesson-task', 'aria-labelledby': id },
    heading,
    question,
    charts.element,
    renderChanged(context, design, stops),
    part.element,
    reply.element,
    charts.ahead,
    charts.below,
    explanation,
  );
  section.append(renderWork(context, charts.places, stops));
  begin();
  return { element: section, focus: () => heading.focus(), show: () => section.scrollIntoView() };

  /** Takes up what was done before: an ended task is told of again, the last wrong answer judged again. */
  function begin() {
    const done = acts.done();
    if (done.end !== undefined) void finish(false);
    else if (done.tries.length > 0) {
      part.tried(done);
      part.put(done.tries.at(-1)!);
      void acts.judge(done.tries.at(-1)!, false).then(
        (verdict) => acts.done().end === undefined && reply.show(verdict, task),
        (error: Error) => reply.show({ kind: 'fault', words: error.message }),
      );
    }
  }
}
