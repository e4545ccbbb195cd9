import type { HeavyReply, OpenHeavyPort } from './heavyMessages.ts';

/** Opens the page's worker for heavy quantities. */
export const openWorker: OpenHeavyPort = (replied, failed) => {
  const worker = new Worker(new URL('./heavyWorker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', (event: MessageEvent<HeavyReply>) => replied(event.data));
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    failed(event.message || 'the worker could not be started');
  });
  return { post: (request) => worker.postMessage(request), close: () => worker.terminate() };
};
