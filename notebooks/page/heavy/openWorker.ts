import { hearWorker } from '../workerPort.ts';
import type { OpenHeavyPort } from './heavyMessages.ts';

/** Opens the page's worker for heavy quantities. */
export const openWorker: OpenHeavyPort = (replied, failed) =>
  hearWorker(new Worker(new URL('./heavyWorker.ts', import.meta.url), { type: 'module' }), replied, failed);
