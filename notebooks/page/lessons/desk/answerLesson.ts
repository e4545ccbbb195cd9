import { designGraph } from '../../../../lib/design/design.ts';
import type { Patch } from '../../../../lib/graph/state.ts';
import { Problem } from '../../../../lib/problem.ts';
import { judge, solution, taskOf } from '../../../lessons/judge.ts';
import type { Lesson } from '../../../lessons/lesson.ts';
import { type LessonCase, openCase } from '../../../lessons/lessonCase.ts';
import { placeWritten, readAs } from '../../../lessons/readAs.ts';
import type { LessonAnswers, LessonReply, LessonRequest } from './lessonMessages.ts';

/** Answers questions about lessons; the case asked about last is kept. What is thrown becomes a fault in words. */
export function createLessonAnswers(lessons: readonly Lesson[]): (request: LessonRequest) => LessonReply {
  let kept: { readonly lesson: Lesson; readonly drawn: LessonCase } | undefined;
  const caseOf = ({ lesson: id, seed }: LessonRequest) => {
    if (kept?.lesson.id === id && kept.drawn.seed === seed) return kept;
    const lesson = lessons.find((one) => one.id === id);
    if (!lesson) throw new Error(`there is no lesson ‘${id}’`);
    kept = { lesson, drawn: openCase(lesson, seed) };
    return kept;
  };
  return (request) => {
    try {
      const { lesson, drawn } = caseOf(request);
      return { answer: answerOf(lesson, drawn, request) };
    } catch (error) {
      return { fault: (error as Error).message };
    }
  };
}

function answerOf(
  lesson: Lesson,
  drawn: LessonCase,
  request: LessonRequest,
): LessonAnswers[keyof LessonAnswers] {
  switch (request.kind) {
    case 'open':
      return Object.fromEntries(lesson.tasks.map(({ id }) => [id, differing(drawn.at(id).inputs)]));
    case 'judge':
      return judged(lesson, drawn, request.task, request.given);
    case 'solution':
      return { ...solution(lesson, drawn, request.task), ...marked(drawn, request.task, request.given) };
  }
}

function judged(
  lesson: Lesson,
  drawn: LessonCase,
  task: string,
  given: string | number,
): LessonAnswers['judge'] {
  try {
    const verdict = judge(lesson, drawn, task, given);
    if (verdict.kind === 'right') return verdict;
    const words = readAs(taskOf(lesson, task), given, drawn.at(task).axis);
    const read = words === undefined ? {} : { read: words };
    return verdict.kind === 'error'
      ? { kind: 'error', error: verdict.error.id, ...read }
      : { kind: 'other', words: verdict.hint, ...read };
  } catch (error) {
    if (error instanceof Problem) return { kind: 'unreadable', words: error.message };
    throw error;
  }
}

/** The place that was marked, as it is written. */
function marked(drawn: LessonCase, task: string, given: string | number | undefined): { marked?: string } {
  const { axis } = drawn.at(task);
  return axis && typeof given === 'number' ? { marked: placeWritten(given, axis) } : {};
}

/** Inputs that differ from those at first. */
function differing(inputs: Patch): Patch {
  const { initial } = designGraph;
  return Object.fromEntries(Object.entries(inputs).filter(([id, value]) => !Object.is(value, initial[id])));
}
