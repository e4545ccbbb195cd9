import { lessons } from '../../../lessons/lessons.ts';
import { createLessonAnswers } from './answerLesson.ts';
import type { LessonJob, LessonWord } from './lessonMessages.ts';

/** The part of a worker's global scope that is used; the page's types have no room for it beside the window's. */
interface WorkerScope {
  onmessage: ((event: { readonly data: LessonJob }) => void) | null;
  postMessage(word: LessonWord): void;
}

const scope = globalThis as unknown as WorkerScope;
const answer = createLessonAnswers(lessons);

scope.onmessage = ({ data: { job, request } }) => scope.postMessage({ job, reply: answer(request) });
scope.postMessage({ ready: true });
