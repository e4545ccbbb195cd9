import type { OpenStudyPort, StudyReply } from './studyMessages.ts';

/** Opens a worker for studies. */
export const openStudyWorker: OpenStudyPort = (replied, failed) => {
  const worker = new Worker(new URL('./studyWorker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', (event: MessageEvent<StudyReply>) => replied(event.data));
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    failed(event.message || 'the worker could not be started');
  });
  return { post: (job) => worker.postMessage(job), close: () => worker.terminate() };
};
