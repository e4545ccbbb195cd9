import { hearWorker } from '../../workerPort.ts';
import type { OpenStudyPort } from './studyMessages.ts';

/** Opens a worker for studies. */
export const openStudyWorker: OpenStudyPort = (replied, failed) =>
  hearWorker(new Worker(new URL('./studyWorker.ts', import.meta.url), { type: 'module' }), replied, failed);
