import { hearWorker } from '../../workerPort.ts';
import type { OpenLessonPort } from './lessonMessages.ts';

/** Opens a worker that draws the cases of lessons and judges answers. */
export const openLessonWorker: OpenLessonPort = (replied, failed) =>
  hearWorker(new Worker(new URL('./lessonWorker.ts', import.meta.url), { type: 'module' }), replied, failed);
