import type { Patch } from '../../../../lib/graph/state.ts';
import type { Given } from '../../../lessons/progress.ts';
import type { OpenPort, WorkerPort } from '../../workerPort.ts';

/** What is asked about the case of a lesson that a seed draws. */
export type LessonQuestion =
  | { readonly kind: 'open' }
  | { readonly kind: 'judge'; readonly task: string; readonly given: Given }
  | { readonly kind: 'solution'; readonly task: string; readonly given?: Given };

/** A lesson by its id, the seed of the case, and the question. */
export type LessonRequest = LessonQuestion & { readonly lesson: string; readonly seed: number };

/** What is told of each kind of question. */
export interface LessonAnswers {
  /** By the id of the task: inputs that differ from the initial ones as it begins, SI. */
  readonly open: Readonly<Record<string, Patch>>;
  /**
   * `error` names the typical error by its id; `unreadable` says why the text is no answer; `read` how a wrong answer
   * was understood.
   */
  readonly judge:
    | { readonly kind: 'right' }
    | { readonly kind: 'error'; readonly error: string; readonly read?: string }
    | { readonly kind: 'other'; readonly words: string; readonly read?: string }
    | { readonly kind: 'unreadable'; readonly words: string };
  /** The right answer, as a value and as it is written; `marked` is the place given, where it was one. */
  readonly solution: { readonly value: Given; readonly text: string; readonly marked?: string };
}

/** An answer, or in words why there is none. */
export type LessonReply<K extends keyof LessonAnswers = keyof LessonAnswers> =
  | { readonly answer: LessonAnswers[K] }
  | { readonly fault: string };

/** To the worker, and back. */
export interface LessonJob {
  readonly job: number;
  readonly request: LessonRequest;
}
export type LessonWord = { readonly ready: true } | { readonly job: number; readonly reply: LessonReply };

/** The worker that draws the cases of lessons and judges answers. */
export type LessonPort = WorkerPort<LessonJob>;
export type OpenLessonPort = OpenPort<LessonJob, LessonWord>;
