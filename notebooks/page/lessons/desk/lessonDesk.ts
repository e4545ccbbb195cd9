import type { Lesson } from '../../../lessons/lesson.ts';
import { createLessonAnswers } from './answerLesson.ts';
import type {
  LessonAnswers,
  LessonPort,
  LessonQuestion,
  LessonReply,
  LessonWord,
  OpenLessonPort,
} from './lessonMessages.ts';

/** Where the case of a lesson is drawn and its answers are judged, away from the page. */
export interface LessonDesk {
  /** Resolves once, and never rejects. */
  ask<Q extends LessonQuestion>(
    lesson: string,
    seed: number,
    question: Q,
  ): Promise<LessonReply<Q['kind'] & keyof LessonAnswers>>;
  /** Ends its worker; what was asked is not answered any more. */
  close(): void;
}

interface Waiting {
  readonly request: Parameters<ReturnType<typeof createLessonAnswers>>[0];
  readonly finish: (reply: LessonReply) => void;
}

/** A desk with one worker, opened with the first question; where none starts, the page computes. */
export function createLessonDesk(lessons: readonly Lesson[], open: OpenLessonPort): LessonDesk {
  const waiting = new Map<number, Waiting>();
  let port: LessonPort | undefined;
  let [ready, noWorkers, closed, jobs] = [false, false, false, 0];
  let answerHere: ReturnType<typeof createLessonAnswers> | undefined;

  const finish = (job: number, reply: LessonReply) => {
    waiting.get(job)?.finish(reply);
    waiting.delete(job);
  };
  const computeHere = (job: number) => {
    // In a task of its own: what the person pressed shows first.
    setTimeout(() => {
      const asked = waiting.get(job);
      if (!asked || closed) return;
      answerHere ??= createLessonAnswers(lessons);
      finish(job, answerHere(asked.request));
    });
  };
  const told = (word: LessonWord) => {
    if ('ready' in word) ready = true;
    else finish(word.job, word.reply);
  };
  const failed = (reason: string) => {
    port?.close();
    port = undefined;
    const asked = [...waiting.keys()];
    noWorkers ||= !ready;
    if (!ready) return asked.forEach(computeHere);
    ready = false;
    for (const job of asked) finish(job, { fault: reason });
  };
  const begin = (job: number) => {
    if (noWorkers) return computeHere(job);
    try {
      port ??= open(told, failed);
      port.post({ job, request: waiting.get(job)!.request });
    } catch {
      noWorkers = true;
      computeHere(job);
    }
  };
  return {
    ask<Q extends LessonQuestion>(lesson: string, seed: number, question: Q) {
      return new Promise<LessonReply<Q['kind'] & keyof LessonAnswers>>((resolve) => {
        const job = ++jobs;
        waiting.set(job, {
          request: { ...question, lesson, seed },
          finish: resolve as (reply: LessonReply) => void,
        });
        begin(job);
      });
    },
    close() {
      closed = true;
      port?.close();
      waiting.clear();
    },
  };
}
