import type { OpenPaperPort, PaperReply } from './paperMessages.ts';

/** Opens a worker that writes papers. */
export const openPaperWorker: OpenPaperPort = (replied, failed) => {
  const worker = new Worker(new URL('./paperWorker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', (event: MessageEvent<PaperReply>) => replied(event.data));
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    failed(event.message || 'the worker could not be started');
  });
  return { post: (request) => worker.postMessage(request), close: () => worker.terminate() };
};
