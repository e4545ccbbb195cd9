import { designGraph } from '../../../../lib/design/design.ts';
import { openStudyWorker } from './openStudyWorker.ts';
import { createStudyDesk } from './studyDesk.ts';

/** Starts a study over the design's graph in a worker of the page. */
export const startStudy = createStudyDesk(designGraph, openStudyWorker);
