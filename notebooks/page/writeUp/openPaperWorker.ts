import { hearWorker } from '../workerPort.ts';
import type { OpenPaperPort } from './paperMessages.ts';

/** Opens a worker that writes papers. */
export const openPaperWorker: OpenPaperPort = (replied, failed) =>
  hearWorker(new Worker(new URL('./paperWorker.ts', import.meta.url), { type: 'module' }), replied, failed);
