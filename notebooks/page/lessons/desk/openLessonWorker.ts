import type { LessonWord, OpenLessonPort } from './lessonMessages.ts';

/** Opens a worker that draws the cases of lessons and judges answers. */
export const openLessonWorker: OpenLessonPort = (told, failed) => {
  const worker = new Worker(new URL('./lessonWorker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', (event: MessageEvent<LessonWord>) => told(event.data));
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    failed(event.message || 'the worker could not be started');
  });
  return { post: (job) => worker.postMessage(job), close: () => worker.terminate() };
};
